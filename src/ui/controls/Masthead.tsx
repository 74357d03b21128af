import { memo } from 'react';
import { EXAMPLES } from '#lesson';
import { useIntents } from '../store/index.ts';
import { CommandButton } from './CommandButton.tsx';
import { KeyMenu } from './KeyMenu.tsx';
import { Menu } from './Menu.tsx';

function Examples() {
  const { loadExample } = useIntents();
  return (
    <Menu label="Examples">
      {(close) => (
        <ul className="examples">
          {EXAMPLES.map(({ title, about }, i) => (
            <li key={title}>
              <button
                type="button"
                onClick={() => {
                  loadExample(i);
                  close();
                }}
              >
                <b>{title}</b>
                <span>{about}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
    </Menu>
  );
}

/** The program's name and what is done with the whole sheet. */
export const Masthead = memo(function Masthead() {
  return (
    <header className="masthead">
      <h1 className="wordmark">Handspan</h1>
      <nav className="masthead-tools" aria-label="Sheet">
        <Examples />
        <KeyMenu />
        <CommandButton name="undo" />
        <CommandButton name="redo" />
        <CommandButton name="copy-link" />
        <CommandButton name="settings" />
        <CommandButton name="keys">?</CommandButton>
      </nav>
    </header>
  );
});

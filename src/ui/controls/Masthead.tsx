import { memo } from 'react';
import { Behind } from '../behind.tsx';
import { CommandButton } from './CommandButton.tsx';
import { KeyMenu } from './KeyMenu.tsx';
import { Menu } from './Menu.tsx';

function Examples() {
  return (
    <Menu label="Examples">
      {(close) => <Behind>{(parts) => <parts.ExampleList close={close} />}</Behind>}
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

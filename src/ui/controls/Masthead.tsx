import { memo, type ReactNode } from 'react';
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

/** The program's name, the transport, and what is done with the whole sheet. */
export const Masthead = memo(function Masthead({ children }: { readonly children: ReactNode }) {
  return (
    <header className="masthead">
      <h1 className="wordmark">Handspan</h1>
      <div className="transport-slot">{children}</div>
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

import { COMMANDS, type Command, GROUPS, type Group } from '../commands/index.ts';
import { keyNames } from './key-names.ts';

function Chord({ chord }: { readonly chord: string }) {
  return keyNames(chord).map((key) => <kbd key={key}>{key}</kbd>);
}

function Row({ command }: { readonly command: Command }) {
  return (
    <tr>
      <th scope="row">{command.label}</th>
      <td>
        {command.keys.map((chord) => (
          <span key={chord} className="chord-keys">
            <Chord chord={chord} />
          </span>
        ))}
      </td>
    </tr>
  );
}

function GroupOfKeys({ group }: { readonly group: Group }) {
  const commands = COMMANDS.filter(({ group: of, keys }) => of === group && keys.length > 0);
  if (commands.length === 0) return null;
  return (
    <table className="keys">
      <caption>{group}</caption>
      <tbody>
        {commands.map((command) => (
          <Row key={command.name} command={command} />
        ))}
      </tbody>
    </table>
  );
}

/** The keys, made from the very commands that they perform. */
export function KeyTables() {
  return GROUPS.map((group) => <GroupOfKeys key={group} group={group} />);
}

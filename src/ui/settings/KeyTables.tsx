import { COMMANDS, type Command, GROUPS, practiceKeys } from '../commands/index.ts';
import { type AppState, useStudyStore } from '../store/index.ts';
import { keyNames } from './key-names.ts';
import { Words } from './Words.tsx';

/** A command, and the keys by which it goes. */
interface Keyed {
  readonly command: Command;
  readonly keys: readonly string[];
}

function Chord({ chord }: { readonly chord: string }) {
  return keyNames(chord).map((key) => <kbd key={key}>{key}</kbd>);
}

function Row({ command, keys }: Keyed) {
  return (
    <tr>
      <th scope="row">{command.label}</th>
      <td>
        {keys.map((chord) => (
          <span key={chord} className="chord-keys">
            <Chord chord={chord} />
          </span>
        ))}
      </td>
    </tr>
  );
}

function KeysOf({ title, rows }: { readonly title: string; readonly rows: readonly Keyed[] }) {
  if (rows.length === 0) return null;
  return (
    <table className="keys">
      <caption>{title}</caption>
      <tbody>
        {rows.map((row) => (
          <Row key={row.command.name} {...row} />
        ))}
      </tbody>
    </table>
  );
}

const keyed = (keysOf: (command: Command) => readonly string[]): readonly Keyed[] =>
  COMMANDS.map((command) => ({ command, keys: keysOf(command) })).filter(
    ({ keys }) => keys.length > 0,
  );

/** What goes by other keys on the practice screen than beside it. */
const movedKeys = (state: AppState): readonly Keyed[] =>
  keyed((command) => {
    const there = practiceKeys(command, state);
    return there.some((key) => !command.keys.includes(key)) ? there : [];
  });

/** The keys that hold now, made from the very commands that they perform. */
export function KeyTables() {
  const state = useStudyStore().cell.get();
  const { practising } = state;
  const rows = keyed((command) => (practising ? practiceKeys(command, state) : command.keys));
  return (
    <>
      <Words />
      {practising && (
        <p>These are the keys of the practice screen, which Esc leaves; the others rest.</p>
      )}
      {GROUPS.map((group) => (
        <KeysOf
          key={group}
          title={group}
          rows={rows.filter(({ command }) => command.group === group)}
        />
      ))}
      {!practising && (
        <>
          <KeysOf title="On the practice screen, pedal and keys" rows={movedKeys(state)} />
          <p>There the keys of forms, lenses, turns and routes rest, and Esc leaves the screen.</p>
        </>
      )}
    </>
  );
}

import { memo } from 'react';
import type { Connection } from '#neck';
import { makeDegree } from '#theory';
import type { AppState, Study } from '../store/index.ts';
import { symbolInSigns } from '../words-aloud.ts';
import { useHeld } from './emphasis.ts';
import { connectionInWords } from './material-words.ts';
import { connectionKey } from './overlay-marks.ts';
import { Rows } from './Rows.tsx';
import { useStudyAtRest } from './rest.ts';
import { CONNECTIONS_DRAWN } from './sizes.ts';

interface RowProps {
  readonly connection: Connection;
  readonly stop: boolean;
  readonly drawn: boolean;
}

const placeText = ({ string, fret }: Connection['from']): string => `${string}:${fret}`;

const ConnectionRow = memo(function ConnectionRow({ connection, stop, drawn }: RowProps) {
  const { from, to, semitones, fromDegree, toDegree } = connection;
  const key = connectionKey(connection);
  const held = useHeld(key);
  const words = connectionInWords(connection);
  const at = words.indexOf(',');
  return (
    <li
      className={drawn ? 'drawn' : undefined}
      data-connection=""
      data-from={placeText(from)}
      data-to={placeText(to)}
      data-semitones={semitones}
      data-degrees={`${makeDegree(fromDegree)}>${makeDegree(toDegree)}`}
    >
      <button type="button" data-row={key} aria-pressed={held} tabIndex={stop ? 0 : -1}>
        <b>{words.slice(0, at)}</b>
        {words.slice(at)}
      </button>
    </li>
  );
});

const ConnectionList = memo(function ConnectionList(props: {
  readonly connections: readonly Connection[];
}) {
  return (
    <Rows className="row-list connections" label="Connections to the next chord">
      {props.connections.map((connection, i) => (
        <ConnectionRow
          key={connectionKey(connection)}
          connection={connection}
          stop={i === 0}
          drawn={i < CONNECTIONS_DRAWN}
        />
      ))}
    </Rows>
  );
});

const studyOf = ({ study }: AppState): Study => study;

export function ConnectionPanel({ open }: { readonly open: boolean }) {
  const { connections, nextSymbol: next, symbol, turned } = useStudyAtRest(studyOf, open);
  if (connections.length === 0) {
    const why = next === undefined ? 'No other chord follows.' : 'Nothing under the hand leads on.';
    return <p>{why}</p>;
  }
  return (
    <div className="panel-main">
      <h3>
        From {symbolInSigns(turned?.symbol ?? symbol)} to {symbolInSigns(next ?? '')}, best first
      </h3>
      <p className="footnote">
        The first {CONNECTIONS_DRAWN} are drawn on the neck: an arrow where a tone moves, two rings
        where it stays. Point at a row to see that one alone. String 1 is the thinnest.
      </p>
      <ConnectionList connections={connections} />
    </div>
  );
}

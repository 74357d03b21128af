import { useLayoutEffect } from 'react';
import { makeLoop } from '#sound';
import { CommandButton } from '../controls/CommandButton.tsx';
import { TextField } from '../settings/Field.tsx';
import { useIntents, useStudy } from '../store/index.ts';
import { loopNow } from '../store/looped.ts';
import { Beats } from './Beats.tsx';
import { useNeckInSight } from './in-sight.ts';
import { PracticeKeys } from './PracticeKeys.tsx';
import { usePlayer, useSounding } from './players.ts';
import { Summary } from './Summary.tsx';

/** What the browser or the device asks of the person. */
function Trouble() {
  const message = useSounding((sounding) => sounding.message);
  const troubled = message !== undefined;
  // The head makes room for it, so that it covers no chord.
  useLayoutEffect(() => {
    document.documentElement.toggleAttribute('data-trouble', troubled);
  }, [troubled]);
  if (message === undefined) return null;
  return (
    <p className="sound-trouble" role="alert">
      {message}
    </p>
  );
}

function Buttons() {
  const player = usePlayer();
  const playing = useSounding(({ phase }) => phase === 'playing');
  const empty = useStudy(({ study }) => study.cells.length === 0);
  return (
    <>
      <button
        type="button"
        className={playing ? 'play playing' : 'play'}
        aria-keyshortcuts="Space"
        aria-disabled={empty}
        onClick={() => empty || player?.play()}
      >
        Play
      </button>
      <button
        type="button"
        aria-keyshortcuts="Space"
        aria-disabled={!playing}
        onClick={() => player?.stop()}
      >
        Stop
      </button>
    </>
  );
}

function Tempo() {
  const tempo = useStudy(({ workspace }) => workspace.sound.transport.tempo);
  const { setTempo } = useIntents();
  return (
    <TextField
      name="tempo"
      label="Tempo"
      value={String(tempo)}
      inputMode="decimal"
      range={{ min: 20, max: 300 }}
      restores
      onCommit={setTempo}
    />
  );
}

function Loop() {
  const loop = useStudy((state) => makeLoop(loopNow(state)));
  const { setLoop } = useIntents();
  return (
    <TextField
      name="loop"
      label="Loop"
      placeholder="all bars"
      value={loop}
      restores
      onCommit={setLoop}
    />
  );
}

/** Round and round, or once: pressed for round and round. */
function Rounds() {
  const once = useStudy(({ workspace }) => workspace.sound.transport.once === true);
  return (
    <CommandButton name="rounds" pressed={!once}>
      <span aria-hidden="true">↻</span> <span className="round-word">round</span>
    </CommandButton>
  );
}

/** Playing by hand: from the cursor, how fast, which bars, and whether round and round. */
export function Transport() {
  useNeckInSight();
  return (
    <section className="transport" aria-label="Transport">
      <div className="transport-row">
        <Buttons />
        <Tempo />
        <Loop />
        <Rounds />
        <div className="now-playing">
          <Beats />
          <Summary />
        </div>
        <PracticeKeys />
      </div>
      <Trouble />
    </section>
  );
}

import { memo } from 'react';
import { makeTuning } from '#neck';
import { makeNoteName } from '#theory';
import { useIntents, useStudy } from '../store/index.ts';

const SPACING = { true: 'true to scale', even: 'evenly spaced' } as const;

/** The title block of the drawing: what instrument and which hand it was drawn for. */
export const TitleBlock = memo(function TitleBlock() {
  const instrument = useStudy(({ workspace }) => workspace.instrument);
  const span = useStudy(({ workspace }) => workspace.span);
  const spacing = useStudy(({ workspace }) => workspace.spacing);
  const { openPanel } = useIntents();
  const names = [...instrument.strings].reverse().map(({ pitch }) => makeNoteName(pitch, 'sign'));
  const facts: readonly (readonly [string, string])[] = [
    ['Strings', names.join(' ')],
    ['Scale length', `${instrument.scale} mm`],
    ['Frets', `${instrument.frets}, ${SPACING[spacing]}`],
    ['Capo', instrument.capo === 0 ? 'none' : `fret ${instrument.capo}`],
    ['Hand', instrument.leftHanded ? 'left-handed' : 'right-handed'],
    ['Span', `fret ${span.index} to ${span.little}`],
  ];
  return (
    <footer className="title-block" title={makeTuning(instrument.strings.map((s) => s.pitch))}>
      <dl>
        {facts.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <button type="button" onClick={() => openPanel('settings')}>
        Instrument and hand…
      </button>
    </footer>
  );
});

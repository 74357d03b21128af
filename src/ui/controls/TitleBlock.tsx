import { memo } from 'react';
import { type Instrument, makeTuning } from '#neck';
import { makeNoteName } from '#theory';
import { roman } from '../roman.ts';
import { useIntents, useStudy } from '../store/index.ts';
import { keyName } from './keys.ts';

const SPACING = { true: 'true to scale', even: 'evenly spaced' } as const;

const namesOf = ({ strings }: Instrument): string =>
  [...strings]
    .reverse()
    .map(({ pitch }) => makeNoteName(pitch, 'sign'))
    .join(' ');

/** On paper only: what the sheet was drawn for, in one line. */
export const PrintTitle = memo(function PrintTitle() {
  const key = useStudy(({ study }) => study.key);
  const position = useStudy(({ study }) => study.position);
  const instrument = useStudy(({ workspace }) => workspace.instrument);
  const capo = instrument.capo === 0 ? 'no capo' : `capo at fret ${instrument.capo}`;
  const facts = [
    ...(key === undefined ? [] : [`Key ${keyName(key)}`]),
    `strings ${namesOf(instrument)}`,
    capo,
    `position ${roman(position)}`,
  ];
  return <p className="print-title">{facts.join(' · ')}</p>;
});

/** The title block of the drawing: what instrument and which hand it was drawn for. */
export const TitleBlock = memo(function TitleBlock() {
  const instrument = useStudy(({ workspace }) => workspace.instrument);
  const span = useStudy(({ workspace }) => workspace.span);
  const spacing = useStudy(({ workspace }) => workspace.spacing);
  const { openPanel } = useIntents();
  const facts: readonly (readonly [string, string])[] = [
    [`Strings ${instrument.strings.length} to 1`, namesOf(instrument)],
    ['Scale length', `${instrument.scale} mm`],
    ['Frets', `${instrument.frets}, ${SPACING[spacing]}`],
    ['Capo', instrument.capo === 0 ? 'none' : `fret ${instrument.capo}`],
    ['Hand', instrument.leftHanded ? 'left-handed' : 'right-handed'],
    ['Span of my hand', `index at ${span.index}, little finger at ${span.little}`],
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

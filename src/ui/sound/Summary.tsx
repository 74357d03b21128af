import { barsOf } from '#theory';
import { useStudy } from '../store/index.ts';
import { useSounding } from './players.ts';
import { summaryOf } from './summary.ts';

const APART = ' · ';

/** What differs from playing it plainly: the tempo that is heard, what is heard alone, the round. */
export function Summary() {
  const sound = useStudy(({ workspace }) => workspace.sound);
  const chart = useStudy(({ study }) => study.chart);
  // A text: it is set anew only when it reads otherwise.
  const line = useSounding((sounding) =>
    summaryOf(sound, sounding, barsOf(chart).length).join(APART),
  );
  const parts = line === '' ? [] : line.split(APART);
  return (
    <p className="sound-now">
      {parts.map((part, i) => (
        <span key={part}>
          {part}
          {i + 1 < parts.length && APART}
        </span>
      ))}
    </p>
  );
}

import { useSounding } from './players.ts';

const MOST_LAMPS = 12;

const upTo = (count: number): readonly number[] => Array.from({ length: count }, (_, i) => i + 1);

/** The beat that sounds as a number, and among the beats of its bar. Seen by eye only. */
export function Beats() {
  const beat = useSounding((sounding) => sounding.beat);
  const beats = useSounding((sounding) => sounding.beats);
  const counting = useSounding((sounding) => sounding.counting);
  return (
    <span className={counting ? 'beats counting' : 'beats'} aria-hidden="true">
      {beat > 0 && <b>{beat}</b>}
      {beat > 0 &&
        beats <= MOST_LAMPS &&
        upTo(beats).map((n) => <span key={n} className={n === beat ? 'beat on' : 'beat'} />)}
    </span>
  );
}

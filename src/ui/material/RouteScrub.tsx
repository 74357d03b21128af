import { useId, useState } from 'react';
import { formName } from '../form-text.ts';
import { roman } from '../roman.ts';
import { type RouteStudy, useIntents, useStudy } from '../store/index.ts';
import { symbolInSigns } from '../words-aloud.ts';

/** What one step of the way is: `5 of 12: E7, A form at VII`. */
function useStepWords(route: RouteStudy, step: number): string {
  const cells = useStudy(({ study }) => study.cells);
  const asked = route.steps[step];
  const symbol = symbolInSigns(cells[asked?.cell ?? -1]?.symbol ?? '');
  const stop = route.routes[route.chosen]?.stops[step];
  const place = stop ? `${formName(stop.form)} form at ${roman(stop.position)}` : 'the hand rests';
  return `${step + 1} of ${route.steps.length}: ${symbol}, ${place}`;
}

/** Goes along the way chord by chord, repeats written out; the cursor and the hand come along. */
export function RouteScrub({ route }: { readonly route: RouteStudy }) {
  const id = useId();
  const cursor = useStudy(({ study }) => study.cursor);
  const { moveCursorTo } = useIntents();
  const [asked, setAsked] = useState(0);
  const first = route.stepOf[cursor] ?? -1;
  const step = route.steps[asked]?.cell === cursor ? asked : Math.max(0, first);
  const words = useStepWords(route, step);
  if (route.steps.length === 0 || route.routes.length === 0) return null;
  const go = (to: number): void => {
    setAsked(to);
    const target = route.steps[to];
    if (target) moveCursorTo(target.cell);
  };
  return (
    <div className="route-scrub">
      <label htmlFor={id}>Along the way</label>
      <input
        id={id}
        type="range"
        min={1}
        max={route.steps.length}
        value={step + 1}
        aria-valuetext={words}
        onChange={({ currentTarget }) => go(Number(currentTarget.value) - 1)}
      />
      <output htmlFor={id}>{words}</output>
    </div>
  );
}

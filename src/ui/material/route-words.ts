/** What a route costs and where it arrives, in words. */
import type { Route } from '#neck';
import { roman } from '../roman.ts';
import type { LaneCell, RouteStudy } from '../store/index.ts';
import { wayCost } from './material-words.ts';

/** What a way costs, in millimetres of hand movement, by what it is for. */
export interface CostParts {
  readonly moving: number;
  /** Stretches, fingers, barres, forms seldom used up the neck. */
  readonly grips: number;
  /** Away from where the hand was asked to be, or in another form than the one carried. */
  readonly straying: number;
}

const PARTS = ['moving', 'grips', 'straying'] as const;
const PART_WORDS = { moving: 'moving', grips: 'its grips', straying: 'straying' } as const;

/** Takes a cost apart; `shift` is the weight of a millimetre of moving. */
export function costParts({ stops, cost }: Route, shift: number): CostParts {
  const moving = wayCost(stops).millimetres * shift;
  const grips = stops.reduce((sum, stop) => sum + (stop?.effort ?? 0), 0);
  return { moving, grips, straying: Math.max(0, cost - moving - grips) };
}

const total = ({ moving, grips, straying }: CostParts): number => moving + grips + straying;

/** Centimetres from one on, millimetres below. */
function lengthInWords(mm: number): string {
  return mm >= 10 ? `${Math.round(mm / 10)} cm` : `${Math.round(mm)} mm`;
}

/** “costs as much as moving 152 cm: 24 cm for moving, 96 cm for its grips, 32 cm for straying”. */
export function costInWords(parts: CostParts): string {
  const words = PARTS.filter((part) => parts[part] >= 0.5).map(
    (part) => `${lengthInWords(parts[part])} for ${PART_WORDS[part]}`,
  );
  const head = `costs as much as moving ${lengthInWords(total(parts))}`;
  return words.length === 0 ? head : `${head}: ${words.join(', ')}`;
}

/** “4 mm more than the best: 1 cm less for moving, 2 cm more for its grips”. */
export function moreInWords(parts: CostParts, best: CostParts): string {
  const more = total(parts) - total(best);
  if (more < 0.5) return 'costs just as much as the best';
  const words = PARTS.flatMap((part) => {
    const difference = parts[part] - best[part];
    if (Math.abs(difference) < 0.5) return [];
    const way = difference > 0 ? 'more' : 'less';
    return [`${lengthInWords(Math.abs(difference))} ${way} for ${PART_WORDS[part]}`];
  });
  return `${lengthInWords(more)} more than the best: ${words.join(', ')}`;
}

/** Frets from the goal that still count as there: the hand reaches it without moving far. */
const THERE = 1;

/** The step that a route is to arrive by: the first played at or after the goal's bar. */
function stepOfGoal({ goal, stepOf, steps }: RouteStudy, cells: readonly LaneCell[]): number {
  const cell = cells.find((one) => one.bar >= (goal?.bar ?? 1) && (stepOf[one.index] ?? -1) >= 0);
  return cell ? (stepOf[cell.index] ?? 0) : steps.length - 1;
}

/**
 * Where a route that travels is when it should have arrived, and how far it falls back; `undefined`
 * where it arrives and stays, and for all other routes.
 */
export function arrivalInWords(route: RouteStudy, cells: readonly LaneCell[]): string | undefined {
  const { goal, routes, chosen } = route;
  const stops = routes[chosen]?.stops;
  if (!goal || !stops) return undefined;
  const by = stepOfGoal(route, cells);
  const off = (position: number): number => Math.abs(position - goal.position);
  const from = stops.slice(by).flatMap((stop) => stop ?? []);
  const [first] = from;
  if (!first) return undefined;
  const farthest = from.reduce((a, b) => (off(b.position) > off(a.position) ? b : a));
  if (off(farthest.position) <= THERE) return undefined;
  const at = `By bar ${goal.bar} the hand is at ${roman(first.position)}`;
  const short = off(first.position) > THERE ? `, not ${roman(goal.position)}` : '';
  const back =
    farthest.position === first.position
      ? ''
      : `; later it goes as far as ${roman(farthest.position)}`;
  return `${at}${short}${back}: grips nearer ${roman(goal.position)} would cost more than straying from it. Make straying dearer to hold it there.`;
}

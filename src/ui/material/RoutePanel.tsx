import { ROUTES, type RouteKind } from '#lesson';
import { Choice } from '../controls/Choice.tsx';
import { CommandButton } from '../controls/CommandButton.tsx';
import { formName, formPlace } from '../form-text.ts';
import { roman } from '../roman.ts';
import { NumberField } from '../settings/Field.tsx';
import { fieldError, type RouteStudy, useIntents, useStudy } from '../store/index.ts';
import { symbolInSigns } from '../words-aloud.ts';
import { formsInWords, wayInWords } from './material-words.ts';
import { RouteScrub } from './RouteScrub.tsx';
import { RouteWeights } from './RouteWeights.tsx';
import { arrivalInWords, costInWords, costParts, moreInWords } from './route-words.ts';

const NO_ROUTE = 'none';
type Asked = RouteKind | typeof NO_ROUTE;

const KIND_WORDS: Readonly<Record<Asked, string>> = {
  none: 'none',
  stay: 'stay in one place',
  carry: 'carry one form',
  travel: 'travel',
};

const KINDS = [NO_ROUTE, ...ROUTES].map((kind) => [kind, KIND_WORDS[kind as Asked]] as const);

function Kind() {
  const kind = useStudy(({ workspace }) => workspace.route) ?? NO_ROUTE;
  const { setRoute } = useIntents();
  return (
    <Choice
      label="Route"
      options={KINDS as readonly (readonly [Asked, string])[]}
      value={kind}
      onChange={(asked) => setRoute(asked === NO_ROUTE ? undefined : asked)}
    />
  );
}

function Goal({ goal }: { readonly goal: NonNullable<RouteStudy['goal']> }) {
  const { setRouteTo } = useIntents();
  const frets = useStudy(({ workspace }) => workspace.instrument.frets);
  const bars = useStudy(({ study }) => Math.max(1, study.cells.at(-1)?.bar ?? 1));
  return (
    <div className="route-goal">
      <NumberField
        name="routeTo"
        label="To the position at fret"
        whole={{ min: 1, max: frets }}
        expected={`a fret from 1 to ${frets}`}
        value={goal.position}
        onCommit={(position) => setRouteTo(position, goal.bar)}
      />
      <NumberField
        name="routeTo"
        label="by bar"
        whole={{ min: 1, max: bars }}
        expected={`a bar from 1 to ${bars}`}
        value={goal.bar}
        onCommit={(bar) => setRouteTo(goal.position, bar)}
      />
    </div>
  );
}

/** What is asked, in a sentence, so that it is clear what the position and the form are for. */
function Wish({ route }: { readonly route: RouteStudy }) {
  const home = useStudy(({ workspace }) => workspace.position);
  const place = roman(home);
  if (route.kind === 'stay') {
    return <p>Near {place}: the forms change under the hand. Drag the hand to plan elsewhere.</p>;
  }
  if (route.kind === 'carry') {
    return (
      <p>
        The {route.form ?? ''} form from {place} on; pick another form to carry that one.
      </p>
    );
  }
  return <Travel route={route} place={place} />;
}

function Travel({ route, place }: { readonly route: RouteStudy; readonly place: string }) {
  const cells = useStudy(({ study }) => study.cells);
  const arrival = arrivalInWords(route, cells);
  return (
    <p>
      From {place}, a little with every chord.{arrival !== undefined && ` ${arrival}`}
    </p>
  );
}

function Planning({ done, of }: { readonly done: number; readonly of: number }) {
  return (
    <p className="planning">
      <progress value={done} max={of} aria-label="Planning the route" /> {done} of {of} chords{' '}
      <CommandButton name="stop-planning">Stop</CommandButton>
    </p>
  );
}

/** No two ways have the same stops. */
const keyOf = (stops: RouteStudy['routes'][number]['stops']): string =>
  stops.map((stop) => (stop ? `${stop.form.name}${stop.anchor}` : '')).join(' ');

function Ways({ route }: { readonly route: RouteStudy }) {
  const { chooseRoute } = useIntents();
  const shift = useStudy(({ workspace }) => workspace.weights.shift);
  const [best, ...others] = route.routes.map((way) => costParts(way, shift));
  if (!best) return null;
  return (
    <>
      <ol className="row-list ways" aria-label="Ways, best first">
        {route.routes.map(({ stops }, i) => (
          <li key={keyOf(stops)}>
            <button type="button" aria-pressed={i === route.chosen} onClick={() => chooseRoute(i)}>
              <b>{i === 0 ? 'Best' : `${i + 1}.`}</b> {wayInWords(stops)}
              <span className="forms">{formsInWords(stops)}</span>
              <span className="cost">
                {i === 0 ? costInWords(best) : moreInWords(others[i - 1] ?? best, best)}
              </span>
            </button>
          </li>
        ))}
      </ol>
      <p className="footnote">
        The best costs the hand least: all that a player would rather avoid is counted as movement
        of the hand, not the number of moves. What each counts is set under “What the hand would
        rather avoid”. Under the neck lie the four frets of the hand, chord by chord from above.
      </p>
    </>
  );
}

function Pins() {
  const pins = useStudy(({ workspace }) => workspace.pins);
  const cells = useStudy(({ study }) => study.cells);
  const refused = useStudy((state) => fieldError(state, 'pin'));
  const here = useStudy(({ study }) => study.cells[study.cursor]);
  const { unpin } = useIntents();
  const isPinned = pins.some(({ at }) => at === here?.at);
  const form = here?.form?.grip && `${formName(here.form.form)} form, ${formPlace(here.form)}`;
  const symbol = symbolInSigns(here?.symbol ?? '');
  return (
    <div className="pins">
      <h4>Pinned forms</h4>
      <CommandButton name="pin">
        {isPinned ? `Let go of ${symbol}` : `Pin ${symbol} to the ${form ?? 'form shown'}`}
      </CommandButton>
      {refused !== undefined && <p className="field-error">{refused}</p>}
      <ul>
        {pins.map((pin) => (
          <li key={pin.at}>
            {pin.at} {symbolInSigns(cells.find(({ at }) => at === pin.at)?.symbol ?? '')}:{' '}
            {pin.form} form, anchor at fret {pin.anchor}{' '}
            <button
              type="button"
              className="link"
              aria-label={`Let go of the form pinned at ${pin.at}`}
              onClick={() => unpin(pin.at)}
            >
              let go
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}

function Planned({ route }: { readonly route: RouteStudy }) {
  const { setRoute } = useIntents();
  return (
    <>
      {route.goal && <Goal goal={route.goal} />}
      <Wish route={route} />
      {route.error !== undefined && (
        <p className="field-error" role="alert">
          {route.error}
        </p>
      )}
      {route.progress && <Planning {...route.progress} />}
      {route.stopped && (
        <p>
          Planning was stopped.{' '}
          <button type="button" onClick={() => setRoute(route.kind)}>
            Plan again
          </button>
        </p>
      )}
      <RouteScrub route={route} />
      <Ways route={route} />
    </>
  );
}

/** A turn is a look at one chord: the route goes through the chords as they are written. */
function Unturned() {
  const turned = useStudy(({ study }) => study.turned?.symbol);
  const symbol = useStudy(({ study }) => study.symbol);
  if (turned === undefined) return null;
  return (
    <p>
      The route is of the chords as written: {symbolInSigns(symbol)}, not the{' '}
      {symbolInSigns(turned)} that it is turned into on the neck.
    </p>
  );
}

export function RoutePanel() {
  const route = useStudy(({ study }) => study.route);
  return (
    <div className="panel-columns">
      <div className="panel-main">
        <Kind />
        <Unturned />
        {route ? (
          <Planned route={route} />
        ) : (
          <p>Without a route each chord takes what lies best where the hand is.</p>
        )}
      </div>
      <div className="panel-side">
        <Pins />
        <RouteWeights />
      </div>
    </div>
  );
}

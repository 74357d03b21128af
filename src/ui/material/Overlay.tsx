import { memo } from 'react';
import type { Bend, ComparedPlace } from '#neck';
import { type NeckLayout, placeAt } from '../neck/layout.ts';
import { outlinePath } from '../neck/marks.ts';
import { ComingForm } from '../sound/ComingForm.tsx';
import { SoundMarks } from '../sound/SoundMarks.tsx';
import { type FingeredPlace, useStudy } from '../store/index.ts';
import { useDrawn, useEmphasised } from './emphasis.ts';
import { type Says, saysAs } from './labelled.ts';
import { shareOf, signs } from './material-words.ts';
import {
  type BendArc,
  bendArcs,
  bendKey,
  connectionMove,
  type IsMarked,
  type Move,
  placeRadius,
  type TurnMark,
  tagAt,
  turnMark,
} from './overlay-marks.ts';
import { RouteMark } from './RouteMark.tsx';
import { CONNECTIONS_DRAWN } from './sizes.ts';

interface LayerProps {
  readonly layout: NeckLayout;
}

interface ArcProps {
  readonly arc: BendArc;
  readonly emphasised: boolean;
}

function BendMark({ arc, emphasised }: ArcProps) {
  const kind = `${arc.hard ? ' hard' : ''}${arc.next ? ' next' : ''}${emphasised ? ' emphasised' : ''}`;
  return (
    <g className={`bend-mark${kind}`}>
      {!arc.marked && <circle cx={arc.start.x} cy={arc.start.y} r={emphasised ? 5 : 3} />}
      <path d={arc.path} />
      <text x={arc.tip.x} y={arc.tip.y} dy="0.3em">
        {arc.label}
      </text>
    </g>
  );
}

/** The bends that are asked for, and the one that is pointed at whichever it is. */
function useBendsDrawn(): readonly Bend[] {
  const bends = useStudy(({ study }) => study.bends);
  const drawn = useDrawn();
  const key = useEmphasised();
  return bends.filter(
    (bend) => drawn === 'both' || bend.of === drawn || (key !== undefined && bendKey(bend) === key),
  );
}

/** Whether there is a tone at a place. */
function useMarked(): IsMarked {
  const tones = useStudy(({ study }) => study.reading?.tones);
  return ({ string, fret }) =>
    tones?.some((tone) => tone.string === string && tone.fret === fret) ?? false;
}

const BendArcs = memo(function BendArcs({ layout }: LayerProps) {
  const key = useEmphasised();
  const arcs = bendArcs(useBendsDrawn(), layout, useMarked());
  const isOn = ({ keys }: BendArc): boolean => key !== undefined && keys.includes(key);
  return (
    <g className={arcs.some(isOn) ? 'bend-marks pointing' : 'bend-marks'}>
      {arcs.map((arc) => (
        <BendMark key={arc.keys[0]} arc={arc} emphasised={isOn(arc)} />
      ))}
    </g>
  );
});

interface MoveProps {
  readonly move: Move;
  readonly rank: number;
  readonly emphasised: boolean;
}

/** Two rings where a tone stays, an arrow where it moves; the degrees beside it or in it. */
function MoveMark({ move, rank, emphasised }: MoveProps) {
  const { to, rings, free, path, label, tag } = move;
  const kind = `${free ? ' free' : ''}${rank === 0 ? ' best' : ''}${emphasised ? ' emphasised' : ''}`;
  return (
    <g className={`move-mark${kind}`}>
      {rings.map((r) => (
        <circle key={r} cx={to.x} cy={to.y} r={r} />
      ))}
      {path !== '' && <path d={path} />}
      <text className={tag.anchor} x={tag.x} y={tag.y} dy="0.35em">
        {label}
      </text>
    </g>
  );
}

/** What is said of the tones that are led from and to. */
function useSays(): Says {
  const now = useStudy(({ study }) => study.reading);
  const next = useStudy(({ study }) => study.nextReading);
  const { labels, spelling } = useStudy(({ workspace }) => workspace);
  return saysAs({ labels, spelling, now, next });
}

const ConnectionMoves = memo(function ConnectionMoves({ layout }: LayerProps) {
  const connections = useStudy(({ study }) => study.connections);
  const key = useEmphasised();
  const isMarked = useMarked();
  const says = useSays();
  const moves = connections.map((connection) => connectionMove(layout, connection, isMarked, says));
  const pointed = moves.find((move) => move.key === key);
  const drawn = pointed ? [pointed] : moves.slice(0, CONNECTIONS_DRAWN);
  return drawn.map((move) => (
    <MoveMark key={move.key} move={move} rank={moves.indexOf(move)} emphasised={move === pointed} />
  ));
});

function Turned({ mark: { ghost, now, radius, path } }: { readonly mark: TurnMark }) {
  return (
    <g className="turn-mark">
      {ghost && (
        <>
          <path className="ghost" d={outlinePath('disc', radius, ghost)} />
          <text x={ghost.x} y={ghost.y} dy="0.35em">
            {ghost.label}
          </text>
        </>
      )}
      {ghost && !now && (
        <path d={`M${ghost.x - radius} ${ghost.y + radius}l${2 * radius} ${-2 * radius}`} />
      )}
      {now && <circle cx={now.x} cy={now.y} r={radius * 1.2} />}
      {path !== '' && <path d={path} />}
    </g>
  );
}

const TurnMarks = memo(function TurnMarks({ layout }: LayerProps) {
  const moves = useStudy(({ study }) => study.turned?.moves);
  return moves?.map((move) => <Turned key={move.string} mark={turnMark(layout, move)} />);
});

interface FingerProps extends LayerProps {
  readonly place: FingeredPlace;
}

function FingerMark({ layout, place }: FingerProps) {
  const { string, fret, degree, finger } = place;
  const { x, y } = placeAt(layout, string, fret);
  const radius = placeRadius(layout, fret);
  const tag = tagAt(layout, place, radius);
  return (
    <g className="finger-mark">
      <circle cx={x} cy={y} r={radius} />
      <text x={x} y={y} dy="0.35em">
        {degree ? signs(degree) : '?'}
      </text>
      {finger !== undefined && (
        <text className={`finger-tag ${tag.anchor}`} x={tag.x} y={tag.y} dy="0.35em">
          {finger}
        </text>
      )}
    </g>
  );
}

const FingerMarks = memo(function FingerMarks({ layout }: LayerProps) {
  const places = useStudy(({ study }) => study.fingered?.places);
  return places?.map((place) => <FingerMark key={place.string} layout={layout} place={place} />);
});

interface SharedProps extends LayerProps {
  readonly place: ComparedPlace;
}

/** Both degrees where the place is shared and they differ. */
function labelOf({ first, second }: ComparedPlace): string {
  const names = [first, second].flatMap((tone) => (tone ? [signs(tone.degree)] : []));
  return [...new Set(names)].join('·');
}

/** Out of the hand's reach in both: drawn lighter. */
const isOut = ({ first, second }: ComparedPlace): boolean =>
  [first, second].every((tone) => tone === undefined || tone.reach === 'out');

/** Pixels: as large as a place holds, and never too small to read. */
const sizeOfTwo = (radius: number): string => `${Math.max(10, Math.min(13, radius * 0.74))}px`;

function SharedMark({ layout, place }: SharedProps) {
  const { x, y } = placeAt(layout, place.string, place.fret);
  const radius = placeRadius(layout, place.fret);
  const share = shareOf(place);
  const label = labelOf(place);
  return (
    <g
      className={isOut(place) ? `compare-mark ${share} out` : `compare-mark ${share}`}
      data-share={share}
    >
      {share !== 'second' && <circle className="disc" cx={x} cy={y} r={radius * 0.88} />}
      {share !== 'first' && <circle className="ring" cx={x} cy={y} r={radius * 1.08} />}
      <text
        style={label.length > 2 ? { fontSize: sizeOfTwo(radius) } : undefined}
        x={x}
        y={y}
        dy="0.35em"
      >
        {label}
      </text>
    </g>
  );
}

const CompareMarks = memo(function CompareMarks({ layout }: LayerProps) {
  const places = useStudy(({ study }) => study.compared?.places);
  return places?.map((place) => (
    <SharedMark key={`${place.string}:${place.fret}`} layout={layout} place={place} />
  ));
});

const LAYERS = {
  none: undefined,
  bends: BendArcs,
  connections: ConnectionMoves,
  turn: TurnMarks,
  fingering: FingerMarks,
  compare: CompareMarks,
  route: RouteMark,
} as const;

/** What the lens that is on draws over the neck, and what comes next while it plays. */
export const Overlay = memo(function Overlay({ layout }: LayerProps) {
  const lens = useStudy(({ workspace }) => workspace.lens);
  const Layer = LAYERS[lens];
  return (
    <>
      {Layer && (
        <g className="lens-layer" data-lens-layer={lens}>
          <Layer layout={layout} />
        </g>
      )}
      <ComingForm layout={layout} />
      <SoundMarks layout={layout} />
    </>
  );
});

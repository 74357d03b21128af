import { type ComponentType, type KeyboardEvent, memo, useMemo, useRef } from 'react';
import { type FormAtHand, type Instrument, type Reading, type Span, stretchLimits } from '#neck';
import { makeNoteName } from '#theory';
import { roman } from '../roman.ts';
import { Board } from './Board.tsx';
import { type BracketPens, Brackets } from './Brackets.tsx';
import type { DrawnAheadProps } from './DrawnAhead.tsx';
import { useHandDrag } from './drag.ts';
import type { FormMapProps } from './FormMap.tsx';
import { Hand, type HandReach, HandWash } from './Hand.tsx';
import {
  at,
  box,
  fretRange,
  layoutNeck,
  middleOf,
  type NeckLayout,
  numberedFrets,
} from './layout.ts';
import type { Pens } from './looks.ts';
import { barreLines, gripLine, type Labels, toneMarks } from './marks.ts';
import { type Bracket, bracketKey, brackets } from './places.ts';
import { type Size, useSize } from './size.ts';
import { Tones } from './Tones.tsx';

export interface NeckProps {
  readonly reading: Reading | undefined;
  readonly symbol: string;
  /** What the chord is turned into. */
  readonly turned?: string | undefined;
  readonly places: readonly FormAtHand[];
  readonly instrument: Instrument;
  readonly span: Span;
  readonly position: number;
  readonly labels: Labels;
  readonly spacing: 'true' | 'even';
  /** Takes more of the window's height. */
  readonly tall?: boolean;
  /** What was there when a key began to be held down: buttons that nobody presses meanwhile stay. */
  readonly held?: (Pick<NeckProps, 'places'> & Partial<Pick<NeckProps, 'reading'>>) | undefined;
  readonly onPosition: (position: number) => void;
  readonly onPick: (form: string, anchor: number) => void;
  /** The lens that is on, and what it draws over, lays over and shows below the neck. */
  readonly lens?: string | undefined;
  readonly overlay?: Layer;
  readonly board?: Layer;
  readonly below?: Layer;
  /** Buttons over the brackets; until they are there the brackets can be seen and not pressed. */
  readonly map?: ComponentType<FormMapProps> | undefined;
  /** Draws in advance. */
  readonly ahead?: ComponentType<DrawnAheadProps> | undefined;
  /** What writes labels as outlines; until it is there they are set as type. */
  readonly pens?: (Pens & BracketPens & RestPen) | undefined;
}

/** Path data of the crosses on strings that the grip leaves silent. */
interface RestPen {
  readonly rests: (reading: Reading | undefined, layout: NeckLayout) => string;
}

type Layer = ComponentType<{ readonly layout: NeckLayout }> | undefined;

/** Below this width (in ems) the neck stands upright. */
const UPRIGHT_BELOW = 44;
/** In a window lower than this many ems there are fewer rows of brackets. */
const LOW_BELOW = 48;
/** Rows of brackets: an upright neck and a low window have less room for them. */
const LEVELS = { few: 2, many: 3 };

function layoutOf(
  size: Size,
  {
    instrument,
    spacing,
    tall = false,
  }: Pick<NeckProps, 'instrument' | 'spacing'> & { readonly tall: boolean | undefined },
): NeckLayout {
  const upright = size.width < UPRIGHT_BELOW * size.em;
  const low = size.sight < LOW_BELOW * size.em;
  return layoutNeck({
    width: size.width,
    em: size.em,
    strings: instrument.strings.length,
    frets: instrument.frets,
    scale: instrument.scale,
    spacing,
    upright,
    leftHanded: instrument.leftHanded,
    levels: upright || low || tall ? LEVELS.few : LEVELS.many,
    sight: size.sight,
    tall,
  });
}

const FretNumbers = memo(function FretNumbers({ layout }: { readonly layout: NeckLayout }) {
  return numberedFrets(layout).map((fret) => {
    const { x, y } = at(layout, middleOf(layout, fret), layout.numbers);
    return (
      <text key={fret} className="fret-number" x={x} y={y} dy="0.35em">
        {fret}
      </text>
    );
  });
});

const GripLine = memo(function GripLine(props: {
  readonly reading: Reading | undefined;
  readonly layout: NeckLayout;
  readonly pens: RestPen | undefined;
}) {
  return (
    <g className="grip">
      <path
        className="barre"
        d={barreLines(props.reading, props.layout).join('')}
        strokeWidth={props.layout.gap * 0.5}
      />
      <path className="grip-line" d={gripLine(props.reading, props.layout)} />
      <path className="rest-mark" d={props.pens?.rests(props.reading, props.layout)} />
    </g>
  );
});

const KEY_STEPS: Readonly<Record<string, number>> = {
  ArrowRight: 1,
  ArrowUp: 1,
  ArrowLeft: -1,
  ArrowDown: -1,
};

interface SliderProps {
  readonly layout: NeckLayout;
  readonly position: number;
  readonly onPosition: (position: number) => void;
}

function keyTarget(event: KeyboardEvent, { position, layout }: SliderProps): number | undefined {
  if (event.ctrlKey || event.metaKey || event.altKey || event.shiftKey) return undefined;
  if (event.key === 'Home') return 1;
  if (event.key === 'End') return layout.spec.frets;
  const step = KEY_STEPS[event.key];
  return step === undefined ? undefined : Math.min(layout.spec.frets, Math.max(1, position + step));
}

/** The hand's handle: what a keyboard and a screen reader hold of it. */
const HandSlider = memo(function HandSlider(props: SliderProps) {
  const { layout, position } = props;
  const area = box(layout, fretRange(layout, position, position + 3), {
    from: layout.fingers - layout.em * 0.7,
    to: layout.numeral + layout.em * 0.9,
  });
  return (
    <div
      className="hand-handle"
      style={{ left: area.x, top: area.y, width: area.width, height: area.height }}
      role="slider"
      tabIndex={0}
      aria-label="Hand position"
      aria-orientation={layout.spec.upright ? 'vertical' : 'horizontal'}
      aria-valuemin={1}
      aria-valuemax={layout.spec.frets}
      aria-valuenow={position}
      aria-valuetext={`position ${roman(position)}`}
      onKeyDown={(event) => {
        const target = keyTarget(event, props);
        if (target === undefined) return;
        event.preventDefault();
        event.stopPropagation();
        props.onPosition(target);
      }}
    />
  );
});

/** The hand from the capo on: behind it there is nothing to press. */
function handOver(instrument: Instrument, span: Span, wanted: number): HandReach {
  const lowest = instrument.capo + 1;
  const position = Math.max(wanted, lowest);
  const { low, high } = stretchLimits(instrument, span, position);
  return { position, low: Math.max(low, lowest), high };
}

interface DrawingProps extends NeckProps {
  readonly layout: NeckLayout;
  readonly brackets: readonly Bracket[];
  readonly chosen: string | undefined;
}

function Drawing(props: DrawingProps) {
  const { layout, reading, instrument, span, position, labels, overlay: Overlay } = props;
  const marks = toneMarks(reading, layout, labels);
  const hand = useMemo<HandReach>(
    () => handOver(instrument, span, position),
    [instrument, span, position],
  );
  const numbered = labels !== 'fingers' || reading?.chosen?.grip === undefined;
  const strings = useMemo(
    () =>
      instrument.strings.map(({ pitch, gauge }) => ({ name: makeNoteName(pitch, 'sign'), gauge })),
    [instrument],
  );
  return (
    <svg
      width={layout.width}
      height={layout.height}
      viewBox={`0 0 ${layout.width} ${layout.height}`}
      role="img"
      aria-label={`Neck with ${props.turned ?? props.symbol}, position ${roman(position)}`}
    >
      <rect className="paper" width="100%" height="100%" />
      <HandWash layout={layout} hand={hand} />
      <Board layout={layout} strings={strings} capo={instrument.capo} />
      <FretNumbers layout={layout} />
      <Brackets layout={layout} brackets={props.brackets} chosen={props.chosen} pens={props.pens} />
      <Hand layout={layout} hand={hand} numbered={numbered} />
      <GripLine reading={reading} layout={layout} pens={props.pens} />
      <Tones marks={marks} pens={props.pens} held={props.held !== undefined} />
      {Overlay && <Overlay layout={layout} />}
    </svg>
  );
}

/** The neck as a measured drawing: tones, the hand as a dimension, brackets for every form. */
export function Neck(props: NeckProps) {
  const { instrument, spacing, tall, reading, places, position, onPosition, onPick } = props;
  const { board: FingerBoard, below: Below, map: FormMap, ahead: DrawnAhead } = props;
  const [sheet, size] = useSize<HTMLDivElement>();
  const layout = useMemo(
    () => (size === undefined ? undefined : layoutOf(size, { instrument, spacing, tall })),
    [size, instrument, spacing, tall],
  );
  const drawing = useRef<HTMLDivElement>(null);
  useHandDrag(drawing, { layout, position, onPosition });
  const levels = layout?.spec.levels ?? LEVELS.many;
  const placed = brackets(places, levels);
  const rested = props.held ?? props;
  const chosen = reading?.chosen;
  const pick = useMemo(() => (bracket: Bracket) => onPick(bracket.name, bracket.anchor), [onPick]);
  return (
    <div
      ref={sheet}
      className="neck"
      role="group"
      aria-label="Neck"
      data-neck=""
      data-lens={props.lens}
      data-position={position}
      data-symbol={props.symbol}
      data-form={chosen?.form.name}
      data-anchor={chosen?.anchor}
    >
      {layout && (
        <div
          ref={drawing}
          className="neck-drawing"
          style={{ width: layout.width, height: layout.height }}
        >
          <Drawing {...props} layout={layout} brackets={placed} chosen={bracketKey(reading)} />
          {FormMap && (
            <FormMap
              layout={layout}
              brackets={brackets(rested.places, levels)}
              chosen={bracketKey(rested.reading)}
              onPick={pick}
            />
          )}
          {FingerBoard && <FingerBoard layout={layout} />}
          <HandSlider layout={layout} position={position} onPosition={onPosition} />
        </div>
      )}
      {layout && Below && <Below layout={layout} />}
      {layout && DrawnAhead && (
        <DrawnAhead layout={layout} labels={props.labels} pens={props.pens} />
      )}
    </div>
  );
}

import { type KeyboardEvent, memo, useRef, useState } from 'react';
import { type Fret, fret, type StringNumber, stringNumber } from '#neck';
import { at, fretSpace, type NeckLayout } from '../neck/layout.ts';
import { useIntents, useStudy } from '../store/index.ts';

interface BoardProps {
  readonly layout: NeckLayout;
}

interface Square {
  readonly string: StringNumber;
  readonly fret: Fret;
}

const keyOf = (square: Square): string => `${square.string}:${square.fret}`;

/** Every place of the neck from the capo on, string by string. */
function squaresOf(layout: NeckLayout, capo: number): readonly Square[] {
  const frets = Array.from({ length: layout.spec.frets - capo + 1 }, (_, i) => fret(capo + i));
  return layout.lines.flatMap((_, i) =>
    frets.map((f) => ({ string: stringNumber(i + 1), fret: f })),
  );
}

function areaOf(layout: NeckLayout, square: Square) {
  const { from, to } = fretSpace(layout, square.fret);
  const across = layout.lines[square.string - 1] ?? 0;
  const a = at(layout, from, across - layout.gap / 2);
  const b = at(layout, to, across + layout.gap / 2);
  return {
    left: Math.min(a.x, b.x),
    top: Math.min(a.y, b.y),
    width: Math.abs(a.x - b.x),
    height: Math.abs(a.y - b.y),
  };
}

/** Frets and strings that an arrow goes, as it is seen. */
function stepOf(key: string, layout: NeckLayout): readonly [fret: number, string: number] {
  const { upright, leftHanded } = layout.spec;
  const mirror = leftHanded ? -1 : 1;
  const lying: Readonly<Record<string, readonly [number, number]>> = {
    ArrowRight: [mirror, 0],
    ArrowLeft: [-mirror, 0],
    ArrowDown: [0, 1],
    ArrowUp: [0, -1],
  };
  const standing: typeof lying = {
    ArrowDown: [1, 0],
    ArrowUp: [-1, 0],
    ArrowRight: [0, -mirror],
    ArrowLeft: [0, mirror],
  };
  return (upright ? standing : lying)[key] ?? [0, 0];
}

const nameOf = ({ string, fret: f }: Square): string =>
  f === 0 ? `String ${string}, open` : `String ${string}, fret ${f}`;

interface SquareProps extends BoardProps {
  readonly square: Square;
  readonly held: boolean;
  readonly stop: boolean;
  readonly onPut: (square: Square) => void;
}

const SquareButton = memo(function SquareButton(props: SquareProps) {
  const { layout, square, held, stop, onPut } = props;
  return (
    <button
      type="button"
      className="finger-place"
      data-place={keyOf(square)}
      style={areaOf(layout, square)}
      aria-pressed={held}
      aria-label={nameOf(square)}
      tabIndex={stop ? 0 : -1}
      onClick={() => onPut(square)}
    />
  );
});

interface OpenBoardProps extends BoardProps {
  readonly capo: number;
}

function useHeld(): (square: Square) => boolean {
  const places = useStudy(({ study }) => study.fingered?.places);
  return (square) =>
    places?.some((place) => place.string === square.string && place.fret === square.fret) ?? false;
}

function OpenBoard({ layout, capo }: OpenBoardProps) {
  const group = useRef<HTMLDivElement>(null);
  const position = useStudy(({ study }) => study.position);
  const [gone, setAt] = useState<string>();
  const { putFinger } = useIntents();
  const isHeld = useHeld();
  const stop = gone ?? `1:${Math.max(position, capo)}`;
  const goTo = (key: string): void => {
    const button = group.current?.querySelector<HTMLElement>(`[data-place="${key}"]`);
    if (button === null || button === undefined) return;
    setAt(key);
    button.focus({ preventScroll: true });
  };
  // A press on the neck leaves the focus where it is, but the keys go on from here.
  const put = (square: Square): void => {
    goTo(keyOf(square));
    putFinger(square.string, square.fret);
  };
  const walk = (event: KeyboardEvent): void => {
    const [along, over] = stepOf(event.key, layout);
    if ((along === 0 && over === 0) || event.shiftKey) return;
    event.preventDefault();
    event.stopPropagation();
    const [string = 1, f = 0] = stop.split(':').map(Number);
    goTo(`${string + over}:${f + along}`);
  };
  return (
    <div
      ref={group}
      className="finger-board"
      role="toolbar"
      aria-label="Places on the neck: put a finger down or lift it"
      onKeyDown={walk}
    >
      {squaresOf(layout, capo).map((square) => (
        <SquareButton
          key={keyOf(square)}
          layout={layout}
          square={square}
          held={isHeld(square)}
          stop={keyOf(square) === stop}
          onPut={put}
        />
      ))}
    </div>
  );
}

/** While the lens for fingerings is on, every place of the neck is a button. */
export const FingerBoard = memo(function FingerBoard({ layout }: BoardProps) {
  const lens = useStudy(({ workspace }) => workspace.lens);
  const capo = useStudy(({ workspace }) => workspace.instrument.capo);
  return lens === 'fingering' ? <OpenBoard layout={layout} capo={capo} /> : null;
});

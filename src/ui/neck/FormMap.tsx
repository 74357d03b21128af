import { memo, useRef } from 'react';
import { formName } from '../form-text.ts';
import { roman } from '../roman.ts';
import { bracketExtent, bracketRow } from './Brackets.tsx';
import { box, type NeckLayout } from './layout.ts';
import type { Bracket } from './places.ts';

export interface FormMapProps {
  readonly layout: NeckLayout;
  readonly brackets: readonly Bracket[];
  /** Key of the bracket of the chosen form. */
  readonly chosen: string | undefined;
  readonly onPick: (bracket: Bracket) => void;
}

const where = ({ first, playable }: Bracket): string =>
  (first === 0 ? 'open' : `at ${roman(first)}`) + (playable ? '' : ', no playable grip');

/** Moves the focus along the brackets; there is one tab stop for all of them. */
function stepFocus(group: HTMLElement | null, step: number): void {
  const buttons: readonly Element[] = [...(group?.children ?? [])];
  const here = document.activeElement === null ? -1 : buttons.indexOf(document.activeElement);
  const next = buttons[here + step];
  if (next instanceof HTMLElement) next.focus();
}

const STEPS: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowUp: -1,
  ArrowRight: 1,
  ArrowDown: 1,
};

/** Where a button lies, as one property: a move of the cursor moves them all. */
function insetOf(layout: NeckLayout, bracket: Bracket): string {
  const { x, y, width, height } = box(
    layout,
    bracketExtent(layout, bracket),
    bracketRow(layout, bracket),
  );
  const [right, bottom] = [layout.width - x - width, layout.height - y - height];
  return [y, right, bottom, x].map((side) => `${side.toFixed(2)}px`).join(' ');
}

/** A button over every bracket: a press takes the hand to that copy of the form. */
export const FormMap = memo(function FormMap({ layout, brackets, chosen, onPick }: FormMapProps) {
  const group = useRef<HTMLDivElement>(null);
  const stop = brackets.some(({ key }) => key === chosen) ? chosen : brackets[0]?.key;
  return (
    <div
      ref={group}
      className="form-map"
      role="toolbar"
      aria-label="Where else: every place of the forms of this chord"
      aria-orientation={layout.spec.upright ? 'vertical' : 'horizontal'}
      onKeyDown={(event) => {
        const step = STEPS[event.key];
        if (step === undefined || event.shiftKey) return;
        event.preventDefault();
        event.stopPropagation();
        stepFocus(group.current, layout.spec.leftHanded ? -step : step);
      }}
    >
      {brackets.map((bracket) => {
        return (
          <button
            key={bracket.order}
            type="button"
            className="bracket-button"
            style={{ inset: insetOf(layout, bracket) }}
            aria-pressed={bracket.key === chosen}
            aria-label={`${formName(bracket)} form, ${where(bracket)}`}
            tabIndex={bracket.key === stop ? 0 : -1}
            onClick={() => onPick(bracket)}
          />
        );
      })}
    </div>
  );
});

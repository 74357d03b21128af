import { useEffect } from 'react';
import { onReady } from '../store/ready.ts';
import { type BracketPens, drawnBrackets } from './Brackets.tsx';
import type { NeckLayout } from './layout.ts';
import { labelling, outlinePaths, type Pens } from './looks.ts';
import { type Labels, toneMarks } from './marks.ts';
import { bracketKey, brackets } from './places.ts';

export interface DrawnAheadProps {
  readonly layout: NeckLayout;
  readonly labels: Labels;
  readonly pens: (Pens & BracketPens) | undefined;
}

/** Draws what the cursor may come to as soon as its study is ready: the drawings remember it. */
export function DrawnAhead({ layout, labels, pens }: DrawnAheadProps) {
  useEffect(
    () =>
      onReady(({ reading, places }) => {
        const marks = toneMarks(reading, layout, labels);
        outlinePaths(marks);
        labelling(marks, pens);
        drawnBrackets(brackets(places, layout.spec.levels), layout, bracketKey(reading), pens);
      }),
    [layout, labels, pens],
  );
  return null;
}

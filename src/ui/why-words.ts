/** Why a form is called so; fetched after the page stands. */
import type { FormAtHand, FormReason } from '#neck';
import { formName, lowestFret, stringsInWords } from './form-text.ts';
import { roman } from './roman.ts';

/** Where a shape has no finger or open string at its nut. */
function beginning(at: FormAtHand): string {
  const lowest = lowestFret(at);
  if (lowest === at.anchor || at.anchor < 0) return '';
  if (lowest < at.anchor) return ', begun a fret lower';
  return at.anchor === 0 ? ', no string open' : `, its nut ${roman(at.anchor)} unused`;
}

/**
 * Why a form is called so: `open E shape 8 frets up, barred, root on strings 6, 4 and
 * 1`; `open C shape 7 frets up, its nut VII unused, root on string 5`. Of a form that a player put
 * down, which has no open shape, only where its root is.
 */
export function whyInWords(at: FormAtHand, { roots, up, barre }: FormReason): string {
  const { form } = at;
  const far = Math.abs(up);
  const moved = up === 0 ? '' : ` ${far} ${far === 1 ? 'fret' : 'frets'} ${up < 0 ? 'down' : 'up'}`;
  const shape = form.own ? [] : [`open ${formName(form)} shape${moved}${beginning(at)}`];
  const nut = barre && !form.own ? ['barred'] : [];
  const root = roots.length === 0 ? [] : [`root on ${stringsInWords(roots)}`];
  return [...shape, ...nut, ...root].join(', ');
}

/**
 * Chords written out degree by degree: `C:(b3,5,b7)`, `G:min7(9)/b3` (C. Harte et al., "Symbolic
 * representation of musical chords", ISMIR 2005). It can say any set of tones, so it is also the
 * last resort when a chord has no name of its own.
 */
import { type Frame, makeChordOf } from './chord-frame.ts';
import { readItems } from './chord-items.ts';
import { inOrder, tonesOf } from './chord-tones.ts';
import { A_QUALITY, type Failure, fail, readTokens } from './chord-words.ts';
import { makeDegree, noteAt, parseDegree, sameDegree } from './degrees.ts';
import { ok, type Result } from './result.ts';
import type { Chord, Degree } from './types.ts';

const A_DEGREE = 'a degree from 1 to 13, such as b3 or *5';
const ROOT: Degree = { number: 1, alter: 0 };

interface Part {
  readonly from: number;
  readonly text: string;
}

function readShorthand({ from, text }: Part, plain: string): Result<readonly Degree[], Failure> {
  if (text === '' || text === '1') return ok([ROOT]);
  // Some corpora set the seventh apart: `C:min:maj7`.
  const tokens = readTokens(plain.replace(/(?<=\w):/g, ' '), from, from + text.length);
  if (!tokens.ok) return tokens;
  const items = readItems(tokens.value, 'before');
  return items.ok ? tonesOf(items.value) : items;
}

function readDegree({ from, text }: Part): Result<Degree, Failure> {
  const degree = parseDegree(text);
  return degree.ok ? degree : fail('tension', { from, to: from + text.length }, A_DEGREE);
}

/** The parts of a comma list, each with its place and without the space around it. */
function parts(list: Part): readonly Part[] {
  let from = list.from;
  return list.text.split(',').map((text) => {
    const part = { from: from + text.length - text.trimStart().length, text: text.trim() };
    from += text.length + 1;
    return part;
  });
}

function readList(list: Part, shorthand: readonly Degree[]): Result<readonly Degree[], Failure> {
  let tones = shorthand;
  for (const part of parts(list)) {
    // The root stays: without it this would be another chord.
    const omitted = /^\*(?!1$)/.test(part.text);
    const degree = readDegree(omitted ? { from: part.from + 1, text: part.text.slice(1) } : part);
    if (!degree.ok) return degree;
    const rest = tones.filter((tone) => !sameDegree(tone, degree.value));
    tones = omitted ? rest : [...rest, degree.value];
  }
  return ok(inOrder(tones));
}

const HARTE = /^:\s*([^(/]*)(?:\(([^)]*)\))?(?:\/\s*([#b]*\d+))?$/;

function readTones(frame: Frame, found: RegExpExecArray): Result<readonly Degree[], Failure> {
  const { text } = frame.plain;
  const [whole, shorthand = '', list, bass] = found;
  if (shorthand === '' && list === undefined && bass === undefined) {
    return fail('quality', { from: frame.qualityTo, to: frame.qualityTo }, A_QUALITY);
  }
  const from = frame.qualityFrom + whole.indexOf(shorthand, 1);
  // `C:/5` is the major triad, `C:(5)` only root and fifth.
  const triad = shorthand === '' && list === undefined;
  const tones = triad ? tonesOf([]) : readShorthand({ from, text: shorthand.trimEnd() }, text);
  if (!tones.ok || list === undefined) return tones;
  return readList({ from: frame.qualityFrom + whole.indexOf('(') + 1, text: list }, tones.value);
}

/** Undefined when the symbol is not written in this way (no colon after the root). */
export function readHarte(frame: Frame): Result<Chord, Failure> | undefined {
  const { qualityFrom, qualityTo, root, plain } = frame;
  const quality = plain.text.slice(qualityFrom, qualityTo);
  if (!quality.startsWith(':')) return undefined;
  const found = HARTE.exec(quality);
  if (!found) return fail('quality', { from: qualityFrom, to: qualityTo }, A_QUALITY, A_DEGREE);
  const tones = readTones(frame, found);
  if (!tones.ok) return tones;
  const bassText = found[3];
  const from = qualityTo - (bassText?.length ?? 0);
  const degree = bassText === undefined ? undefined : readDegree({ from, text: bassText });
  if (degree && !degree.ok) return degree;
  const bass = degree ? noteAt(root, degree.value) : frame.bass?.note;
  return ok(makeChordOf(root, tones.value, bass));
}

/** `:(3,5,b7)`: every tone but the root. */
export const makeHarte = (tones: readonly Degree[]): string =>
  `:(${
    tones
      .slice(1)
      .map((tone) => makeDegree(tone))
      .join(',') || '1'
  })`;

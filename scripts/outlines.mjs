// Writes the outlines of the few characters that stand in the tones on the neck and over its
// brackets, so that fifty labels can be drawn as one path: node scripts/outlines.mjs
import { writeFileSync } from 'node:fs';
import opentype from 'opentype.js';
import { at } from './run.mjs';

/** @typedef {import('opentype.js').Font} Font */
/** @typedef {import('opentype.js').PathCommand} Command */

/** Units to the em: a unit is an eighth of a pixel in a label of 16 pixels. */
const EM = 128;

const ACCIDENTALS = ['♭', '♯', '𝄫', '𝄪'];
const LETTERS = ['A', 'B', 'C', 'D', 'E', 'F', 'G'];

/** Degrees, notes and fingers; names of forms. */
const FACES = /** @type {const} */ ([
  ['LABEL', 'atkinson-hyperlegible-next', 700, ['R', ...'0123456789', ...LETTERS]],
  ['QUIET_LABEL', 'atkinson-hyperlegible-next', 500, ['R', ...'0123456789', ...LETTERS]],
  ['BRACKET', 'besley', 500, LETTERS],
  ['CHOSEN_BRACKET', 'besley', 700, LETTERS],
]);

/** @param {readonly string[]} parts */
const load = (...parts) => opentype.loadSync(at(...parts));

/** @param {string} family @param {number} weight */
const latin = (family, weight) =>
  load('node_modules/@fontsource', family, 'files', `${family}-latin-${weight}-normal.woff`);

/** The points of a command, the one it leads to last. @param {Command} command */
const pointsOf = (command) => {
  if (command.type === 'Z') return [];
  const to = [command.x, command.y];
  if (command.type === 'Q') return [command.x1, command.y1, ...to];
  return command.type === 'C' ? [command.x1, command.y1, command.x2, command.y2, ...to] : to;
};

/** Path data from the left end of the baseline on, y downwards. @param {readonly Command[]} commands */
const relative = (commands) => {
  let here = [0, 0];
  let start = here;
  let path = '';
  for (const command of commands) {
    const points = pointsOf(command).map(Math.round);
    const steps = points.map((point, i) => point - (here[i % 2] ?? 0));
    if (command.type === 'L' && steps.every((step) => step === 0)) continue;
    path += command.type.toLowerCase() + steps.join(' ');
    here = command.type === 'Z' ? start : points.slice(-2);
    if (command.type === 'M') start = here;
  }
  return path;
};

/** @param {Font} font @param {string} character */
const lineOf = (font, character) => {
  const glyph = font.charToGlyph(character);
  const advance = Math.round(((glyph.advanceWidth ?? 0) * EM) / font.unitsPerEm);
  return `${character} ${advance} ${relative(glyph.getPath(0, 0, EM).commands)}`;
};

const accidentals = load('src', 'ui', 'type', 'accidentals.otf');

const faces = FACES.map(([name, family, weight, characters]) => {
  const font = latin(family, weight);
  const lines = [
    ...characters.map((one) => lineOf(font, one)),
    ...ACCIDENTALS.map((one) => lineOf(accidentals, one)),
  ];
  return `/** ${family}, weight ${weight}. */\nexport const ${name} = \`${lines.join('\n')}\`;\n`;
});

const head = `/**
 * Made by scripts/outlines.mjs from the fonts of the page (SIL Open Font License 1.1). Each line has a
 * character, how far it takes the pen, and path data from where it stood; ${EM} units to the em.
 */
`;

writeFileSync(at('src', 'ui', 'type', 'outlines.ts'), [head, ...faces].join('\n'));

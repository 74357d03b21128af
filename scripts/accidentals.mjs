// Draws the five accidentals as a small font, so that they stand at the height of letters and
// digits without any help from the page: node scripts/accidentals.mjs
import { writeFileSync } from 'node:fs';
import opentype from 'opentype.js';
import { at } from './run.mjs';

/** @typedef {import('opentype.js').Path} Path */
/** @typedef {(path: Path) => void} Draw */

/** Units of the drawing board; capitals and digits beside the signs are about 670 high. */
const EM = 1000;

/**
 * A closed polygon. Outer outlines run clockwise, holes the other way round.
 * @param {Path} path
 * @param {readonly (readonly [number, number])[]} points
 */
const polygon = (path, points) => {
  for (const [i, [x, y]] of points.entries()) i === 0 ? path.moveTo(x, y) : path.lineTo(x, y);
  path.close();
};

/**
 * @param {Path} path @param {number} left @param {number} bottom @param {number} width
 * @param {number} height
 */
const bar = (path, left, bottom, width, height) =>
  polygon(path, [
    [left, bottom],
    [left, bottom + height],
    [left + width, bottom + height],
    [left + width, bottom],
  ]);

/**
 * A thick stroke that rises from left to right.
 * @param {Path} path @param {number} left @param {number} bottom @param {number} width
 * @param {number} rise @param {number} thick
 */
const slant = (path, left, bottom, width, rise, thick) =>
  polygon(path, [
    [left, bottom],
    [left, bottom + thick],
    [left + width, bottom + thick + rise],
    [left + width, bottom + rise],
  ]);

/** @type {Draw} */
const sharp = (path) => {
  bar(path, 110, -130, 62, 850);
  bar(path, 264, -90, 62, 850);
  slant(path, 40, 120, 356, 92, 118);
  slant(path, 40, 410, 356, 92, 118);
};

/** @type {Draw} */
const natural = (path) => {
  bar(path, 60, 70, 56, 700);
  bar(path, 264, -130, 56, 700);
  slant(path, 60, 70, 260, 76, 112);
  slant(path, 60, 386, 260, 76, 112);
};

/**
 * Stem and bowl; the bowl is thick at its upper right and runs out into the foot of the stem.
 * @param {Path} path @param {number} left
 */
const flatAt = (path, left) => {
  bar(path, left, -30, 64, 850);
  const x = left + 56;
  path.moveTo(x, 360);
  path.curveTo(x + 60, 440, x + 130, 462, x + 190, 455);
  path.curveTo(x + 278, 446, x + 316, 385, x + 304, 308);
  path.curveTo(x + 284, 192, x + 130, 78, x, -30);
  path.lineTo(x, 60);
  path.curveTo(x + 90, 150, x + 172, 232, x + 180, 318);
  path.curveTo(x + 186, 372, x + 156, 396, x + 116, 388);
  path.curveTo(x + 70, 378, x + 30, 340, x, 290);
  path.close();
};

/** @type {Draw} */
const flat = (path) => flatAt(path, 50);

/** @type {Draw} */
const doubleFlat = (path) => {
  flatAt(path, 50);
  flatAt(path, 334);
};

/** A cross with a square at each end. @type {Draw} */
const doubleSharp = (path) => {
  const [left, bottom, side, arm, half] = [50, 150, 360, 116, 34];
  const [right, top] = [left + side, bottom + side];
  for (const x of [left, right - arm]) {
    for (const y of [bottom, top - arm]) bar(path, x, y, arm, arm);
  }
  polygon(path, [
    [left, bottom + half],
    [right - half, top],
    [right, top - half],
    [left + half, bottom],
  ]);
  polygon(path, [
    [left, top - half],
    [left + half, top],
    [right, bottom + half],
    [right - half, bottom],
  ]);
};

/** @type {readonly (readonly [name: string, unicode: number, advance: number, draw: Draw])[]} */
const GLYPHS = [
  ['flat', 0x266d, 440, flat],
  ['natural', 0x266e, 380, natural],
  ['sharp', 0x266f, 440, sharp],
  ['doublesharp', 0x1d12a, 460, doubleSharp],
  ['doubleflat', 0x1d12b, 720, doubleFlat],
];

const glyphs = GLYPHS.map(([name, unicode, advanceWidth, draw]) => {
  const path = new opentype.Path();
  draw(path);
  return new opentype.Glyph({ name, unicode, advanceWidth, path });
});

const notdef = new opentype.Glyph({
  name: '.notdef',
  unicode: 0,
  advanceWidth: 400,
  path: new opentype.Path(),
});

const font = new opentype.Font({
  familyName: 'Handspan Accidentals',
  styleName: 'Regular',
  unitsPerEm: EM,
  ascender: 800,
  descender: -200,
  glyphs: [notdef, ...glyphs],
});

writeFileSync(at('src', 'ui', 'type', 'accidentals.otf'), Buffer.from(font.toArrayBuffer()));

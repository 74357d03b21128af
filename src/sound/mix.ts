/** Levels: how loud each part is, and what nonsense does to them. */
import { type Mix, PARTS, type PartMix, type PartName } from './types.ts';

const isLevel = (level: number): boolean => Number.isFinite(level) && level >= 0 && level <= 1;

/** The mix with changes to one part; a level outside 0 to 1 is left as it was. The same mix if nothing changes. */
export function withPart(mix: Mix, name: PartName, change: Partial<PartMix>): Mix {
  const before = mix.parts[name];
  const asked = { ...before, ...change };
  const after = { ...asked, level: isLevel(asked.level) ? asked.level : before.level };
  const same =
    after.level === before.level && after.mute === before.mute && after.solo === before.solo;
  return same ? mix : { ...mix, parts: { ...mix.parts, [name]: after } };
}

/** The mix with another level of the whole; outside 0 to 1 nothing changes. */
export const withMaster = (mix: Mix, master: number): Mix =>
  isLevel(master) && master !== mix.master ? { ...mix, master } : mix;

/** Loudness is felt about as the square root of the gain: a fader's middle is not half as loud. */
export const gainOfLevel = (level: number): number => level * level;

/** The gain of a part among the others. */
export function gainOfPart(mix: Mix, name: PartName): number {
  const { level, mute, solo } = mix.parts[name];
  const others = name !== 'count' && PARTS.some((one) => mix.parts[one].solo);
  return mute || (others && !solo) ? 0 : gainOfLevel(level);
}

/** The mix in which only these parts are heard, whatever is muted or solo now. */
export const onlyParts = (mix: Mix, names: readonly PartName[]): Mix =>
  PARTS.reduce(
    (all, name) => withPart(all, name, { mute: !names.includes(name), solo: false }),
    mix,
  );

/** What differs from playing it plainly, in a line. */
import type { SoundSetup } from '#lesson';
import { DEFAULT_MIX, loopBeyond, type Mix, makeLoop, PARTS, type PartName, tempoIn } from '#sound';
import type { Sounding } from './sounding.ts';
import { PART_WORDS, percent, stepsInWords } from './words.ts';

const listed = (parts: readonly PartName[]): string =>
  parts.map((part) => PART_WORDS[part]).join(', ');

/** `bass only`, `no drums`, `with click`. */
function partsInWords({ parts }: Mix): readonly string[] {
  const solo = PARTS.filter((part) => parts[part].solo);
  if (solo.length > 0) return [`${listed(solo)} only`];
  const usual = (part: PartName): boolean => DEFAULT_MIX.parts[part].mute;
  const without = PARTS.filter((part) => parts[part].mute && !usual(part));
  const more = PARTS.filter((part) => !parts[part].mute && usual(part));
  return [
    ...(without.length > 0 ? [`no ${listed(without)}`] : []),
    ...(more.length > 0 ? [`with ${listed(more)}`] : []),
  ];
}

/** The tempo that is heard, where the field does not show it already, and its share. */
function speedInWords({ transport }: SoundSetup, { phase, tempo }: Sounding) {
  const heard = phase === 'playing' && tempo > 0 ? tempo : tempoIn(transport, 0);
  const { share } = transport;
  return [
    heard === transport.tempo ? [] : [`${Math.round(heard)} bpm`],
    share === 1 ? [] : [percent(share)],
  ] as const;
}

const NTH = ['', '1st', '2nd', '3rd'];

function placeInWords({ round, time }: Sounding): readonly string[] {
  return [
    ...(round > 0 ? [`round ${round + 1}`] : []),
    ...(time > 0 ? [`${NTH[time] ?? `${time}th`} time`] : []),
  ];
}

/** `no bars 9-14`: of a loop that was set when the chart was longer. */
function missingInWords({ transport }: SoundSetup, bars: number): readonly string[] {
  const beyond = loopBeyond(transport.loop, bars);
  if (beyond === undefined) return [];
  return [`no ${beyond.last > beyond.first ? 'bars' : 'bar'} ${makeLoop(beyond)}`];
}

/**
 * `44 bpm`, `round 3`, `70 %`, `½ step down`, `bass only`: only what is not as usual. What changes while
 * it plays comes first, for where there is no room the last is left out. `bars`: how many the chart has.
 */
export function summaryOf(sound: SoundSetup, sounding: Sounding, bars: number): readonly string[] {
  const { semitones, once } = sound.transport;
  const [tempo, share] = speedInWords(sound, sounding);
  return [
    ...tempo,
    ...placeInWords(sounding),
    ...missingInWords(sound, bars),
    ...share,
    ...(semitones === 0 ? [] : [stepsInWords(semitones)]),
    ...partsInWords(sound.mix),
    ...(once ? ['once'] : []),
  ];
}

import { describe, expect, it } from 'vitest';
import { DEFAULT_SOUND, type SoundSetup } from '#lesson';
import { withPart } from '#sound';
import { SILENT, type Sounding } from '../../../src/ui/sound/sounding.ts';
import { summaryOf } from '../../../src/ui/sound/summary.ts';

const line = (
  transport: Partial<SoundSetup['transport']>,
  sounding: Partial<Sounding> = {},
  mix = DEFAULT_SOUND.mix,
  bars = 8,
): string =>
  summaryOf(
    { ...DEFAULT_SOUND, mix, transport: { ...DEFAULT_SOUND.transport, ...transport } },
    { ...SILENT, ...sounding },
    bars,
  ).join(' · ');

describe('the line beside the transport', () => {
  it('says nothing of what is as usual, playing or not', () => {
    expect([line({}), line({}, { phase: 'playing', tempo: 90 })]).toEqual(['', '']);
  });

  it('says at what tempo it is heard where the field says another', () => {
    expect(line({ tempo: 63, share: 0.7 })).toBe('44 bpm · 70 %');
    const rise = { by: 4, every: 1, most: 140 };
    const playing = { phase: 'playing', tempo: 98, round: 2 } as const;
    expect(line({ rise }, playing)).toBe('98 bpm · round 3');
    expect(line({ rise })).toBe('');
  });

  it('says first what changes while it plays: the last is left out where there is no room', () => {
    const playing = { phase: 'playing', tempo: 54, round: 2, time: 1 } as const;
    const transport = { share: 0.6, semitones: 1 };
    expect(line(transport, playing)).toBe('54 bpm · round 3 · 1st time · 60 % · ½ step up');
  });

  it('says which bars of the loop the chart does not have', () => {
    const { mix } = DEFAULT_SOUND;
    const told = [14, 12, 13, 3].map((bars) =>
      line({ loop: { first: 9, last: 14 } }, {}, mix, bars),
    );
    expect(told).toEqual(['', 'no bars 13-14', 'no bar 14', 'no bars 9-14']);
  });

  it('says what is heard alone, left out or added', () => {
    const { mix } = DEFAULT_SOUND;
    expect(line({}, {}, withPart(mix, 'bass', { solo: true }))).toBe('bass only');
    expect(line({}, {}, withPart(mix, 'drums', { mute: true }))).toBe('no drums');
    expect(line({}, {}, withPart(mix, 'click', { mute: false }))).toBe('with click');
  });

  it('says how far it is tuned away, that it is played once, and which time', () => {
    expect(line({ semitones: -1, once: true }, { time: 2 })).toBe('2nd time · ½ step down · once');
    expect([line({ semitones: 2 }), line({ semitones: 5 })]).toEqual([
      'whole step up',
      '5 half steps up',
    ]);
  });
});

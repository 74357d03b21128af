import { render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { DEFAULT_SPAN, type Reading } from '#neck';
import { makeDegree } from '#theory';
import { FormMap } from '../../../src/ui/neck/FormMap.tsx';
import { Neck } from '../../../src/ui/neck/Neck.tsx';
import { layOut } from '../page.ts';
import { GUITAR, read } from './support.ts';

beforeEach(() => {
  layOut(1376);
});

const onPosition = vi.fn();
const onPick = vi.fn();

const neck = (
  reading: Reading,
  symbol = 'Bm7',
  instrument = GUITAR,
  labels: 'notes' | 'fingers' = 'notes',
) => (
  <Neck
    reading={reading}
    symbol={symbol}
    places={reading.forms}
    instrument={instrument}
    span={DEFAULT_SPAN}
    position={reading.position}
    labels={labels}
    spacing="true"
    onPosition={onPosition}
    onPick={onPick}
    map={FormMap}
  />
);

const place = (tone: Element): string =>
  `${tone.getAttribute('data-string')}:${tone.getAttribute('data-fret')}`;

const drawn = (page: HTMLElement): readonly string[] =>
  [...page.querySelectorAll('[data-tone]')].map(place);

describe('Neck', () => {
  it('draws every tone of the reading once', () => {
    const reading = read('B: R b3 5 b7', 7);
    const { container } = render(neck(reading));
    const places = reading.tones.map(({ string, fret }) => `${string}:${fret}`);
    expect([...drawn(container)].sort()).toEqual([...places].sort());
  });

  it('touches no tone that a new chord leaves as it was', () => {
    const { container, rerender } = render(neck(read('B: R b3 5 b7', 7)));
    const before = new Map(
      [...container.querySelectorAll('[data-tone]')].map((tone) => [tone, tone.outerHTML]),
    );
    const touched = new MutationObserver(() => undefined);
    touched.observe(container, { attributes: true, subtree: true });
    rerender(neck(read('B: R b3 5', 7), 'Bm'));
    const records = new Set(touched.takeRecords().map(({ target }) => target));
    const after = [...container.querySelectorAll('[data-tone]')];
    const changed = after.filter((tone) => before.get(tone) !== tone.outerHTML);
    expect(changed.length).toBeLessThan(after.length);
    expect(after.filter((tone) => records.has(tone))).toEqual(changed);
  });

  it('shows the tones of each chord and no others, however often they come and go', () => {
    const readings = ['B: R b3 5 b7', 'E: R 3 5', 'B: R b3 5 b7', 'C: R b3 b5 bb7'].map((text) =>
      read(text, 7),
    );
    const { container, rerender } = render(neck(read('A: R 3 5', 7)));
    for (const reading of readings) {
      rerender(neck(reading));
      const said = [...container.querySelectorAll('[data-tone]')].map(
        (tone) =>
          `${place(tone)} ${tone.getAttribute('data-degree')} ${tone.getAttribute('data-reach')}`,
      );
      const meant = reading.tones.map(
        ({ string, fret, degree, reach }) => `${string}:${fret} ${makeDegree(degree)} ${reach}`,
      );
      expect(said.sort()).toEqual(meant.sort());
    }
  });

  it('changes nothing on a tone but what its mark changed', () => {
    const { container, rerender } = render(neck(read('B: R b3 5 b7', 7)));
    const touched = new MutationObserver(() => undefined);
    touched.observe(container, { attributes: true, attributeOldValue: true, subtree: true });
    rerender(neck(read('B: R b3 5', 7), 'Bm'));
    const idle = touched
      .takeRecords()
      .filter(
        ({ target, attributeName, oldValue }) =>
          target instanceof Element && target.getAttribute(attributeName ?? '') === oldValue,
      );
    expect(idle).toEqual([]);
  });

  it('touches nothing when nothing changed', () => {
    const reading = read('B: R b3 5 b7', 7);
    const { container, rerender } = render(neck(reading));
    const touched = new MutationObserver(() => undefined);
    touched.observe(container, { attributes: true, childList: true, subtree: true });
    rerender(neck(reading));
    expect(touched.takeRecords()).toEqual([]);
  });

  it('says what it shows to programs from outside', () => {
    render(neck(read('B: R b3 5 b7', 7)));
    const drawing = screen.getByRole('group', { name: 'Neck' });
    expect(drawing.dataset).toMatchObject({ position: '7', symbol: 'Bm7', form: 'E', anchor: '7' });
  });

  it('moves the hand by the keys of its slider and hands the wish out', async () => {
    render(neck(read('B: R b3 5 b7', 7)));
    const hand = screen.getByRole('slider', { name: 'Hand position' });
    expect(hand).toHaveAttribute('aria-valuetext', 'position VII');
    hand.focus();
    await userEvent.keyboard('{ArrowRight}{ArrowDown}{End}');
    expect(onPosition.mock.calls).toEqual([[8], [6], [22]]);
  });

  it('draws the hand from the capo on', () => {
    const capo = { ...GUITAR, capo: 3 };
    const { container } = render(neck(read('B: R b3 5 b7', 1), 'Bm7', capo));
    const fingers = [...container.querySelectorAll('.finger')].map((one) => one.getAttribute('x'));
    const numbers = [...container.querySelectorAll('.fret-number')];
    const under = numbers.filter((one) => fingers.includes(one.getAttribute('x')));
    expect(under.map((one) => one.textContent)).toEqual(['4', '5', '6', '7']);
  });

  it('leaves the focus where it was when a bracket is pressed', async () => {
    render(neck(read('B: R b3 5 b7', 7)));
    const bracket = screen.getByRole('button', { name: 'A form, at II' });
    await userEvent.click(bracket);
    expect(bracket).not.toHaveFocus();
  });

  it('tells a form in which no hand can grip the chord apart, to eye and ear', () => {
    const { container } = render(neck(read('A: R 3 #5 b7 #9', 7), 'A7#9#5'));
    expect(screen.getByRole('button', { name: 'D form, at VII, no playable grip' })).toBeVisible();
    const dashed = container.querySelector('.bracket-line.no-grip');
    expect(dashed?.getAttribute('d')).not.toBe('');
  });

  it('writes no finger under the frets where the fingers of the grip are shown', () => {
    const shown = (labels: 'notes' | 'fingers') => {
      const { container } = render(neck(read('B: R b3 5 b7', 7), 'Bm7', GUITAR, labels));
      return container.querySelectorAll('.finger').length;
    };
    expect([shown('notes'), shown('fingers')]).toEqual([4, 0]);
  });

  it('offers every place of every form', async () => {
    render(neck(read('B: R b3 5 b7', 7)));
    await userEvent.click(screen.getByRole('button', { name: 'A form, at II' }));
    expect(onPick).toHaveBeenCalledWith('A', 2);
    expect(screen.getByRole('button', { name: 'E form, at VII' })).toHaveAttribute(
      'aria-pressed',
      'true',
    );
  });
});

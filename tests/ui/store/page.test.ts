import { describe, expect, it, vi } from 'vitest';
import { NO_PAGE, pageOf } from '../../../src/ui/store/page.ts';

describe('the page of a window', () => {
  it('puts another part behind # without a step in the history', () => {
    const page = pageOf(window);
    const steps = window.history.length;
    page.replaceHash('#progression=C');
    expect(page.hash()).toBe('#progression=C');
    expect(page.href()).toMatch(/#progression=C$/);
    expect(window.history.length).toBe(steps);
  });

  it('opens the storage of the window', () => {
    pageOf(window).openStorage().setItem('a', 'b');
    expect(window.localStorage.getItem('a')).toBe('b');
  });

  it.each([
    ['hashchange', window],
    ['pagehide', window],
    ['visibilitychange', document],
  ] as const)('listens to %s until it is told to stop', (event, target) => {
    const heard = vi.fn();
    const stop = pageOf(window).listen(event, heard);
    target.dispatchEvent(new Event(event));
    stop();
    target.dispatchEvent(new Event(event));
    expect(heard).toHaveBeenCalledTimes(1);
  });

  it('does something later unless it is called off', () => {
    vi.useFakeTimers();
    const done = vi.fn();
    const page = pageOf(window);
    page.later(done, 100);
    page.later(done, 100)();
    vi.advanceTimersByTime(99);
    expect(done).not.toHaveBeenCalled();
    vi.advanceTimersByTime(1);
    expect(done).toHaveBeenCalledTimes(1);
    vi.useRealTimers();
  });
});

describe('no page', () => {
  it('finds nothing, keeps nothing and copies nothing', async () => {
    const storage = NO_PAGE.openStorage();
    storage.setItem('a', 'b');
    expect([storage.getItem('a'), NO_PAGE.hash(), NO_PAGE.href()]).toEqual([null, '', '']);
    await expect(NO_PAGE.copy('x')).rejects.toThrow('no page');
  });
});

import { act, render } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { useHandBack } from '../../../src/ui/neck/hand-back.ts';
import { createStudyStore, StudyStoreContext } from '../../../src/ui/store/index.ts';
import { workspace } from '../store/fixture.ts';

function Back(): null {
  useHandBack();
  return null;
}

const HAND = { from: 300, height: 180 };
const HIGH = 290;

describe('a neck in a pane of its own', () => {
  const measured = vi.fn();
  let pane: HTMLElement;

  beforeEach(() => {
    measured.mockClear();
    vi.stubGlobal('requestAnimationFrame', (frame: () => void) => frame());
    document.body.innerHTML = '<div class="neck-pane"><i class="hand-wash"></i></div><main></main>';
    pane = document.querySelector<HTMLElement>('.neck-pane') ?? document.body;
    const hand = pane.firstElementChild ?? pane;
    Object.defineProperties(pane, {
      scrollHeight: { value: 960 },
      clientHeight: { value: HIGH },
    });
    vi.spyOn(pane, 'getBoundingClientRect').mockReturnValue({ top: 0, bottom: HIGH } as DOMRect);
    vi.spyOn(hand, 'getBoundingClientRect').mockImplementation(() => {
      measured();
      const top = HAND.from - pane.scrollTop;
      return { top, height: HAND.height, bottom: top + HAND.height } as DOMRect;
    });
  });

  afterEach(() => {
    vi.unstubAllGlobals();
    document.body.innerHTML = '';
  });

  const scrollTo = (top: number): void => {
    pane.scrollTop = top;
    pane.dispatchEvent(new Event('scroll'));
  };

  function opened() {
    const store = createStudyStore(workspace('| C | G | Am | F |'));
    const container = document.querySelector('main') ?? undefined;
    render(
      <StudyStoreContext value={store}>
        <Back />
      </StudyStoreContext>,
      container && { container },
    );
    scrollTo(245);
    return () => act(() => store.intents.moveCursor(1));
  }

  it('comes back to the hand with the next chord when it was scrolled away from it', () => {
    const move = opened();
    scrollTo(640);
    move();
    expect(pane.scrollTop).toBe(245);
  });

  it('stays where the hand is still seen, and where it is measures only once', () => {
    const move = opened();
    scrollTo(200);
    move();
    expect(pane.scrollTop).toBe(200);
    expect(measured).toHaveBeenCalledTimes(1);
    move();
    move();
    expect(measured).toHaveBeenCalledTimes(1);
  });

  it('waits for the finger that scrolls it', () => {
    const move = opened();
    pane.dispatchEvent(new Event('touchstart'));
    scrollTo(640);
    move();
    expect(pane.scrollTop).toBe(640);
    window.dispatchEvent(new Event('touchend'));
    move();
    expect(pane.scrollTop).toBe(245);
  });
});

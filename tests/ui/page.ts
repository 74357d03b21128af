import { vi } from 'vitest';

/** A page in a test has no layout and watches no sizes: gives every element a width in pixels. */
export function layOut(width: number): void {
  vi.spyOn(HTMLElement.prototype, 'clientWidth', 'get').mockReturnValue(width);
  class Watcher {
    observe = vi.fn();
    disconnect = vi.fn();
  }
  vi.stubGlobal('ResizeObserver', Watcher);
  vi.stubGlobal('IntersectionObserver', Watcher);
}

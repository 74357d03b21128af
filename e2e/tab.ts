import type { Browser } from '@playwright/test';

/**
 * A tab that Playwright has no hand in, for it keeps its own pages in sight and awake whatever lies
 * over them, and its questions count as clicks. This one is really hidden when another is brought to
 * the front: no frames, throttled timers.
 */
export interface Tab {
  /** What an expression gives; with `click` evaluated as if within a click. */
  readonly evaluate: <T>(expression: string, how?: 'click') => Promise<T>;
  readonly send: (method: string, params?: object) => Promise<unknown>;
  readonly hide: () => Promise<void>;
  readonly show: () => Promise<void>;
  readonly close: () => Promise<void>;
}

interface Answer {
  readonly id?: number;
  readonly error?: { readonly message: string };
  readonly result?: {
    readonly result?: { readonly value?: unknown };
    readonly exceptionDetails?: { readonly text: string };
  };
}

/** Opens a blank tab. */
export async function openTab(browser: Browser): Promise<Tab> {
  const session = await browser.newBrowserCDPSession();
  const { targetId } = await session.send('Target.createTarget', { url: 'about:blank' });
  const attached = await session.send('Target.attachToTarget', { targetId, flatten: false });
  const waiting = new Map<number, (answer: Answer) => void>();
  session.on('Target.receivedMessageFromTarget', ({ sessionId, message }) => {
    const answer: Answer = JSON.parse(message);
    if (sessionId === attached.sessionId) waiting.get(answer.id ?? -1)?.(answer);
  });
  let count = 0;
  const send = (method: string, params: object = {}): Promise<Answer> =>
    new Promise((resolve, reject) => {
      const id = ++count;
      waiting.set(id, (answer) =>
        answer.error ? reject(new Error(`${method}: ${answer.error.message}`)) : resolve(answer),
      );
      const message = JSON.stringify({ id, method, params });
      session
        .send('Target.sendMessageToTarget', { sessionId: attached.sessionId, message })
        .catch(reject);
    });
  const evaluate = async <T>(expression: string, how?: 'click'): Promise<T> => {
    const userGesture = how === 'click';
    const asked = { expression, awaitPromise: true, returnByValue: true, userGesture };
    const { result } = await send('Runtime.evaluate', asked);
    if (result?.exceptionDetails) throw new Error(`${expression}: ${result.exceptionDetails.text}`);
    return result?.result?.value as T;
  };
  return {
    evaluate,
    send,
    hide: async () => {
      const other = await session.send('Target.createTarget', { url: 'about:blank' });
      await session.send('Target.activateTarget', { targetId: other.targetId });
    },
    show: async () => {
      await session.send('Target.activateTarget', { targetId });
    },
    close: async () => {
      await session.send('Target.closeTarget', { targetId });
      await session.detach();
    },
  };
}

/**
 * Asks the browser to keep the program for work without a network. Where that is not possible the
 * program works all the same, so a refusal is not reported.
 */
export const keepOffline = (): void => {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  navigator.serviceWorker.register('./sw.js').catch(() => undefined);
};

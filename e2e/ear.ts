import type { Page } from '@playwright/test';

interface Ear {
  /** The loudest sample since it was last asked, full scale 1. */
  readonly loudest: () => number;
}

declare global {
  interface Window {
    ear?: Ear;
  }
}

/** Listens to what the page sends to the loudspeaker. To be called before the page is opened. */
export const listen = async (page: Page): Promise<void> => {
  await page.addInitScript(() => {
    let loudest = 0;
    window.ear = {
      loudest: () => {
        const heard = loudest;
        loudest = 0;
        return heard;
      },
    };
    const attend = (node: AudioNode): void => {
      const analyser = new AnalyserNode(node.context, { fftSize: 2048 });
      const samples = new Float32Array(analyser.fftSize);
      Reflect.apply(connect, node, [analyser]);
      setInterval(() => {
        analyser.getFloatTimeDomainData(samples);
        for (const sample of samples) loudest = Math.max(loudest, Math.abs(sample));
      }, 20);
    };
    const { connect } = AudioNode.prototype;
    Object.defineProperty(AudioNode.prototype, 'connect', {
      value(this: AudioNode, ...given: unknown[]) {
        if (given[0] instanceof AudioDestinationNode) attend(this);
        return Reflect.apply(connect, this, given);
      },
    });
  });
};

/** The loudest sample since it was last asked. */
export const loudest = (page: Page): Promise<number> =>
  page.evaluate(() => window.ear?.loudest() ?? 0);

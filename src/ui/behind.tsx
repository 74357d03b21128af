/** What stands behind a click. It is not part of the first load. */
import { type ReactNode, useEffect, useState } from 'react';

type Parts = typeof import('./behind-parts.ts');

let parts: Parts | undefined;

/** Asks for them once; after a failure (no network, nothing kept) the next call asks again. */
const load = async (): Promise<Parts> => {
  parts ??= await import('./behind-parts.ts');
  return parts;
};

interface Loading {
  readonly parts?: Parts;
  readonly failed?: true;
}

/** Here at once when they are known; React's own way to wait would show an empty sheet meanwhile. */
function useParts(): Loading {
  const [loading, setLoading] = useState<Loading>(() => (parts === undefined ? {} : { parts }));
  const missing = loading.parts === undefined;
  useEffect(() => {
    if (!missing) return undefined;
    let wanted = true;
    load().then(
      (loaded) => wanted && setLoading({ parts: loaded }),
      () => wanted && setLoading({ failed: true }),
    );
    return () => {
      wanted = false;
    };
  }, [missing]);
  return loading;
}

/** Shows a part as soon as it is there. */
export function Behind({ children }: { readonly children: (parts: Parts) => ReactNode }) {
  const { parts: loaded, failed } = useParts();
  if (failed) return <p role="alert">This could not be fetched. Close it and try again.</p>;
  return loaded && children(loaded);
}

const FIRST_SIGNS = ['pointermove', 'pointerdown', 'keydown'] as const;

/** Fetches it at the first sign of life, so that it is there before anything is opened. */
export function fetchAhead(target: Window): void {
  const fetchNow = () => {
    for (const sign of FIRST_SIGNS) target.removeEventListener(sign, fetchNow);
    load().catch(() => undefined);
  };
  for (const sign of FIRST_SIGNS) target.addEventListener(sign, fetchNow, { passive: true });
}

import { memo } from 'react';
import { useHandBack } from '../neck/hand-back.ts';
import type { NeckLayout } from '../neck/layout.ts';
import { Caution } from '../sound/Caution.tsx';
import { RouteLadder } from './RouteLadder.tsx';

/** What comes to the neck later: the caution beside the hand's ruler, the ladder, the way back to the hand. */
export const UnderNeck = memo(function UnderNeck({ layout }: { readonly layout: NeckLayout }) {
  useHandBack();
  return (
    <>
      <Caution layout={layout} />
      <RouteLadder layout={layout} />
    </>
  );
});

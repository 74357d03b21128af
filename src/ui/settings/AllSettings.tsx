import { HandSettings } from './HandSettings.tsx';
import { InstrumentSettings } from './InstrumentSettings.tsx';
import { ViewSettings } from './ViewSettings.tsx';

/** Instrument, hand, and how it is all shown. */
export function AllSettings() {
  return (
    <>
      <InstrumentSettings />
      <HandSettings />
      <ViewSettings />
    </>
  );
}

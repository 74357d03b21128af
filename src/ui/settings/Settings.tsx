import { HandSettings } from './HandSettings.tsx';
import { InstrumentSettings } from './InstrumentSettings.tsx';
import { Panel } from './Panel.tsx';
import { ViewSettings } from './ViewSettings.tsx';

/** Instrument, hand, and how it is all shown. */
export function Settings() {
  return (
    <Panel name="settings" title="Settings">
      <InstrumentSettings />
      <HandSettings />
      <ViewSettings />
    </Panel>
  );
}

import { Behind } from '../behind.tsx';
import { Panel } from './Panel.tsx';

/** The settings, as a sheet over the workspace. */
export function Settings() {
  return (
    <Panel name="settings" title="Settings">
      <Behind>{(parts) => <parts.AllSettings />}</Behind>
    </Panel>
  );
}

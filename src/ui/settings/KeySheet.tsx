import { Behind } from '../behind.tsx';
import { Panel } from './Panel.tsx';

/** The sheet of keys. */
export function KeySheet() {
  return (
    <Panel name="keys" title="Keys">
      <Behind>{(parts) => <parts.KeyTables />}</Behind>
    </Panel>
  );
}

import { Behind } from '../behind.tsx';
import { Panel } from './Panel.tsx';

/** The sheet of keys, and of what the words mean. */
export function KeySheet() {
  return (
    <Panel name="keys" title="Keys and words">
      <Behind>{(parts) => <parts.KeyTables />}</Behind>
    </Panel>
  );
}

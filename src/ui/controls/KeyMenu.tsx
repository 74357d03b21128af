import { Behind } from '../behind.tsx';
import { useStudy } from '../store/index.ts';
import { keyName } from './keys.ts';
import { Menu } from './Menu.tsx';

/** The key the chords are read in, and moving them to another. */
export function KeyMenu() {
  const key = useStudy(({ study }) => study.key);
  const estimate = useStudy(({ study }) => study.keyIsEstimate);
  const label = (
    <>
      Key {key === undefined ? '' : keyName(key)}
      {estimate && key !== undefined && <span className="quiet"> estimated</span>}
    </>
  );
  return <Menu label={label}>{() => <Behind>{(parts) => <parts.KeyParts />}</Behind>}</Menu>;
}

import type { Spacing, Spelling, Theme } from '#lesson';
import { Choice } from '../controls/Choice.tsx';
import { useIntents, useStudy } from '../store/index.ts';

const THEMES: readonly (readonly [Theme, string])[] = [
  ['system', 'as the system'],
  ['light', 'light'],
  ['dark', 'dark'],
  ['contrast', 'high contrast'],
];

const SPACINGS: readonly (readonly [Spacing, string])[] = [
  ['true', 'true distances'],
  ['even', 'even'],
];

const SPELLINGS: readonly (readonly [Spelling, string])[] = [
  ['exact', 'letter by letter (B♭♭)'],
  ['plain', 'plain (A)'],
];

/** How it is shown, and whether single keys do things. */
export function ViewSettings() {
  const { theme, spacing, spelling, shortcuts } = useStudy(({ workspace }) => workspace);
  const { setTheme, setSpacing, setSpelling, setShortcuts } = useIntents();
  return (
    <section className="settings-part" aria-labelledby="settings-view">
      <h3 id="settings-view">Drawing</h3>
      <Choice label="Colours" options={THEMES} value={theme} onChange={setTheme} />
      <Choice label="Frets" options={SPACINGS} value={spacing} onChange={setSpacing} />
      <Choice label="Note names" options={SPELLINGS} value={spelling} onChange={setSpelling} />
      <label className="tick">
        <input
          type="checkbox"
          checked={shortcuts}
          onChange={({ currentTarget }) => setShortcuts(currentTarget.checked)}
        />
        Single keys do things (the sheet of keys lists them)
      </label>
    </section>
  );
}

import { memo, type ReactNode } from 'react';
import { commandNamed } from '../commands/index.ts';
import { useStudy, useStudyStore } from '../store/index.ts';

/** `Mod+z` as the attribute `aria-keyshortcuts` writes it. */
const shortcutsOf = (keys: readonly string[]): string | undefined =>
  keys.length === 0 ? undefined : keys.map((key) => key.replace('Mod+', 'Control+')).join(' ');

/**
 * A button that performs a command. While that cannot be done it stays in the tab order, so that
 * the focus is not lost at the end of a row of steps.
 */
export const CommandButton = memo(function CommandButton(props: {
  readonly name: string;
  /** Shown instead of the command's label, which then is the accessible name. */
  readonly children?: ReactNode;
  /** Present for what is switched on and off. */
  readonly pressed?: boolean;
  /** Where it leads, said under what is shown. */
  readonly goal?: string | undefined;
}) {
  const { name, children, pressed, goal } = props;
  const { label, keys, enabled, perform } = commandNamed(name);
  const store = useStudyStore();
  const can = useStudy(enabled);
  return (
    <button
      type="button"
      aria-label={children === undefined ? undefined : label + (goal ? `: ${goal}` : '')}
      aria-keyshortcuts={shortcutsOf(keys)}
      aria-disabled={!can}
      aria-pressed={pressed}
      onClick={() => can && perform(store)}
    >
      {children ?? label}
      {goal && <small className="goal">{goal}</small>}
    </button>
  );
});

/** How keys are written for people. */
const NAMES: Readonly<Record<string, string>> = {
  ArrowLeft: '←',
  ArrowRight: '→',
  ArrowUp: '↑',
  ArrowDown: '↓',
  PageUp: 'Page up',
  PageDown: 'Page down',
  Escape: 'Esc',
  Mod: 'Ctrl',
};

const nameOf = (key: string): string => NAMES[key] ?? (key.length === 1 ? key.toUpperCase() : key);

/** `Mod+Shift+z` as the keys one presses: Ctrl, Shift, Z. */
export const keyNames = (chord: string): readonly string[] =>
  chord === '+' ? ['+'] : chord.split('+').map(nameOf);

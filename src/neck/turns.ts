/** What a form can be turned into. `suffix` is the quality as a chord symbol has it. */
export interface Turn {
  readonly name: string;
  readonly suffix: string;
}

export const TURNS: readonly Turn[] = [
  { name: 'major', suffix: '' },
  { name: 'minor', suffix: 'm' },
  { name: 'sus2', suffix: 'sus2' },
  { name: 'sus4', suffix: 'sus4' },
  { name: '7', suffix: '7' },
  { name: 'maj7', suffix: 'maj7' },
  { name: 'm7', suffix: 'm7' },
  { name: '6', suffix: '6' },
  { name: '9', suffix: '9' },
  { name: '♭5', suffix: '(b5)' },
];

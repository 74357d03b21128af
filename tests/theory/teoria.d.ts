/** What the tests use of teoria 2.5, which brings no types. */
declare module 'teoria' {
  interface TeoriaNote {
    name(): string;
    /** Undefined beyond double accidentals. */
    accidental(): string | undefined;
  }
  interface TeoriaChord {
    notes(): readonly TeoriaNote[];
  }
  const teoria: { chord(symbol: string): TeoriaChord };
  export = teoria;
}

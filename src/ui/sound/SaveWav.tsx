import { useRef, useState } from 'react';
import { useStudyStore } from '../store/index.ts';
import { playerOf } from './players.ts';
import { saveFiles, WHATS, type What, wantedFiles } from './wav.ts';
import { PART_WORDS, percent } from './words.ts';

function whatInWords(what: What): string {
  if (what === 'heard') return 'as it is heard';
  return what === 'each' ? 'each part, a file of its own' : `the ${PART_WORDS[what]} alone`;
}

/** `share`: how much is made; `told`: why it was not; `saved`: the names of the files. */
interface Saving {
  readonly share?: number;
  readonly told?: string;
  readonly saved?: string;
}

function useSaving(what: What) {
  const store = useStudyStore();
  const [saving, setSaving] = useState<Saving>({});
  const stop = useRef<AbortController>(undefined);
  const save = async (): Promise<void> => {
    const player = playerOf(store);
    if (player === undefined || saving.share !== undefined) return;
    stop.current = new AbortController();
    setSaving({ share: 0 });
    const files = wantedFiles(store, player, what);
    const made = await saveFiles(files, {
      progress: (share) => setSaving({ share }),
      signal: stop.current.signal,
    });
    if (made.ok) setSaving({ saved: files.map(({ name }) => name).join(', ') });
    else setSaving(made.error.code === 'stopped' ? {} : { told: made.error.message });
  };
  return { ...saving, save, cancel: () => stop.current?.abort() };
}

/** What is heard, as a file. */
export function SaveWav() {
  const [what, setWhat] = useState<What>('heard');
  const { share, told, saved, save, cancel } = useSaving(what);
  return (
    <fieldset className="save-wav">
      <legend className="label">File</legend>
      <select
        aria-label="What is in the file"
        value={what}
        onChange={({ currentTarget }) =>
          setWhat(WHATS.find((one) => one === currentTarget.value) ?? 'heard')
        }
      >
        {WHATS.map((one) => (
          <option key={one} value={one}>
            {whatInWords(one)}
          </option>
        ))}
      </select>
      <button type="button" aria-disabled={share !== undefined} onClick={save}>
        Save WAV
      </button>
      {share !== undefined && (
        <span className="saving">
          <progress value={share} aria-label="Making the file" /> {percent(share)}
          <button type="button" onClick={cancel}>
            Cancel
          </button>
        </span>
      )}
      <output className="saved">{saved !== undefined && `Saved: ${saved}`}</output>
      {told !== undefined && (
        <p className="field-error" role="alert">
          {told}
        </p>
      )}
    </fieldset>
  );
}

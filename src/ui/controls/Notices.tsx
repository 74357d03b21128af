import { useEffect } from 'react';
import { type Notice, useIntents, useStudy } from '../store/index.ts';

/** Refused values are told at their field, not here. */
const AT_FIELD = 'field.';

/** A confirmation goes by itself after this many milliseconds; anything that needs doing stays. */
const PASSING = 5000;
const PASSES = ['copy', 'undo'];

function NoticeLine({ notice }: { readonly notice: Notice }) {
  const { id, tone, text } = notice;
  const { dismissNotice } = useIntents();
  useEffect(() => {
    if (!PASSES.includes(id) || tone !== 'info' || text === '') return undefined;
    const timer = setTimeout(() => dismissNotice(id), PASSING);
    return () => clearTimeout(timer);
  }, [id, tone, text, dismissNotice]);
  return (
    <div className={`notice ${tone}`} role={tone === 'error' ? 'alert' : undefined}>
      <span>{text}</span>
      <button type="button" className="link" onClick={() => dismissNotice(id)}>
        Dismiss
      </button>
    </div>
  );
}

/** Messages about the whole sheet: what cannot be kept, what a link could not say. */
export function Notices() {
  const notices = useStudy((state) => state.notices);
  const shown = notices.filter(({ id }) => !id.startsWith(AT_FIELD));
  return (
    <div className="notices" role="log" aria-label="Messages">
      {shown.map((notice) => (
        <NoticeLine key={notice.id} notice={notice} />
      ))}
    </div>
  );
}

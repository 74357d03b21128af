import { type ReactNode, useEffect, useId, useRef } from 'react';
import { type Panel as PanelName, useIntents, useStudy } from '../store/index.ts';

/** A sheet over the workspace, closed with Escape, its button, or a press beside it. */
export function Panel(props: {
  readonly name: PanelName;
  readonly title: string;
  readonly children: ReactNode;
}) {
  const { name, title, children } = props;
  const id = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  const open = useStudy(({ panel }) => panel === name);
  const { openPanel } = useIntents();
  useEffect(() => {
    const element = dialog.current;
    if (open && element?.open === false) element.showModal();
    if (!open) element?.close();
    // Not by `:has` in the styles: that would be looked through with every move of the cursor.
    if (!open) return undefined;
    const { dataset } = document.documentElement;
    dataset['panel'] = '';
    return () => {
      delete dataset['panel'];
    };
  }, [open]);
  return (
    <dialog
      ref={dialog}
      className="panel"
      aria-labelledby={id}
      closedby="any"
      onClose={() => open && openPanel(undefined)}
    >
      {open && (
        <>
          <header className="panel-head">
            <h2 id={id}>{title}</h2>
            <button type="button" onClick={() => openPanel(undefined)}>
              Close
            </button>
          </header>
          {children}
        </>
      )}
    </dialog>
  );
}

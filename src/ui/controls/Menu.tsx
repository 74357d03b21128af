import { type ReactNode, type RefObject, useEffect, useRef, useState } from 'react';

/** Closes an open menu on a press outside it and on Escape. */
function useClosing(ref: RefObject<HTMLDetailsElement | null>): void {
  useEffect(() => {
    const outside = ({ target }: PointerEvent) => {
      if (target instanceof Node && !ref.current?.contains(target))
        ref.current?.removeAttribute('open');
    };
    document.addEventListener('pointerdown', outside);
    return () => document.removeEventListener('pointerdown', outside);
  }, [ref]);
}

/** A word that opens a short list under it, which is made when it is first opened. */
export function Menu(props: {
  readonly label: ReactNode;
  readonly children: (close: () => void) => ReactNode;
}) {
  const ref = useRef<HTMLDetailsElement>(null);
  const summary = useRef<HTMLElement>(null);
  const [opened, setOpened] = useState(false);
  useClosing(ref);
  const close = () => {
    ref.current?.removeAttribute('open');
    summary.current?.focus();
  };
  return (
    <details
      ref={ref}
      className="menu"
      onToggle={({ currentTarget }) => currentTarget.open && setOpened(true)}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || !ref.current?.open) return;
        event.stopPropagation();
        close();
      }}
    >
      <summary ref={summary}>{props.label}</summary>
      <div className="menu-sheet">{opened && props.children(close)}</div>
    </details>
  );
}

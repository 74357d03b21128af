import { type ReactNode, type RefObject, useEffect, useRef, useState } from 'react';

/**
 * Closes an open menu on a click outside it, not on a press: a finger that scrolls is no answer, and
 * what moves up when the menu goes must not slip from under it. What is read beside a field stays
 * open while one types there.
 */
function useClosing(ref: RefObject<HTMLDetailsElement | null>): void {
  useEffect(() => {
    const outside = ({ target }: MouseEvent) => {
      const home = ref.current?.closest('.field') ?? ref.current;
      if (target instanceof Node && !home?.contains(target)) ref.current?.removeAttribute('open');
    };
    document.addEventListener('click', outside, true);
    return () => document.removeEventListener('click', outside, true);
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

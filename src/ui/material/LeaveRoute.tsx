import type { MouseEvent } from 'react';
import { useIntents, useStudy } from '../store/index.ts';

/** Beside where the route begins: it stays on when its lens is closed, and the hand goes by it. */
export function LeaveRoute() {
  const isRoute = useStudy(({ workspace }) => workspace.route !== undefined);
  const { setRoute } = useIntents();
  const leave = ({ currentTarget: button }: MouseEvent): void => {
    // The button goes; who came by key goes on beside it.
    if (button.matches(':focus-visible')) button.parentElement?.querySelector('button')?.focus();
    setRoute(undefined);
  };
  if (!isRoute) return null;
  return (
    <button type="button" className="link leave-route" aria-label="Leave the route" onClick={leave}>
      leave<span> the route</span>
    </button>
  );
}

/** A small bar that is filled as far as a share 0 … 1: by its background, which lays nothing out anew. */
export function ShareBar({ share }: { readonly share: number }) {
  return (
    <span className="share" aria-hidden="true" style={{ backgroundSize: `${share * 100}% 100%` }} />
  );
}

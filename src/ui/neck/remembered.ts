/**
 * A function of an object and other things that remembers, for every object, what it gave last:
 * what a cursor comes back to is drawn by what was computed the first time.
 */
export function remembered<A extends object, B extends readonly unknown[], R>(
  make: (of: A, ...by: B) => R,
): (of: A, ...by: B) => R {
  const known = new WeakMap<A, { readonly by: B; readonly made: R }>();
  return (of, ...by) => {
    const last = known.get(of);
    if (last?.by.every((one, i) => one === by[i])) return last.made;
    const made = make(of, ...by);
    known.set(of, { by, made });
    return made;
  };
}

/**
 * A function of a thing that does not change, worked out once for each: what is asked of the same
 * thing again and again is asked once.
 */
export const memoizeFor = <Of extends object, T>(make: (of: Of) => T): ((of: Of) => T) => {
  const known = new WeakMap<Of, { readonly value: T }>();
  return (of) => {
    const before = known.get(of);
    if (before) return before.value;
    const value = make(of);
    known.set(of, { value });
    return value;
  };
};

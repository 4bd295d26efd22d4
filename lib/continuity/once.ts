/** Works something out once for the same facts, however many checks ask. */
export function once<F extends object, T>(workOut: (facts: F) => T): (facts: F) => T {
  const known = new WeakMap<F, { readonly value: T }>();
  return (facts) => {
    const held = known.get(facts) ?? { value: workOut(facts) };
    known.set(facts, held);
    return held.value;
  };
}

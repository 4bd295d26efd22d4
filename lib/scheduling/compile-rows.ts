/** Lists of rows laid flat, and names as numbers. */

/** Numbers in rows: offsets and the flat values. */
export function flatten<T>(rows: readonly (readonly T[])[]): { readonly from: Int32Array; readonly flat: readonly T[] } {
  const from = new Int32Array(rows.length + 1);
  rows.forEach((row, i) => {
    from[i + 1] = from[i]! + row.length;
  });
  return { from, flat: rows.flat() };
}

/** The number of a name, given out in the order of appearance. */
export function numberOf(map: Map<string, number>, name: string): number {
  const known = map.get(name) ?? map.size;
  map.set(name, known);
  return known;
}

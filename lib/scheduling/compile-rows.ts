/** Ids as numbers, and lists of rows laid flat. */

export type Index = ReadonlyMap<string, number>;

export function indexById(rows: readonly { readonly id: string }[]): Index {
  return new Map(rows.map((row, index) => [row.id, index]));
}

/** @throws Error when the id is unknown. */
export function find(index: Index, id: string): number {
  const at = index.get(id);
  if (at === undefined) throw new Error(`Unknown id ${id}: the problem was not validated.`);
  return at;
}

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

/** Position of each id in its list. */
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

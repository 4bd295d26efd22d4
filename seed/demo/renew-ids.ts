/** Fresh ids for a whole document, every reference with them. */
import type { SeriesDocument } from '@/lib/build';

/** Every value of a field called `id` that names something new, from the outside in. */
function collectIds(value: unknown, ids: Set<string>): void {
  if (Array.isArray(value)) {
    for (const one of value) collectIds(one, ids);
  } else if (typeof value === 'object' && value !== null) {
    for (const [key, inner] of Object.entries(value)) {
      if (key === 'id' && typeof inner === 'string') ids.add(inner);
      else collectIds(inner, ids);
    }
  }
}

/** The same document with `newId()` for every id. Ids of the demo have a prefix, so that no other text equals one. */
export function renewIds(document: SeriesDocument, newId: () => string): SeriesDocument {
  const ids = new Set<string>();
  collectIds(document, ids);
  const renewed = new Map([...ids].map((id) => [id, newId()]));
  const renew = (_key: string, value: unknown): unknown => (typeof value === 'string' ? (renewed.get(value) ?? value) : value);
  return JSON.parse(JSON.stringify(document), renew) as SeriesDocument;
}

import type { Trade } from '@/lib/build';

/**
 * Remembers what is long to work out of a trade, by a key that says all else it follows from. A trade never changes: another one takes its
 * place. The things of one moment at a time are enough, so that a server that never stops keeps few.
 * @param most kept of one trade; one more, and all before it are forgotten
 */
export function rememberByTrade<T>(most: number): (trade: Trade, key: string, make: () => T) => T {
  const known = new WeakMap<Trade, Map<string, T>>();
  return (trade, key, make) => {
    const own = known.get(trade) ?? new Map<string, T>();
    known.set(trade, own);
    const found = own.get(key);
    if (found !== undefined) return found;
    const made = make();
    if (own.size >= most) own.clear();
    own.set(key, made);
    return made;
  };
}

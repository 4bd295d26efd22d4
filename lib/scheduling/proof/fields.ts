import type { CoreInstance } from './instance';

/** Puts resources side by side into words of 31 bits: a field a resource, wide enough for its capacity and a guard bit. */
export function packFields(instance: CoreInstance): { words: number; guard: Int32Array; full: Int32Array; need: Int32Array } {
  const { capacities, demands } = instance;
  const place: { word: number; shift: number }[] = [];
  let word = 0;
  let used = 0;
  for (const capacity of capacities) {
    const width = 33 - Math.clz32(capacity);
    if (used + width > 31) {
      word++;
      used = 0;
    }
    place.push({ word, shift: used });
    used += width;
  }
  const words = word + 1;
  const guard = new Int32Array(words);
  const full = new Int32Array(words);
  const need = new Int32Array(demands.length * words);
  capacities.forEach((capacity, k) => {
    const { word: w, shift } = place[k]!;
    const width = 33 - Math.clz32(capacity);
    guard[w] = guard[w]! | (1 << (shift + width - 1));
    full[w] = full[w]! | (capacity << shift) | (1 << (shift + width - 1));
    demands.forEach((row, i) => (need[i * words + w] = need[i * words + w]! + (row[k]! << shift)));
  });
  return { words, guard, full, need };
}

/** A short text that changes when what it was made from changes. */

/** Texts of plain objects, which never change once made: one task stands in the basis of many lines. */
const texts = new WeakMap<object, string>();

/** Keys in order, so that the same content gives the same text. */
function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null';
  const known = texts.get(value);
  if (known !== undefined) return known;
  const entries = Object.entries(value).toSorted(([a], [b]) => (a < b ? -1 : 1));
  const text = `{${entries.map(([key, inner]) => `${JSON.stringify(key)}:${canonical(inner)}`).join(',')}}`;
  texts.set(value, text);
  return text;
}

const mix = (hash: number, code: number, prime: number): number => Math.imul(hash ^ code, prime) >>> 0;

/** Two 32-bit FNV-1a hashes with different starts, 16 hexadecimal digits. Not for secrets. */
export function fingerprintOf(value: unknown): string {
  let [a, b] = [0x811c9dc5, 0x1b873593];
  const text = canonical(value);
  // By index: as a loop over signs, twice as fast.
  for (let index = 0; index < text.length; index += 1) {
    const code = text.codePointAt(index) ?? 0;
    if (code > 0xffff) index += 1;
    a = mix(a, code, 0x01000193);
    b = mix(b, code + 0x9e37, 0x01000193);
  }
  return [a, b].map((half) => half.toString(16).padStart(8, '0')).join('');
}

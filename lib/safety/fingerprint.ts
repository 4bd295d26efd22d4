/** A short text that changes when what it was made from changes. */

/** Keys in order, so that the same content gives the same text. */
function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null';
  const entries = Object.entries(value).toSorted(([a], [b]) => (a < b ? -1 : 1));
  return `{${entries.map(([key, inner]) => `${JSON.stringify(key)}:${canonical(inner)}`).join(',')}}`;
}

const mix = (hash: number, code: number, prime: number): number => Math.imul(hash ^ code, prime) >>> 0;

/** Two 32-bit FNV-1a hashes with different starts, 16 hexadecimal digits. Not for secrets. */
export function fingerprintOf(value: unknown): string {
  let [a, b] = [0x811c9dc5, 0x1b873593];
  for (const sign of canonical(value)) {
    const code = sign.codePointAt(0) ?? 0;
    a = mix(a, code, 0x01000193);
    b = mix(b, code + 0x9e37, 0x01000193);
  }
  return [a, b].map((half) => half.toString(16).padStart(8, '0')).join('');
}

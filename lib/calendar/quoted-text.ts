const LONGEST_QUOTE = 40;

/** What a person typed, short enough and plain enough for a message: `"2026-13-01"`. */
export function quoteText(text: string): string {
  const plain = text.replace(/[\p{Cc}\p{Cf}\s]+/gu, ' ').trim();
  const characters = Array.from(plain.slice(0, LONGEST_QUOTE * 2));
  const shown = characters.length > LONGEST_QUOTE ? `${characters.slice(0, LONGEST_QUOTE).join('')}…` : plain;
  return `"${shown}"`;
}

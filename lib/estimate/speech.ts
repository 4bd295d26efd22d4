/** How much can be said, and read, in a time. */

/** Words a minute of plain speech to a camera; 140 to 160 is usual in audiobooks and instruction. */
export const SPEECH_RATE = 150;
/** Subtitles are read at 160 to 180 words a minute, 0.3 s a word at least, in at most two lines of 37 characters. BBC subtitle guidelines. */
export const READING = { slowest: 160, fastest: 180, secondsPerWord: 0.3, charactersPerLine: 37, lines: 2 } as const;

/** @example countWords('Wear gloves.  Always.') // 3 */
export function countWords(text: string): number {
  return text.split(/\s+/u).filter((word) => /[\p{L}\p{N}]/u.test(word)).length;
}

/** Shortest time a subtitle may stand, seconds. @example leastReadingSeconds(10) // 3 */
export function leastReadingSeconds(words: number): number {
  return words * READING.secondsPerWord;
}

/** It fits two lines of 37 characters, broken between words. */
export function fitsSubtitle(text: string): boolean {
  let [lines, length] = [1, 0];
  for (const word of text.split(/\s+/u).filter((part) => part !== '')) {
    if (word.length > READING.charactersPerLine) return false;
    const next = length === 0 ? word.length : length + 1 + word.length;
    if (next <= READING.charactersPerLine) length = next;
    else [lines, length] = [lines + 1, word.length];
  }
  return lines <= READING.lines;
}

/** How much can be said, and read, in a time. */
import { issue, type Issue } from '@/lib/result';

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

const warn = (code: string, message: string, fix: string): Issue => issue(code, message, fix, { severity: 'warn' });

/** What is wrong with a caption for a reader, by the seconds it stands: `caption-fast`, `caption-short`, `caption-lines`, `caption-line-length`, all warnings. */
export function checkReading(text: string, seconds: number): readonly Issue[] {
  const words = countWords(text);
  const speed = (words / seconds) * 60;
  const lines = text.split('\n');
  const longest = Math.max(...lines.map((line) => line.length));
  const called = `The caption “${text.slice(0, 40)}”`;
  return [
    ...(speed > READING.fastest + 1e-9 ? [warn('caption-fast', `${called} runs at ${Math.round(speed)} words a minute; ${READING.fastest} can be read.`, 'Let it stand longer, or shorten it.')] : []),
    ...(seconds < leastReadingSeconds(words) - 1e-9 ? [warn('caption-short', `${called} stands ${seconds.toFixed(1)} s for ${words} words; each needs ${READING.secondsPerWord} s.`, 'Let it stand longer.')] : []),
    ...(lines.length > READING.lines ? [warn('caption-lines', `${called} has ${lines.length} lines.`, `Write ${READING.lines} at most.`)] : []),
    ...(longest > READING.charactersPerLine ? [warn('caption-line-length', `A line of the caption has ${longest} characters.`, `Break it at ${READING.charactersPerLine}.`)] : []),
  ];
}

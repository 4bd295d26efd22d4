/** Cautions as text for captions: how long they must stand, and WebVTT (W3C) of them. */
import { countWords, READING, SPEECH_RATE } from '@/lib/estimate';
import { writeCues } from '@/lib/footage';
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';

/** Words of a spoken caution: 12 s of speech. */
const SPOKEN_WORDS = 30;

const wordsOf = (text: string): readonly string[] => text.trim().split(/\s+/).filter((word) => word !== '');

/** Seconds a caution stands, computed from the guidelines: at least 3. @example captionSeconds('…43 characters, 7 words…') // 3.87 */
export function captionSeconds(text: string): number {
  return Math.max(3, 0.375 * countWords(text) + 1, text.length / 15 + 1);
}

/** Seconds it takes to say. */
export function spokenSeconds(text: string): number {
  return (countWords(text) / SPEECH_RATE) * 60;
}

/** Lines of at most {@link READING} characters, broken between words; a longer word keeps its line. */
export function breakLines(text: string): readonly string[] {
  const lines: string[] = [];
  for (const word of wordsOf(text)) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= READING.charactersPerLine) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** What is wrong with the texts of a caution: too long for the screen (`caption-too-long`), too long to say (`spoken-too-long`), or missing. */
export function checkCaution(caution: { readonly screen: string; readonly spoken: string }): readonly Issue[] {
  const issues: Issue[] = [];
  const lines = breakLines(caution.screen);
  if (lines.length === 0) issues.push(issue('caution-empty', 'The caution for the screen is empty.', 'Write what must not be copied blindly, in one line or two.', { path: ['caution', 'screen'] }));
  if (lines.length > READING.lines || lines.some((line) => line.length > READING.charactersPerLine)) {
    issues.push(issue('caption-too-long', `“${caution.screen.slice(0, 60)}…” takes ${lines.length} lines of ${READING.charactersPerLine} characters.`, `Cut it to ${READING.lines} lines.`, { path: ['caution', 'screen'] }));
  }
  const spoken = countWords(caution.spoken);
  if (spoken === 0) issues.push(issue('caution-empty', 'The caution to be spoken is empty.', `Write what is said, in at most ${SPOKEN_WORDS} words.`, { path: ['caution', 'spoken'] }));
  if (spoken > SPOKEN_WORDS) issues.push(issue('spoken-too-long', `The spoken caution has ${spoken} words.`, `Cut it to ${SPOKEN_WORDS}.`, { path: ['caution', 'spoken'] }));
  return issues;
}

export interface Cue {
  readonly id: string;
  /** Seconds in the episode. */
  readonly start: number;
  /** null: as long as it must stand. */
  readonly end: number | null;
  readonly text: string;
}

function checkCue({ id, start, end, text }: Cue): readonly Issue[] {
  const path = ['cues', id];
  if (!Number.isFinite(start) || start < 0) return [issue('cue-without-time', `The caution “${text.slice(0, 40)}” has no time in the episode.`, 'Give the second at which it appears, 0 or later.', { path })];
  const stands = (end ?? Number.POSITIVE_INFINITY) - start;
  if (stands <= 0) return [issue('cue-ends-early', `The caution “${text.slice(0, 40)}” ends before it starts.`, 'Let it end after it starts.', { path })];
  const needed = captionSeconds(text);
  // A thousandth is what the file can say.
  return stands + 0.001 >= needed ? [] : [issue('cue-too-short', `The caution “${text.slice(0, 40)}” stands ${stands.toFixed(2)} s and takes ${needed.toFixed(2)} s to read.`, `Let it stand ${needed.toFixed(2)} s.`, { severity: 'warn', path })];
}

/** A WebVTT file and what is doubtful in it. */
export interface CaptionFile {
  readonly text: string;
  readonly warnings: readonly Issue[];
}

/**
 * The cautions of an episode as WebVTT, in order of time. A cue without an end stands as long as it takes to read.
 * Fails with `cue-without-time` or `cue-ends-early`; warns with `cue-too-short`.
 */
export function writeCaptions(cues: readonly Cue[]): Result<CaptionFile> {
  const issues = cues.flatMap(checkCue);
  const stops = issues.filter(({ severity }) => severity === 'stop');
  if (stops.length > 0) return fail(stops);
  const written = cues.toSorted((a, b) => a.start - b.start || a.id.localeCompare(b.id)).map(({ start, end, text }, index) => (
    { name: `caution-${index + 1}`, start, end: end ?? start + captionSeconds(text), text: breakLines(text).join('\n') }));
  return ok({ text: writeCues(written), warnings: issues });
}

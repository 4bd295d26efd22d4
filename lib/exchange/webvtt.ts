/** Timed text as WebVTT (W3C). */
import { writeCues } from '@/lib/footage';
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';

export interface Cue {
  /** Seconds. */
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

const MS_PER_HOUR = 3_600_000;
const readText = (text: string): string => text.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&amp;', '&');

function checkCues(cues: readonly Cue[]): readonly Issue[] {
  return cues.flatMap((cue, index) => {
    const before = cues[index - 1];
    return [
      ...(Number.isFinite(cue.start) && Math.round(cue.start * 1000) >= 0 ? [] : [issue('cue-start', `Cue ${index + 1} starts at ${cue.start} s.`, 'Start it at 0 s or later.', { path: [index, 'start'] })]),
      ...(Math.round(cue.end * 1000) > Math.round(cue.start * 1000) ? [] : [issue('cue-length', `Cue ${index + 1} ends at ${cue.end} s, not after its start at ${cue.start} s.`, 'End it later.', { path: [index, 'end'] })]),
      ...(before !== undefined && cue.start < before.start ? [issue('cue-order', `Cue ${index + 1} starts before the one ahead of it.`, 'Put the cues in the order of their starts.', { path: [index, 'start'] })] : []),
      ...(cue.text.trim() === '' ? [issue('cue-empty', `Cue ${index + 1} has no text.`, 'Take it out.', { path: [index, 'text'] })] : []),
    ];
  });
}

/** Fails with `cue-start`, `cue-length`, `cue-order` or `cue-empty`, all of them. @example writeWebVtt([{ start: 0, end: 2, text: 'Gloves on' }]) */
export function writeWebVtt(cues: readonly Cue[]): Result<string> {
  const wrong = checkCues(cues);
  if (wrong.length > 0) return fail(wrong);
  return ok(writeCues(cues.map((cue, index) => ({ ...cue, name: String(index + 1) }))));
}

const TIME = String.raw`(?:(\d{2,}):)?([0-5]\d):([0-5]\d)\.(\d{3})`;
const TIMING = new RegExp(String.raw`^${TIME}[ \t]+-->[ \t]+${TIME}(?:[ \t].*)?$`, 'u');

function secondsOf([hours, minutes, seconds, ms]: readonly (string | undefined)[]): number {
  return (Number(hours ?? 0) * MS_PER_HOUR + Number(minutes) * 60_000 + Number(seconds) * 1000 + Number(ms)) / 1000;
}

/** Reads cues; notes, styles and regions are passed over. Fails with `webvtt-head`, `cue-timing` and what `writeWebVtt` refuses. */
export function readWebVtt(text: string): Result<readonly Cue[]> {
  const lines = text.replace(/^\uFEFF/u, '').replace(/\r\n?/gu, '\n');
  if (!/^WEBVTT(?:[ \t][^\n]*)?(?:\n|$)/u.test(lines)) return fail([issue('webvtt-head', 'The file does not start with WEBVTT.', 'Choose a WebVTT file.')]);
  const [head = '', ...blocks] = lines.split(/\n{2,}/u).filter((block) => block.trim() !== '');
  const issues: Issue[] = head.includes('-->') ? [issue('webvtt-head', 'An empty line must follow WEBVTT.', 'Put one in.')] : [];
  const cues = blocks.filter((block) => !/^(?:NOTE|STYLE|REGION)(?:[ \t\n]|$)/u.test(block)).flatMap((block, index) => {
    const rows = block.replace(/^\n+|\n+$/gu, '').split('\n');
    const place = rows.findIndex((row) => row.includes('-->'));
    const timing = TIMING.exec(rows[place] ?? '');
    if (timing === null || place > 1) {
      issues.push(issue('cue-timing', `Cue ${index + 1} has no times that can be read.`, 'Write them as 00:01.000 --> 00:03.500.', { path: [index] }));
      return [];
    }
    return [{ start: secondsOf(timing.slice(1, 5)), end: secondsOf(timing.slice(5, 9)), text: readText(rows.slice(place + 1).join('\n')) }];
  });
  const all = [...issues, ...checkCues(cues)];
  return all.length > 0 ? fail(all) : ok(cues);
}

/** One cue of timed text as WebVTT (W3C) writes it. */

/** Seconds; `name` stands above the times. */
export interface WrittenCue {
  readonly name: string;
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

const MS_PER_HOUR = 3_600_000;
const pad = (value: number, width = 2): string => String(value).padStart(width, '0');

/** Hours only where there are some. @example writeCueTime(61.5) // '01:01.500' */
function writeCueTime(seconds: number): string {
  const ms = Math.round(seconds * 1000);
  const hours = Math.floor(ms / MS_PER_HOUR);
  const rest = `${pad(Math.floor(ms / 60_000) % 60)}:${pad(Math.floor(ms / 1000) % 60)}.${pad(ms % 1000, 3)}`;
  return hours > 0 ? `${pad(hours)}:${rest}` : rest;
}

/** An empty line ends a cue, and an arrow may not stand in its text. */
function writeCueText(text: string): string {
  return text.replace(/\r\n?/gu, '\n').replace(/\n{2,}/gu, '\n').trim().replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}

/** A whole file of cues whose times and texts were checked. */
export function writeCues(cues: readonly WrittenCue[]): string {
  return `WEBVTT\n${cues.map(({ name, start, end, text }) => `\n${name}\n${writeCueTime(start)} --> ${writeCueTime(end)}\n${writeCueText(text)}\n`).join('')}`;
}

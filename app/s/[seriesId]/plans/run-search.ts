/** Reads the run route's lines as they come. */
import type { RunLine } from './progress';

/** @throws Error when the server cannot be reached, answers with a failure or breaks off; AbortError when `signal` fires. */
export async function runSearch(seriesId: string, seconds: number, signal: AbortSignal, onLine: (line: RunLine) => void): Promise<void> {
  const response = await fetch(`/s/${encodeURIComponent(seriesId)}/plans/run?seconds=${seconds}`, { method: 'POST', signal });
  if (!response.ok || response.body === null) throw new Error(`The server answered ${response.status}.`);
  const reader = response.body.pipeThrough(new TextDecoderStream()).getReader();
  let rest = '';
  let isEnded = false;
  for (let chunk = await reader.read(); !chunk.done; chunk = await reader.read()) {
    const lines = (rest + chunk.value).split('\n');
    rest = lines.pop() ?? '';
    for (const text of lines) {
      const line: RunLine = JSON.parse(text);
      isEnded = line.kind !== 'progress';
      onLine(line);
    }
  }
  if (!isEnded) throw new Error('The search broke off before its end.');
}

/** What the run route tells the page, one line of JSON each. */
import type { Issue } from '@/lib/result';

export type ForecastLine =
  | { readonly kind: 'progress'; readonly share: number }
  | { readonly kind: 'forecast'; readonly number: number }
  | { readonly kind: 'issues'; readonly issues: readonly Issue[] };

/** Reads the lines as they come. @throws Error when the server cannot be reached or breaks off; AbortError when `signal` fires. */
export async function runForecast(seriesId: string, signal: AbortSignal, onLine: (line: ForecastLine) => void): Promise<void> {
  const response = await fetch(`/s/${encodeURIComponent(seriesId)}/progress/run`, { method: 'POST', signal });
  if (!response.ok || response.body === null) throw new Error(`The server answered ${response.status}.`);
  const reader = response.body.pipeThrough(new TextDecoderStream()).getReader();
  let rest = '';
  let isEnded = false;
  for (let chunk = await reader.read(); !chunk.done; chunk = await reader.read()) {
    const lines = (rest + chunk.value).split('\n');
    rest = lines.pop() ?? '';
    for (const text of lines) {
      const line: ForecastLine = JSON.parse(text);
      isEnded = line.kind !== 'progress';
      onLine(line);
    }
  }
  if (!isEnded) throw new Error('The forecast broke off before its end.');
}

/**
 * Starts long work at an address of ours and hands over its lines as they come.
 * @param name `search`, `forecast`: as it is called when it breaks off
 * @throws Error when the server cannot be reached, answers with a failure or breaks off; AbortError when `signal` fires
 */
export async function readLines<Line extends { readonly kind: string }>(address: string, name: string, signal: AbortSignal, onLine: (line: Line) => void): Promise<void> {
  const response = await fetch(address, { method: 'POST', signal });
  if (!response.ok || response.body === null) throw new Error(`The server answered ${response.status}.`);
  const reader = response.body.pipeThrough(new TextDecoderStream()).getReader();
  let rest = '';
  let isEnded = false;
  for (let chunk = await reader.read(); !chunk.done; chunk = await reader.read()) {
    const lines = (rest + chunk.value).split('\n');
    rest = lines.pop() ?? '';
    for (const text of lines) {
      const line: Line = JSON.parse(text);
      isEnded = line.kind !== 'progress';
      onLine(line);
    }
  }
  if (!isEnded) throw new Error(`The ${name} broke off before its end.`);
}

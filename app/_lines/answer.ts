import { issue, type Issue } from '@/lib/result';

interface IssuesLine {
  readonly kind: 'issues';
  readonly issues: readonly Issue[];
}

interface LongWork<Line> {
  /** `search`, `forecast`: as it is called in what goes wrong. */
  readonly name: string;
  /** For a fault of the program. */
  readonly fault: { readonly code: string; readonly fix: string };
  /** Tells lines as it goes and answers with the last one. */
  readonly run: (signal: AbortSignal, tell: (line: Line) => void) => Promise<Line>;
}

/**
 * Answers with the lines of long work as they come: NDJSON, the last one a result or issues. A fault of the program is
 * told too, so that nothing just stops in silence. Closing the request stops the work. Another site is refused with 403.
 */
export function answerLines<Line>(request: Request, { name, fault, run }: LongWork<Line | IssuesLine>): Response {
  if (request.headers.get('sec-fetch-site') === 'cross-site') return new Response(`Another site may not start a ${name}.`, { status: 403 });
  const stopped = new AbortController();
  request.signal.addEventListener('abort', () => stopped.abort());
  const body = new ReadableStream<Uint8Array>({
    async start(stream) {
      const encoder = new TextEncoder();
      const tell = (line: Line | IssuesLine) => {
        if (!stopped.signal.aborted) stream.enqueue(encoder.encode(`${JSON.stringify(line)}\n`));
      };
      try {
        tell(await run(stopped.signal, tell));
      } catch (error) {
        if (!stopped.signal.aborted) console.error(error);
        const message = error instanceof Error ? error.message : `The ${name} stopped for a reason it did not tell.`;
        tell({ kind: 'issues', issues: [issue(fault.code, message, fault.fix)] });
      }
      if (!stopped.signal.aborted) stream.close();
    },
    cancel: () => stopped.abort(),
  });
  return new Response(body, { headers: { 'content-type': 'application/x-ndjson; charset=utf-8', 'cache-control': 'no-store, no-transform' } });
}

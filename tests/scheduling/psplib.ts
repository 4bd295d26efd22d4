import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Problem } from '@/lib/scheduling';

/** A published instance of single-mode resource-constrained project scheduling, as stored in tests/golden. */
export interface PsplibInstance {
  readonly id: string;
  readonly cap: readonly number[];
  readonly dur: readonly number[];
  readonly req: readonly (readonly number[])[];
  readonly succ: readonly (readonly number[])[];
  readonly lb: number;
  readonly ub: number;
  readonly cpm: number;
}

/**
 * Three instances of the set j30: Kolisch & Sprecher (1996), PSPLIB - a project scheduling problem library,
 * European Journal of Operational Research 96. `lb` = `ub` is the published optimum.
 */
export function loadInstances(): readonly PsplibInstance[] {
  const path = fileURLToPath(new URL('../golden/psplib-j30.jsonl', import.meta.url));
  return readFileSync(path, 'utf8').trim().split('\n').map((line) => JSON.parse(line) as PsplibInstance);
}

export function toProblem(instance: PsplibInstance): Problem {
  return {
    horizon: instance.dur.reduce((sum, duration) => sum + duration, 0),
    calendars: [],
    resources: instance.cap.map((capacity, k) => ({ id: `r${k}`, capacity })),
    activities: instance.dur.map((duration, i) => ({
      id: `a${i}`,
      duration,
      mode: 'one-go',
      demands: (instance.req[i] ?? []).map((amount, k) => ({ resource: `r${k}`, amount })),
    })),
    lags: instance.succ.flatMap((list, i) => list.map((j) => ({
      id: `${i} before ${j}`,
      from: { activity: `a${i}`, at: 'end' as const },
      to: { activity: `a${j}`, at: 'start' as const },
      min: { kind: 'elapsed' as const, minutes: 0 },
    }))),
  };
}

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { solveCore } from '@/lib/scheduling/proof';
import { readCases, toCore } from '../bench/published';

const read = (name: string) => readCases(readFileSync(new URL(`../golden/${name}`, import.meta.url), 'utf8'));
const published = [...read('published-psplib.jsonl'), ...read('published-max-lags.jsonl')];

/** Bounds moved by the exact search in a proof, counted alike on every machine: half as many again as they were when this was written. */
const limits: readonly (readonly [id: string, entries: number])[] = [
  ['j301_1', 650], ['j305_1', 2200], ['j3029_1', 72_000], ['j601_1', 1450], ['ubo20_psp1', 2200], ['ubo20_psp11', 620], ['ubo20_psp13', 1100],
  ['ubo20_psp17', 4400], ['ubo20_psp5', 0], ['j30_psp9', 13_500], ['j30_psp11', 570], ['j30_psp15', 1500], ['j30_psp65', 83_000], ['j30_psp67', 5400], ['j30_psp153', 4100], ['j30_psp155', 3900], ['ubo50_psp21', 1800], ['ubo50_psp25', 830], ['ubo50_psp27', 2100], ['ubo100_psp21', 23_500],
];

describe('a proof', () => {
  it.each(limits)('of %s takes no more than %d steps of the exact search', (id, most) => {
    const solution = solveCore(toCore(published.find((row) => row.id === id)!), { seed: 1, stop: ({ entries }) => entries > most });
    expect(['optimal', 'infeasible']).toContain(solution.status);
    expect(solution.entries).toBeLessThanOrEqual(most);
  });
});

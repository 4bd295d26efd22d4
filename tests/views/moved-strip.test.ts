import { describe, expect, it } from 'vitest';
import { drawMoves } from '@/lib/views/moved-strip';
import { at, sampleSeries } from '../build/sample-series';
import { block, SAMPLE_BLOCKS, samplePlan } from './sample-plan';

const document = sampleSeries();
const before = samplePlan().result;
const moved = (id: string, start: readonly [string, string], end: readonly [string, string]) => ({
  ...before, blocks: SAMPLE_BLOCKS.map((one) => (one.id === id ? block(id, one.title, [[at(...start), at(...end)]], { placeId: one.placeId }) : one)),
});

describe('the strip of what moves', () => {
  it('is left out when nothing moves', () => {
    expect(drawMoves(document, before, before)).toBeNull();
  });

  it('draws a block where it was and where it would be, in the row of its place and to the scale of its days', () => {
    const strip = drawMoves(document, before, moved('task:task-clean', ['2026-12-05', '11:00'], ['2026-12-05', '15:00']))!;
    expect(strip.days.map(({ date }) => date)).toEqual(['2026-12-05']);
    expect(strip.rows).toHaveLength(1);
    const [was, would] = strip.rows[0]!.pieces;
    expect([was?.look, would?.look]).toEqual(['was', 'would']);
    expect(would!.left).toBeGreaterThan(was!.left);
    expect(would!.width).toBeCloseTo(was!.width, 6);
    // They overlap in time, so they stand one above the other.
    expect(was!.lane).not.toBe(would!.lane);
    expect([was!.other, would!.other]).toEqual([null, null]);
  });

  it('says where the other half is when it lies in another week, and counts what moves later', () => {
    const strip = drawMoves(document, before, moved('task:task-clean', ['2026-12-12', '12:00'], ['2026-12-12', '16:00']))!;
    expect(strip.rows.flatMap(({ pieces }) => pieces).map(({ look, other }) => [look, other])).toEqual([['was', 'to Sat 12 Dec']]);
    const gone = drawMoves(document, before, { ...before, blocks: SAMPLE_BLOCKS.filter(({ id }) => id !== 'task:task-clean' && id !== 'task:task-fit') })!;
    expect(gone.rows.flatMap(({ pieces }) => pieces).map(({ other }) => other)).toEqual(['gone']);
    expect(gone.laterCount).toBe(1);
  });
});

import { describe, expect, it } from 'vitest';
import type { DryingStages, Material, OutsideJob, Trade } from '@/lib/build';
import { celsius, minutes } from '@/lib/units';
import { at, sampleSeries } from '../sample-series';
import { changed, codesOf, issuesOf } from './rule-cases';

const sample = sampleSeries();
const withPaint = (more: Partial<Material>) => sampleSeries({ materials: changed(sample.materials, 'material-paint', more) });
const stages = (touchDry: number, recoatFrom: number, recoatUntil: number | null, handle: number, fullCure: number): DryingStages => ({
  touchDry: minutes(touchDry), recoatFrom: minutes(recoatFrom), recoatUntil: recoatUntil === null ? null : minutes(recoatUntil),
  handle: minutes(handle), fullCure: minutes(fullCure),
});
const withJob = (more: Partial<OutsideJob>) => sampleSeries({ outsideJobs: changed(sample.outsideJobs, 'job-wheel', more) });
const withTrade = (more: Partial<Trade>) => sampleSeries({ trades: changed(sample.trades, 'trade-coater', more) });

describe('materials', () => {
  it.each([
    [stages(30, 30, 30, 30, 30), []],
    [stages(30, 15, null, 60, 120), []],
    [stages(61, 15, null, 60, 120), ['stages-out-of-order']],
    [stages(30, 15, null, 121, 120), ['stages-out-of-order']],
    [stages(30, 121, null, 60, 120), ['stages-out-of-order']],
    [stages(30, 60, 59, 60, 120), ['recoat-window-reversed']],
    [stages(-1, 60, 90, 60, 120), ['material-time-negative']],
  ])('judges the stages %j as %j', (value, codes) => {
    expect(codesOf(withPaint({ stages: value }))).toEqual(codes);
  });

  it('tells both times of stages that are the wrong way round', () => {
    expect(issuesOf(withPaint({ stages: stages(120, 15, null, 60, 120) }), 'stages-out-of-order')[0]?.message)
      .toBe('The material “Green gloss” is touch dry after 2 h, later than ready to handle after 1 h.');
  });

  it.each([
    [{ doublingPer: 0 }, ['doubling-not-positive']], [{ doublingPer: 0.1 }, []],
    [{ minimumTemperature: celsius(20) }, []], [{ minimumTemperature: celsius(20.5) }, ['minimum-above-reference']],
    [{ potLife: minutes(-1) }, ['material-time-negative']], [{ potLife: minutes(0) }, []],
    [{ source: ' ' }, ['material-without-source']],
  ])('judges %j as %j', (more, codes) => {
    expect(codesOf(withPaint(more))).toEqual(codes);
  });

  it('only points out a missing source', () => {
    expect(issuesOf(withPaint({ source: '' }), 'material-without-source')[0]?.severity).toBe('warn');
  });
});

describe('outside jobs and trades', () => {
  it.each([
    [{ quote: { low: 0, likely: 0, high: 0 } }, []], [{ quote: { low: -1, likely: 0, high: 1 } }, ['quote-negative']],
    [{ quote: { low: 3, likely: 2, high: 4 } }, ['quote-out-of-order']], [{ quote: { low: 1, likely: 5, high: 4 } }, ['quote-out-of-order']],
    [{ droppedOffAt: at('2026-12-01', '10:00'), collectedAt: at('2026-12-01', '10:00') }, []],
    [{ droppedOffAt: at('2026-12-01', '10:00'), collectedAt: at('2026-12-01', '09:59') }, ['collected-before-drop-off']],
    [{ collectedAt: at('2026-12-01', '10:00') }, ['collected-without-drop-off']],
    [{ promisedFor: '2026-12-08' }, []], [{ promisedFor: 'Tuesday' }, ['unknown-date']],
  ])('judges the job %j as %j', (more, codes) => {
    expect(codesOf(withJob(more))).toEqual(codes);
  });

  it('refuses a trade that is never open and a trip of less than no time', () => {
    expect(codesOf(withTrade({ openHours: [] }))).toEqual(['trade-never-open']);
    expect(codesOf(withTrade({ trip: minutes(-1) }))).toEqual(['trip-negative']);
    expect(codesOf(withTrade({ trip: minutes(0) }))).toEqual([]);
  });
});

describe('places and equipment', () => {
  it.each([[1, []], [0, ['place-capacity']], [1.5, ['place-capacity']]])('judges room for %d tasks as %j', (capacity, codes) => {
    expect(codesOf(sampleSeries({ places: changed(sample.places, 'place-spray', { capacity }) }))).toEqual(codes);
  });

  it.each([[1, []], [0, ['equipment-count']], [-2, ['equipment-count']]])('judges %d spray guns as %j', (count, codes) => {
    expect(codesOf(sampleSeries({ equipment: changed(sample.equipment, 'equipment-gun', { count }) }))).toEqual(codes);
  });
});

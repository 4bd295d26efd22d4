import { describe, expect, it } from 'vitest';
import { checkSeries, DEFAULT_CURE, type Material, type MaterialCure, type SeriesDocument } from '@/lib/build';
import { celsius, instant, minutes } from '@/lib/units';
import { coldSeries } from '../cold-series';

const codes = (document: SeriesDocument) => checkSeries(document).map(({ code }) => code);
const withCure = (cure: Partial<MaterialCure>, more: Partial<Material> = {}) => {
  const document = coldSeries();
  return { ...document, materials: document.materials.map((material) => ({ ...material, ...more, cure: { ...DEFAULT_CURE, ...cure } })) };
};

describe('the rules of climate and cure', () => {
  it('find nothing wrong with the cold series', () => {
    expect(checkSeries(coldSeries()).filter(({ severity }) => severity === 'stop')).toEqual([]);
  });

  it.each<[string, SeriesDocument]>([
    ['maximum-below-minimum', withCure({ maximumTemperature: celsius(7) })],
    ['dry-minimum-above-minimum', withCure({ minimumUntilDry: celsius(30) })],
    ['humidity-reversed', withCure({ humidity: { low: 80, high: 40 } })],
    ['dew-margin-negative', withCure({ dewMargin: -1 })],
    ['thinner-reversed', withCure({ thinner: { low: 20, high: 10 } })],
    ['flash-off-late', withCure({ flashOff: minutes(31) })],
    ['recoat-row-reversed', withCure({ recoatRows: [{ from: 10, to: 20, min: 8, max: 4 }] })],
    ['recoat-row-order', withCure({ recoatRows: [{ from: 10, to: 20, min: 1, max: 4 }, { from: 20, to: 30, min: 1, max: 2 }] })],
    ['pot-life-induction', withCure({ pot: { ...DEFAULT_CURE.pot, induction: minutes(60), isInductionIncluded: true } }, { potLife: minutes(60) })],
    ['law-value-missing', withCure({ law: { kind: 'arrhenius', value: null } })],
    ['law-value-wrong', withCure({ law: { kind: 'maturity', value: 20 } })],
    ['weather-low-above-high', { ...coldSeries(), weather: [{ ...coldSeries().weather[0]!, days: [{ date: '2026-12-01', low: 8, high: 7, dewPoint: null, humidity: null }] }] }],
    ['weather-twice', { ...coldSeries(), weather: [{ ...coldSeries().weather[0]!, days: [0, 1].map(() => ({ date: '2026-12-01', low: 1, high: 7, dewPoint: null, humidity: null })) }] }],
    ['heating-reversed', { ...coldSeries(), heatingRuns: coldSeries().heatingRuns.map((run) => ({ ...run, end: instant(run.start) })) }],
    ['heating-air-unknown', { ...coldSeries(), heatingRuns: coldSeries().heatingRuns.map((run) => ({ ...run, airZone: 'loft' })) }],
    ['system-coats', { ...coldSeries(), coatingSystems: coldSeries().coatingSystems.map((system) => ({ ...system, layers: system.layers.map((layer) => ({ ...layer, coats: 1.5 })) })) }],
    ['system-empty', { ...coldSeries(), coatingSystems: coldSeries().coatingSystems.map((system) => ({ ...system, layers: [] })) }],
  ])('find %s', (code, document) => {
    expect(codes(document)).toContain(code);
  });

  it.each<[string, SeriesDocument]>([
    ['maximum-below-minimum', withCure({ maximumTemperature: celsius(10) })],
    ['flash-off-late', withCure({ flashOff: minutes(30) })],
    ['recoat-row-order', withCure({ recoatRows: [{ from: 10, to: 20, min: 1, max: 4 }, { from: 21, to: 30, min: 1, max: 2 }] })],
    ['thinner-reversed', withCure({ thinner: { low: 10, high: 10 } })],
  ])('leave the boundary of %s alone', (code, document) => {
    expect(codes(document)).not.toContain(code);
  });
});

/** The sample in a cold arch: weather, room, a night of heating, a coating system, readings, and every group of fields filled in. */
import { DEFAULT_CURE, DEFAULT_PROCESS, DEFAULT_TERMS, DEFAULT_WORKSHOP, type Material, type SeriesDocument, type WeatherDay } from '@/lib/build';
import { celsius, minutes } from '@/lib/units';
import { at, sampleSeries } from './sample-series';

/** Twenty days from Thursday 26 November: some degrees above freezing, a frost from 10 to 13 December. */
const COLD_DAYS: readonly WeatherDay[] = Array.from({ length: 40 }, (_, day) => {
  const date = new Date(Date.UTC(2026, 10, 26) + day * 86_400_000).toISOString().slice(0, 10);
  const isFrost = date >= '2026-12-10' && date <= '2026-12-13';
  return { date, low: isFrost ? -6 : 2, high: isFrost ? 0 : 7, dewPoint: null, humidity: 85 };
});

function withCure(material: Material): Material {
  return { ...material, cure: { ...DEFAULT_CURE, flashOff: minutes(10), minimumUntilDry: celsius(4) } };
}

/** `more` replaces lists. */
export function coldSeries(more: Partial<SeriesDocument> = {}): SeriesDocument {
  const document = sampleSeries();
  return {
    ...document,
    series: {
      ...document.series,
      workshop: { ...DEFAULT_WORKSHOP, room: { ...DEFAULT_WORKSHOP.room, timeConstant: 24, offset: 3 }, heater: { ...DEFAULT_WORKSHOP.heater, isIgnitionSafe: true } },
    },
    materials: document.materials.map(withCure),
    trades: document.trades.map((trade) => ({ ...trade, terms: DEFAULT_TERMS })),
    outsideJobs: document.outsideJobs.map((job) => ({ ...job, process: DEFAULT_PROCESS })),
    coatingSystems: [{
      kind: 'coatingSystem', id: 'system-frame', revision: 1, order: 0, name: 'Primer and gloss', abrading: minutes(45),
      layers: [
        { materialId: 'material-primer', coats: 2, work: minutes(30), between: 'wet on wet', isAbradedBefore: false },
        { materialId: 'material-paint', coats: 2, work: minutes(40), between: 'recoat', isAbradedBefore: true },
      ],
    }],
    heatingRuns: [{
      kind: 'heatingRun', id: 'heating-night', revision: 1, order: 0, name: 'Saturday night', airZone: 'tent', start: at('2026-12-05', '17:00'), end: at('2026-12-06', '09:00'), setPoint: celsius(14),
    }],
    weather: [{ kind: 'weather', id: 'weather-cold', revision: 1, order: 0, name: 'Cold weeks', days: COLD_DAYS }],
    readings: [{ kind: 'readings', id: 'readings-tent', revision: 1, order: 0, name: 'Logger in the tent', airZone: 'tent', count: 48, from: at('2026-11-28', '00:00'), to: at('2026-11-29', '23:00') }],
    ...more,
  };
}

/** Any series with a heater in its workshop that solvent does not bear, or does. */
export function withHeater(document: SeriesDocument, isIgnitionSafe: boolean): SeriesDocument {
  const workshop = document.series.workshop ?? DEFAULT_WORKSHOP;
  return { ...document, series: { ...document.series, workshop: { ...workshop, heater: { ...workshop.heater, isIgnitionSafe } } } };
}

/** What is assumed where a record leaves a group of fields out. Common practice, no source, unless said otherwise. */
import { celsius, minutes } from '@/lib/units';
import { NO_CONSENT, NO_CUT_CHECKS } from './safety-records';
import type { JobProcess, MaterialCure, SeriesRecord, TradeTerms, Workshop } from './model';

/** Limits of solvent-borne paint as in MIL-HDBK-1110 (32 °C, 3 K above the dew point) and the IMO guideline (85 %). */
export const DEFAULT_CURE: MaterialCure = {
  flashOff: minutes(0), law: { kind: 'doubling', value: null }, minimumUntilDry: null, belowMinimum: 'pauses', maximumTemperature: celsius(32),
  humidity: { low: null, high: 85 }, dewMargin: 3, recoatRows: [],
  pot: { at: celsius(20), halvesPer: 10, induction: minutes(0), isInductionIncluded: false },
  thinner: { low: null, high: null }, lateWork: 'abrade', bake: { metalTemperature: null, hold: null }, depthPerRootDay: null,
  isConfinedOnly: false, cautions: [], sources: [],
};

/** A brick arch of 150 m3 with an electric heater of 3 kW. */
export const DEFAULT_WORKSHOP: Workshop = {
  room: { timeConstant: 12, heatLoss: 250, offset: 2, volume: 150, airChanges: 1, moisture: 0.1, surfaceLag: 1 },
  heater: { kilowatts: 3, kind: 'electric', fuel: null, isIgnitionSafe: false },
  pricePerKwh: 0.25, currency: 'EUR', dustSettles: minutes(60),
};

export const DEFAULT_TERMS: TradeTerms = {
  batchDays: [], collectionDays: [], minimum: { amount: null, unit: '' }, country: '', region: '', preparations: [], returnWindow: { hours: null, afterwards: '' },
};

export const DEFAULT_PROCESS: JobProcess = {
  preparations: [], amount: null, treatedAt: null, readyAt: null, isQuenched: false, vents: { width: null, height: null, diameter: null, isDrilledAfter: false },
};

/** The record with every group filled in, for its form. */
export function withDefaults(record: SeriesRecord): SeriesRecord {
  switch (record.kind) {
    case 'series': return { ...record, workshop: record.workshop ?? DEFAULT_WORKSHOP };
    case 'material': return { ...record, cure: record.cure ?? DEFAULT_CURE };
    case 'trade': return { ...record, terms: record.terms ?? DEFAULT_TERMS };
    case 'outsideJob': return { ...record, process: record.process ?? DEFAULT_PROCESS };
    case 'person': return { ...record, consent: record.consent ?? NO_CONSENT };
    case 'episode': return { ...record, checks: record.checks ?? NO_CUT_CHECKS };
    default: return record;
  }
}

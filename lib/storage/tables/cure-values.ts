/** Shapes of the JSON that holds what climate, cure and outside trades need. */
import type { FieldSource, JobProcess, MaterialCure, SystemLayer, TradeTerms, WeatherDay, Workshop } from '@/lib/build';
import { celsius, instant, minutes } from '@/lib/units';
import { z } from 'zod';
import { oneOf } from '../column';

const length = z.number().transform(minutes);
const temperature = z.number().transform(celsius);
const range = z.object({ low: z.number().nullable(), high: z.number().nullable() });
const weekdays = z.array(z.literal([1, 2, 3, 4, 5, 6, 7]));
const moment = z.number().transform(instant).nullable();

export const cureShape: z.ZodType<MaterialCure> = z.object({
  flashOff: length,
  law: z.object({
    kind: oneOf<MaterialCure['law']['kind']>({ doubling: true, arrhenius: true, maturity: true, moisture: true, steady: true }),
    value: z.number().nullable(),
  }),
  minimumUntilDry: temperature.nullable(),
  belowMinimum: oneOf<MaterialCure['belowMinimum']>({ pauses: true, 'never forms': true, 'surface fault': true }),
  maximumTemperature: temperature,
  humidity: range,
  dewMargin: z.number(),
  recoatRows: z.array(z.object({ from: z.number(), to: z.number(), min: z.number(), max: z.number() })),
  pot: z.object({ at: temperature, halvesPer: z.number(), induction: length, isInductionIncluded: z.boolean() }),
  thinner: range,
  lateWork: oneOf<MaterialCure['lateWork']>({ none: true, abrade: true, 'clean and tack coat': true, strip: true }),
  bake: z.object({ metalTemperature: temperature.nullable(), hold: length.nullable() }),
  depthPerRootDay: z.number().nullable(),
  isConfinedOnly: z.boolean(),
  cautions: z.array(z.string()),
  sources: z.array(z.object({
    field: oneOf<FieldSource['field']>({
      stages: true, law: true, minimumTemperature: true, belowMinimum: true, maximumTemperature: true, humidity: true, dewMargin: true,
      recoatRows: true, potLife: true, thinner: true, lateWork: true, bake: true, depthPerRootDay: true,
    }),
    kind: oneOf<FieldSource['kind']>({ read: true, memory: true, none: true }),
    text: z.string(),
  })),
});

const roomAndHeater = {
  room: z.object({
    timeConstant: z.number(), heatLoss: z.number(), offset: z.number(), volume: z.number(), airChanges: z.number(), moisture: z.number(), surfaceLag: z.number(),
  }),
  heater: z.object({
    kilowatts: z.number(),
    kind: oneOf<Workshop['heater']['kind']>({ electric: true, 'flued burner': true, 'flueless burner': true }),
    fuel: oneOf<NonNullable<Workshop['heater']['fuel']>>({ propane: true, 'natural gas': true, paraffin: true }).nullable(),
    isIgnitionSafe: z.boolean(),
  }),
};

export const workshopShape: z.ZodType<Workshop> = z.object({
  ...roomAndHeater,
  airs: z.array(z.object({ airZone: z.string(), ...roomAndHeater })).optional(),
  pricePerKwh: z.number(),
  currency: z.string(),
  dustSettles: length,
});

export const termsShape: z.ZodType<TradeTerms> = z.object({
  batchDays: weekdays,
  collectionDays: weekdays,
  minimum: z.object({ amount: z.number().nullable(), unit: z.string() }),
  country: z.string(),
  region: z.string(),
  preparations: z.array(z.string()),
  returnWindow: z.object({ hours: z.number().nullable(), afterwards: z.string() }),
});

export const processShape: z.ZodType<JobProcess> = z.object({
  preparations: z.array(z.object({ name: z.string(), doneAt: moment })),
  amount: z.number().nullable(),
  treatedAt: moment,
  readyAt: moment,
  isQuenched: z.boolean(),
  vents: z.object({ width: z.number().nullable(), height: z.number().nullable(), diameter: z.number().nullable(), isDrilledAfter: z.boolean() }),
});

export const layersShape: z.ZodType<readonly SystemLayer[]> = z.array(z.object({
  materialId: z.string(),
  coats: z.number(),
  work: length,
  between: oneOf<SystemLayer['between']>({ recoat: true, 'wet on wet': true }),
  isAbradedBefore: z.boolean(),
}));

export const weatherShape: z.ZodType<readonly WeatherDay[]> = z.array(z.object({
  date: z.string(), low: z.number(), high: z.number(), dewPoint: z.number().nullable(), humidity: z.number().nullable(),
}));

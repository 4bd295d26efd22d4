/** What a person fills in about climate, cure and coating systems. */
import { z } from 'zod';
import { celsiusValue, civilDate, flag, idOf, listOf, minutesValue, momentIn, nameOf, numberOf, oneOf, orNull, phrase, phrases, say, textOf, wholeNumber, type FormSetting } from './values';

const degrees = numberOf({ unit: 'degrees Celsius', min: -100, max: 400 });
const percent = orNull(numberOf({ unit: 'percent', min: -100, max: 1000 })).default(null);
const share = z.strictObject({ low: percent, high: percent });

const SOURCED = [
  'stages', 'law', 'minimumTemperature', 'belowMinimum', 'maximumTemperature', 'humidity', 'dewMargin', 'recoatRows', 'potLife', 'thinner', 'lateWork', 'bake', 'depthPerRootDay',
] as const;

export const cureSchema = z.strictObject({
  flashOff: minutesValue,
  law: z.strictObject({ kind: oneOf(['doubling', 'arrhenius', 'maturity', 'moisture', 'steady']), value: orNull(numberOf({ unit: '' })).default(null) }),
  minimumUntilDry: orNull(celsiusValue).default(null),
  belowMinimum: oneOf(['pauses', 'never forms', 'surface fault']),
  maximumTemperature: celsiusValue,
  humidity: share,
  dewMargin: numberOf({ unit: 'kelvins', min: -100, max: 100 }),
  recoatRows: listOf(z.strictObject({ from: degrees, to: degrees, min: numberOf({ unit: 'hours', min: 0 }), max: numberOf({ unit: 'hours', min: 0 }) })),
  pot: z.strictObject({ at: celsiusValue, halvesPer: numberOf({ unit: 'kelvins', min: -1000, max: 1000 }), induction: minutesValue, isInductionIncluded: flag }),
  thinner: share,
  lateWork: oneOf(['none', 'abrade', 'clean and tack coat', 'strip']),
  bake: z.strictObject({ metalTemperature: orNull(celsiusValue).default(null), hold: orNull(minutesValue).default(null) }),
  depthPerRootDay: orNull(numberOf({ unit: 'millimetres', min: 0, max: 100 })).default(null),
  isConfinedOnly: flag,
  cautions: phrases,
  sources: listOf(z.strictObject({ field: oneOf(SOURCED), kind: oneOf(['read', 'memory', 'none']), text: textOf() })),
});

const positive = (unit: string) => numberOf({ unit, min: -100_000, max: 1_000_000 });

const roomAndHeater = {
  room: z.strictObject({
    timeConstant: positive('hours'), heatLoss: positive('W/K'), offset: positive('kelvins'), volume: positive('m3'), airChanges: positive('an hour'),
    moisture: positive('kg an hour'), surfaceLag: positive('hours'),
  }),
  heater: z.strictObject({
    kilowatts: positive('kW'), kind: oneOf(['electric', 'flued burner', 'flueless burner']),
    fuel: orNull(oneOf(['propane', 'natural gas', 'paraffin'])).default(null), isIgnitionSafe: flag,
  }),
};

export const workshopSchema = z.strictObject({
  ...roomAndHeater,
  airs: listOf(z.strictObject({ airZone: phrase, ...roomAndHeater })).transform((airs) => (airs.length === 0 ? undefined : airs)).optional(),
  pricePerKwh: positive('money'),
  currency: textOf(10),
  dustSettles: minutesValue,
});

/** What a person fills in about a coating system. */
export const coatingSystemSchema = z.strictObject({
  name: nameOf('The coating system'),
  layers: listOf(z.strictObject({
    materialId: idOf('material'), coats: wholeNumber('coats'), work: minutesValue, between: oneOf(['recoat', 'wet on wet']), isAbradedBefore: flag,
  })),
  abrading: minutesValue,
});

/** What a person fills in about a heating run. Local times are read in the zone of the series. */
export const heatingRunSchema = (setting: FormSetting) => z.strictObject({
  name: nameOf('The heating run'), airZone: textOf(200), start: momentIn(setting), end: momentIn(setting), setPoint: celsiusValue,
});

/** Weather comes by the day, so it may be longer than other lists. */
const MOST_DAYS = 1500;

/** What a person fills in about a weather table. */
export const weatherSchema = z.strictObject({
  name: nameOf('The weather table'),
  days: z.array(z.strictObject({
    date: civilDate, low: degrees, high: degrees,
    dewPoint: orNull(degrees).default(null), humidity: percent,
  }), { error: say('This is not a list.', 'Load the page again.') }).max(MOST_DAYS, say(`This table has more than ${MOST_DAYS} days.`, 'Make another table for the rest.')).default([]),
});

/** A set of readings: name and air may be corrected; the rest is counted at the import. */
export const readingsSchema = (setting: FormSetting) => z.strictObject({
  name: nameOf('The set of readings'), airZone: textOf(200), count: wholeNumber('rows'), from: momentIn(setting), to: momentIn(setting),
});

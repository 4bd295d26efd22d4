import { NO_TASK_HAZARDS } from '@/lib/build';
import { z } from 'zod';
import { COVERAGES } from './kit';
import { hazardFact } from './hazard';
import {
  celsiusValue, flag, idOf, idsOf, lineId, listOf, minutesValue, momentIn, nameOf, numberOf, oneOf, orNull, partUses, phrase, phrases, textOf, threeMinutes, wholeNumber, type FormSetting,
} from './values';

/** A departure with nothing in it is none. */
const departure = z.strictObject({ manualValue: textOf(500), ownValue: textOf(500), reason: textOf(), warning: textOf() })
  .transform((said) => (Object.values(said).every((text) => text === '') ? null : said));

const taskHazards = z.strictObject({
  facts: listOf(hazardFact).transform((facts) => [...new Set(facts)]),
  toolShare: numberOf({ unit: '', min: 0, max: 1 }).default(1),
  sprayed: orNull(numberOf({ unit: 'millilitres', min: 0, max: 100_000 })).default(null),
  departure: departure.nullable().default(null),
}).default({ ...NO_TASK_HAZARDS, facts: [] });

const shotSchema = (setting: FormSetting) => z.strictObject({
  id: lineId(setting),
  name: nameOf('The shot'),
  purpose: oneOf(['before', 'during', 'after', 'insert', 'piece to camera', 'time-lapse', 'pickup']),
  time: minutesValue,
  mustHave: flag,
  filmedAt: orNull(momentIn(setting)).default(null),
  states: listOf(z.strictObject({ partId: idOf('part'), stateId: idOf('state') })),
  // A shot that asks for nothing stays as it was written before it could.
}).transform(({ states, ...shot }) => (states.length === 0 ? shot : { ...shot, states }));

/** What a person fills in about a task. Local times are read in the zone of the series. */
export const taskSchema = (setting: FormSetting) => z.strictObject({
  name: nameOf('The task'),
  category: oneOf(['strip', 'clean', 'repair', 'machining', 'welding', 'filler', 'paint', 'electrics', 'assembly', 'setting up', 'filming', 'other']),
  episodeId: orNull(idOf('episode')).default(null),
  placeId: idOf('place'),
  parts: partUses,
  effort: threeMinutes,
  inOneGo: flag,
  irreversible: flag,
  crew: listOf(z.strictObject({ skill: orNull(phrase).default(null), count: wholeNumber('people') })),
  equipmentIds: idsOf('piece of equipment'),
  coats: listOf(z.strictObject({ id: lineId(setting), materialId: idOf('material') })),
  coverage: oneOf(COVERAGES).default('none'),
  shots: listOf(shotSchema(setting)),
  conditions: z.strictObject({ minimumTemperature: orNull(celsiusValue).default(null), needsDaylight: flag })
    .default({ minimumTemperature: null, needsDaylight: false }),
  isDusty: flag,
  isNoisy: flag,
  layOut: phrases,
  cautions: phrases,
  hazards: taskHazards,
  manualReference: textOf(),
  pinnedStart: orNull(momentIn(setting)).default(null),
  doneAt: orNull(momentIn(setting)).default(null),
});

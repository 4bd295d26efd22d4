import { z } from 'zod';
import {
  celsiusValue, flag, idOf, idsOf, lineId, listOf, minutesValue, momentIn, nameOf, oneOf, orNull, partUses, phrase, phrases, textOf, threeMinutes, wholeNumber, type FormSetting,
} from './values';

const shotSchema = (setting: FormSetting) => z.strictObject({
  id: lineId(setting),
  name: nameOf('The shot'),
  purpose: oneOf(['before', 'during', 'after', 'insert', 'piece to camera', 'time-lapse', 'pickup']),
  time: minutesValue,
  mustHave: flag,
  filmedAt: orNull(momentIn(setting)).default(null),
});

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
  coverage: oneOf(['none', 'locked-off', 'moved camera', 'inserts and teaching', 'piece to camera', 'time-lapse']).default('none'),
  shots: listOf(shotSchema(setting)),
  conditions: z.strictObject({ minimumTemperature: orNull(celsiusValue).default(null), needsDaylight: flag })
    .default({ minimumTemperature: null, needsDaylight: false }),
  isDusty: flag,
  isNoisy: flag,
  layOut: phrases,
  cautions: phrases,
  manualReference: textOf(),
  pinnedStart: orNull(momentIn(setting)).default(null),
  doneAt: orNull(momentIn(setting)).default(null),
});

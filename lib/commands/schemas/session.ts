import { z } from 'zod';
import { celsiusValue, flag, idsOf, momentIn, nameOf, orNull, type FormSetting } from './values';

/** What a person fills in about a session. Local times are read in the zone of the series. */
export const sessionSchema = (setting: FormSetting) => z.strictObject({
  name: nameOf('The session'),
  start: momentIn(setting),
  end: momentIn(setting),
  placeIds: idsOf('place'),
  crewIds: idsOf('person'),
  isRecording: flag,
  hasDaylight: flag,
  isNoiseAllowed: flag,
  heating: orNull(celsiusValue).default(null),
});

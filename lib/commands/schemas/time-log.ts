import { z } from 'zod';
import { flag, idOf, momentIn, nameOf, oneOf, orNull, type FormSetting } from './values';

/** What a person fills in about time spent on a task. Local times are read in the zone of the series. */
export const timeLogSchema = (setting: FormSetting) => z.strictObject({
  name: nameOf('The time log'),
  taskId: idOf('task'),
  activity: oneOf(['hands-on', 'filming']).default('hands-on'),
  start: momentIn(setting),
  end: orNull(momentIn(setting)).default(null),
  wasInterrupted: flag,
});

/** One schema a kind of record, the same for forms and server. */
import { fieldLabel, type FieldsOf, type RecordKind } from '@/lib/build';
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';
import { z } from 'zod';
import { cameraSchema } from './camera';
import { coatingSystemSchema, heatingRunSchema, readingsSchema, weatherSchema } from './cure';
import { episodeSchema } from './episode';
import { equipmentSchema } from './equipment';
import { hazardSchema } from './hazard';
import { linkSchema } from './link';
import { materialSchema } from './material';
import { outsideJobSchema } from './outside-job';
import { partSchema } from './part';
import { personSchema } from './person';
import { placeSchema } from './place';
import { promiseSchema } from './promise';
import { segmentSchema } from './segment';
import { seriesSchema } from './series';
import { sessionSchema } from './session';
import { sponsorshipSchema } from './sponsorship';
import { statementSchema } from './statement';
import { taskSchema } from './task';
import { timeLogSchema } from './time-log';
import { tradeSchema } from './trade';
import { splitMessage, type FormSetting } from './values';

export type { FormSetting } from './values';

/** Written out as fields of the model: a schema that gives more, less or something else does not compile. */
type SchemaOf<K extends RecordKind> = (setting: FormSetting) => z.ZodType<FieldsOf<K>>;

const SCHEMAS = {
  series: () => seriesSchema,
  person: () => personSchema,
  place: () => placeSchema,
  equipment: () => equipmentSchema,
  part: partSchema,
  material: () => materialSchema,
  trade: () => tradeSchema,
  outsideJob: outsideJobSchema,
  task: taskSchema,
  link: () => linkSchema,
  session: sessionSchema,
  episode: () => episodeSchema,
  segment: () => segmentSchema,
  timeLog: timeLogSchema,
  sponsorship: () => sponsorshipSchema,
  hazard: hazardSchema,
  statement: () => statementSchema,
  coatingSystem: () => coatingSystemSchema,
  heatingRun: heatingRunSchema,
  weather: () => weatherSchema,
  readings: readingsSchema,
  camera: () => cameraSchema,
  promise: () => promiseSchema,
} as const satisfies { readonly [K in RecordKind]: SchemaOf<K> };

type OutputOf<K extends RecordKind> = z.output<ReturnType<(typeof SCHEMAS)[K]>>;

/** Kinds whose schema has a field that the model has not; there must be none. */
type KindsWithMore = { [K in RecordKind]: Exclude<keyof OutputOf<K>, keyof FieldsOf<K>> extends never ? never : K }[RecordKind];
const ALL: { readonly [K in RecordKind]: SchemaOf<K> } = SCHEMAS satisfies Readonly<Record<KindsWithMore, never>>;

/** The schema of a kind's editable fields. Local times in the input are read in the zone of the series. */
function schemaOf<K extends RecordKind>(kind: K, setting: FormSetting): z.ZodType<FieldsOf<K>> {
  return ALL[kind](setting);
}

function startUpper(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** An issue of a schema as an issue of the program, with the field named in front. */
function toIssue(kind: RecordKind, found: z.core.$ZodIssue): Issue {
  const path = found.path.filter((step) => typeof step !== 'symbol');
  if (found.code === 'unrecognized_keys') {
    return issue('input-unknown-field', `There is no field named ${found.keys.join(', ')} here.`, 'Take it out.', { path });
  }
  const { problem, fix } = splitMessage(found.message);
  const [field] = path;
  const isName = path.at(-1) === 'name';
  const label = typeof field === 'string' && !isName ? `${startUpper(fieldLabel(kind, field))}: ` : '';
  return issue(isName ? 'input-name' : 'input-value', `${label}${problem}`, fix, { path });
}

/**
 * Reads what a form sent. All issues are collected; the path of each leads to its field.
 * Fails with `input-name`, `input-value` or `input-unknown-field`.
 * @example readFields('place', { name: 'Bench', capacity: 2, airZone: '' }, { zone: 'Europe/London', newId })
 */
export function readFields<K extends RecordKind>(kind: K, input: unknown, setting: FormSetting): Result<FieldsOf<K>> {
  const parsed = schemaOf(kind, setting).safeParse(input);
  return parsed.success ? ok(parsed.data) : fail(parsed.error.issues.map((found) => toIssue(kind, found)));
}

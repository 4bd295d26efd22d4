/** Which form belongs to which kind of record. */
import type { RecordKind } from '@/lib/build';
import {
  EPISODE_SECTIONS, EQUIPMENT_SECTIONS, MATERIAL_SECTIONS, PART_SECTIONS, PERSON_SECTIONS, PLACE_SECTIONS,
  SERIES_SECTIONS, SESSION_SECTIONS, TRADE_SECTIONS,
} from './record-form-fields-things';
import {
  COATING_SYSTEM_SECTIONS, HEATING_RUN_SECTIONS, JOB_PROCESS_SECTIONS, MATERIAL_CURE_SECTIONS, READINGS_SECTIONS, TRADE_TERMS_SECTIONS, WEATHER_SECTIONS, WORKSHOP_SECTIONS,
} from './record-form-fields-cure';
import { CAMERA_SECTIONS, PROMISE_SECTIONS } from './record-form-fields-film';
import { HAZARD_SECTIONS } from './record-form-fields-hazard';
import { LINK_SECTIONS, OUTSIDE_JOB_SECTIONS, TASK_SECTIONS } from './record-form-fields-work';
import { SEGMENT_SECTIONS, SPONSORSHIP_SECTIONS, TIME_LOG_SECTIONS } from './record-form-fields-story';
import type { FieldSpec, FormSection } from './record-form-model';

const SECTIONS: Readonly<Record<RecordKind, readonly FormSection[]>> = {
  series: [...SERIES_SECTIONS, ...WORKSHOP_SECTIONS],
  place: PLACE_SECTIONS,
  person: PERSON_SECTIONS,
  part: PART_SECTIONS,
  material: [...MATERIAL_SECTIONS, ...MATERIAL_CURE_SECTIONS],
  trade: [...TRADE_SECTIONS, ...TRADE_TERMS_SECTIONS],
  equipment: EQUIPMENT_SECTIONS,
  session: SESSION_SECTIONS,
  episode: EPISODE_SECTIONS,
  task: TASK_SECTIONS,
  outsideJob: [...OUTSIDE_JOB_SECTIONS, ...JOB_PROCESS_SECTIONS],
  link: LINK_SECTIONS,
  segment: SEGMENT_SECTIONS,
  timeLog: TIME_LOG_SECTIONS,
  sponsorship: SPONSORSHIP_SECTIONS,
  hazard: HAZARD_SECTIONS,
  statement: [],
  coatingSystem: COATING_SYSTEM_SECTIONS,
  heatingRun: HEATING_RUN_SECTIONS,
  weather: WEATHER_SECTIONS,
  readings: READINGS_SECTIONS,
  camera: CAMERA_SECTIONS,
  promise: PROMISE_SECTIONS,
};

export function listSections(kind: RecordKind): readonly FormSection[] {
  return SECTIONS[kind];
}

export function listFields(kind: RecordKind): readonly FieldSpec[] {
  return SECTIONS[kind].flatMap((section) => section.fields);
}

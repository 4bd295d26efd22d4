/** Which records point at which. */
import type { RecordKind, SeriesDocument, SeriesRecord } from './model';
import { listRecords } from './records';
import { statesOf, withoutPart } from './shot-states';

/** One pointer from a record to another. */
export interface Reference {
  readonly kind: RecordKind;
  readonly id: string;
  /** Where it stands in the record that points. */
  readonly path: readonly (string | number)[];
  /** What the other record is to this one: `place`, `member of the crew`. */
  readonly role: string;
  /** True: the record makes no sense without it and goes with it; false: the pointer can be taken out. */
  readonly isNeeded: boolean;
}

/** A record that points at another one. */
export interface User {
  readonly record: SeriesRecord;
  readonly reference: Reference;
}

function pointer(kind: RecordKind, id: string, path: Reference['path'], role: string, isNeeded = false): Reference {
  return { kind, id, path, role, isNeeded };
}

function optional(kind: RecordKind, id: string | null, path: Reference['path'], role: string): readonly Reference[] {
  return id === null ? [] : [pointer(kind, id, path, role)];
}

type Readers = { readonly [K in RecordKind]?: (record: Extract<SeriesRecord, { kind: K }>) => readonly Reference[] };

const READERS = {
  part: ({ whereabouts }) => (whereabouts.kind === 'store' ? [] : optional(whereabouts.kind, whereabouts.id, ['whereabouts', 'id'], 'where it is')),
  outsideJob: (job) => [
    pointer('trade', job.tradeId, ['tradeId'], 'trade', true),
    ...optional('episode', job.episodeId, ['episodeId'], 'episode'),
    ...job.parts.map((use, index) => pointer('part', use.partId, ['parts', index, 'partId'], 'part')),
  ],
  task: (task) => [
    pointer('place', task.placeId, ['placeId'], 'place', true),
    ...optional('episode', task.episodeId, ['episodeId'], 'episode'),
    ...task.parts.map((use, index) => pointer('part', use.partId, ['parts', index, 'partId'], 'part')),
    ...task.equipmentIds.map((id, index) => pointer('equipment', id, ['equipmentIds', index], 'equipment')),
    ...task.coats.map((coat, index) => pointer('material', coat.materialId, ['coats', index, 'materialId'], 'coat')),
    ...task.shots.flatMap((shot, index) => statesOf(shot).map((shown, place) => pointer('part', shown.partId, ['shots', index, 'states', place, 'partId'], 'part in the picture'))),
  ],
  link: (link) => [
    pointer(link.from.kind, link.from.id, ['from'], 'first end', true),
    pointer(link.to.kind, link.to.id, ['to'], 'second end', true),
  ],
  session: (session) => [
    ...session.placeIds.map((id, index) => pointer('place', id, ['placeIds', index], 'place')),
    ...session.crewIds.map((id, index) => pointer('person', id, ['crewIds', index], 'crew')),
  ],
  segment: (segment) => [
    ...optional('episode', segment.episodeId, ['episodeId'], 'episode'),
    ...segment.taskIds.map((id, index) => pointer('task', id, ['taskIds', index], 'work shown')),
  ],
  timeLog: (log) => [pointer('task', log.taskId, ['taskId'], 'task', true)],
  sponsorship: (sponsorship) => optional('episode', sponsorship.episodeId, ['episodeId'], 'episode'),
  coatingSystem: (system) => system.layers.map((layer, index) => pointer('material', layer.materialId, ['layers', index, 'materialId'], 'layer')),
  promise: (promise) => [
    ...optional('episode', promise.saidInId, ['saidInId'], 'said in'),
    ...optional('episode', promise.dueId, ['dueId'], 'due episode'),
    ...optional('episode', promise.closedInId, ['closedInId'], 'ended in'),
  ],
} satisfies Readers;

/** Every pointer that a record holds, in the order of its fields. */
export function referencesOf(record: SeriesRecord): readonly Reference[] {
  switch (record.kind) {
    case 'part': return READERS.part(record);
    case 'outsideJob': return READERS.outsideJob(record);
    case 'task': return READERS.task(record);
    case 'link': return READERS.link(record);
    case 'session': return READERS.session(record);
    case 'segment': return READERS.segment(record);
    case 'timeLog': return READERS.timeLog(record);
    case 'sponsorship': return READERS.sponsorship(record);
    case 'coatingSystem': return READERS.coatingSystem(record);
    case 'promise': return READERS.promise(record);
    default: return [];
  }
}

/** Who points at a record, in the order of the document. A record that points at it twice comes twice. */
export function findUsers(document: SeriesDocument, kind: RecordKind, id: string): readonly User[] {
  return listRecords(document).flatMap((record) =>
    referencesOf(record).filter((reference) => reference.kind === kind && reference.id === id).map((reference) => ({ record, reference })),
  );
}

/** The same record without its pointers to another one, for pointers that can be taken out (see {@link Reference.isNeeded}). */
export function withoutReference(record: SeriesRecord, kind: RecordKind, id: string): SeriesRecord {
  switch (record.kind) {
    case 'part':
      return record.whereabouts.kind === kind && record.whereabouts.id === id ? { ...record, whereabouts: { kind: 'store', id: null } } : record;
    case 'outsideJob':
      return {
        ...record,
        episodeId: kind === 'episode' && record.episodeId === id ? null : record.episodeId,
        parts: kind === 'part' ? record.parts.filter((use) => use.partId !== id) : record.parts,
      };
    case 'task':
      return {
        ...record,
        episodeId: kind === 'episode' && record.episodeId === id ? null : record.episodeId,
        parts: kind === 'part' ? record.parts.filter((use) => use.partId !== id) : record.parts,
        equipmentIds: kind === 'equipment' ? record.equipmentIds.filter((other) => other !== id) : record.equipmentIds,
        coats: kind === 'material' ? record.coats.filter((coat) => coat.materialId !== id) : record.coats,
        shots: kind === 'part' ? record.shots.map((shot) => withoutPart(shot, id)) : record.shots,
      };
    case 'session':
      return {
        ...record,
        placeIds: kind === 'place' ? record.placeIds.filter((other) => other !== id) : record.placeIds,
        crewIds: kind === 'person' ? record.crewIds.filter((other) => other !== id) : record.crewIds,
      };
    case 'segment':
      return {
        ...record,
        episodeId: kind === 'episode' && record.episodeId === id ? null : record.episodeId,
        taskIds: kind === 'task' ? record.taskIds.filter((other) => other !== id) : record.taskIds,
      };
    case 'sponsorship':
      return kind === 'episode' && record.episodeId === id ? { ...record, episodeId: null } : record;
    case 'coatingSystem':
      return { ...record, layers: kind === 'material' ? record.layers.filter((layer) => layer.materialId !== id) : record.layers };
    case 'promise': {
      const without = (episodeId: string | null): string | null => (kind === 'episode' && episodeId === id ? null : episodeId);
      return { ...record, saidInId: without(record.saidInId), dueId: without(record.dueId), closedInId: without(record.closedInId) };
    }
    default:
      return record;
  }
}

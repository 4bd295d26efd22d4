/** Addresses of the pages, in one place. */
import type { ListKind } from '@/lib/build';

/** Kind and its word in an address, in the order a new crew fills them. */
const KIND_SLUGS = {
  place: 'places',
  person: 'people',
  part: 'parts',
  material: 'materials',
  trade: 'trades',
  equipment: 'equipment',
  session: 'sessions',
  episode: 'episodes',
  task: 'tasks',
  outsideJob: 'outside-jobs',
  link: 'links',
  camera: 'cameras',
  promise: 'promises',
} as const satisfies Record<ListKind, string>;

/** The kind behind the word in an address, null where there is none. */
export function findKind(slug: string): ListKind | null {
  for (const [kind, word] of Object.entries(KIND_SLUGS)) {
    if (word === slug && isListKind(kind)) return kind;
  }
  return null;
}

function isListKind(kind: string): kind is ListKind {
  return Object.hasOwn(KIND_SLUGS, kind);
}

export const seriesPath = (seriesId: string): string => `/s/${encodeURIComponent(seriesId)}`;
export const nowPath = (seriesId: string): string => `${seriesPath(seriesId)}/now`;
/** `week` is an ISO week, `2026-W49`. */
export const weekPath = (seriesId: string, week: string): string => `${seriesPath(seriesId)}/week/${encodeURIComponent(week)}`;
export const buildPath = (seriesId: string): string => `${seriesPath(seriesId)}/build`;
export const plansPath = (seriesId: string): string => `${seriesPath(seriesId)}/plans`;
export const recordsPath = (seriesId: string): string => `${seriesPath(seriesId)}/records`;
export const logPath = (seriesId: string): string => `${seriesPath(seriesId)}/log`;
export const historyPath = (seriesId: string): string => `${seriesPath(seriesId)}/history`;
export const kindPath = (seriesId: string, kind: ListKind): string => `${recordsPath(seriesId)}/${KIND_SLUGS[kind]}`;
export const newRecordPath = (seriesId: string, kind: ListKind): string => `${kindPath(seriesId, kind)}/new`;
export const repeatSessionsPath = (seriesId: string): string => `${kindPath(seriesId, 'session')}/repeat`;
export const seriesSettingsPath = (seriesId: string): string => `${recordsPath(seriesId)}/series`;

/** Page of a record, or null for a kind that has none. */
export function recordPath(seriesId: string, kind: string, id: string): string | null {
  if (kind === 'series') return seriesSettingsPath(seriesId);
  return isListKind(kind) ? `${kindPath(seriesId, kind)}/${encodeURIComponent(id)}` : null;
}

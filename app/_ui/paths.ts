/** Addresses of the pages, in one place. */
import type { FormKind } from '@/lib/build';

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
  segment: 'segments',
  sponsorship: 'sponsors',
  timeLog: 'time-logs',
  coatingSystem: 'coating-systems',
  heatingRun: 'heating-runs',
  weather: 'weather',
  readings: 'readings',
  camera: 'cameras',
  promise: 'promises',
  hazard: 'hazards',
} as const satisfies Record<FormKind, string>;

/** The kind behind the word in an address, null where there is none. */
export function findKind(slug: string): FormKind | null {
  for (const [kind, word] of Object.entries(KIND_SLUGS)) {
    if (word === slug && hasForm(kind)) return kind;
  }
  return null;
}

export function hasForm(kind: string): kind is FormKind {
  return Object.hasOwn(KIND_SLUGS, kind);
}

export const seriesPath = (seriesId: string): string => `/s/${encodeURIComponent(seriesId)}`;
export const nowPath = (seriesId: string): string => `${seriesPath(seriesId)}/now`;
/** `week` is an ISO week, `2026-W49`. */
export const weekPath = (seriesId: string, week: string): string => `${seriesPath(seriesId)}/week/${encodeURIComponent(week)}`;
export const buildPath = (seriesId: string): string => `${seriesPath(seriesId)}/build`;
export const episodesPath = (seriesId: string): string => `${seriesPath(seriesId)}/episodes`;
export const episodePath = (seriesId: string, episodeId: string): string => `${episodesPath(seriesId)}/${encodeURIComponent(episodeId)}`;
export const estimatesPath = (seriesId: string): string => `${episodesPath(seriesId)}/estimates`;
export const plansPath = (seriesId: string): string => `${seriesPath(seriesId)}/plans`;
export const progressPath = (seriesId: string): string => `${seriesPath(seriesId)}/progress`;
export const oddsPath = (seriesId: string): string => `${progressPath(seriesId)}/odds`;
export const calibrationPath = (seriesId: string): string => `${progressPath(seriesId)}/calibration`;
export const reviewPath = (seriesId: string): string => `${progressPath(seriesId)}/review`;
/** `happened` are `kind:target` pieces; `remedy` is the change chosen. */
export function whatIfPath(seriesId: string, happened: readonly string[] = [], remedy: string | null = null): string {
  const query = new URLSearchParams([...happened.map((one) => ['if', one]), ...(remedy === null ? [] : [['do', remedy]])]);
  return `${progressPath(seriesId)}/what-if${query.size === 0 ? '' : `?${query.toString()}`}`;
}
export const recordsPath = (seriesId: string): string => `${seriesPath(seriesId)}/records`;
export const safetyPath = (seriesId: string): string => `${seriesPath(seriesId)}/safety`;
export const episodeSafetyPath = (seriesId: string, episodeId: string): string => `${safetyPath(seriesId)}/episodes/${encodeURIComponent(episodeId)}`;
export const captionsPath = (seriesId: string, episodeId: string): string => `${episodeSafetyPath(seriesId, episodeId)}/captions`;
export const hazardsPath = (seriesId: string): string => `${safetyPath(seriesId)}/hazards`;
export const taskHazardsPath = (seriesId: string, taskId: string): string => `${safetyPath(seriesId)}/tasks/${encodeURIComponent(taskId)}`;
export const briefPath = (seriesId: string, sessionId: string): string => `${safetyPath(seriesId)}/brief/${encodeURIComponent(sessionId)}`;
export const waitsPath = (seriesId: string): string => `${seriesPath(seriesId)}/waits`;
export const climatePath = (seriesId: string): string => `${seriesPath(seriesId)}/climate`;
export const logPath = (seriesId: string): string => `${seriesPath(seriesId)}/log`;
export const historyPath = (seriesId: string): string => `${seriesPath(seriesId)}/history`;
export const kindPath = (seriesId: string, kind: FormKind): string => `${recordsPath(seriesId)}/${KIND_SLUGS[kind]}`;
export const newRecordPath = (seriesId: string, kind: FormKind): string => `${kindPath(seriesId, kind)}/new`;
export const repeatSessionsPath = (seriesId: string): string => `${kindPath(seriesId, 'session')}/repeat`;
export const materialLibraryPath = (seriesId: string): string => `${kindPath(seriesId, 'material')}/library`;
export const tradeLibraryPath = (seriesId: string): string => `${kindPath(seriesId, 'trade')}/library`;
export const layingPath = (seriesId: string): string => `${kindPath(seriesId, 'coatingSystem')}/lay`;
export const seriesSettingsPath = (seriesId: string): string => `${recordsPath(seriesId)}/series`;

/** Page of a record, or null for a kind that has none. */
export function recordPath(seriesId: string, kind: string, id: string): string | null {
  if (kind === 'series') return seriesSettingsPath(seriesId);
  return hasForm(kind) ? `${kindPath(seriesId, kind)}/${encodeURIComponent(id)}` : null;
}

/** The demo series: a crew of three restores a 1960s delivery outfit in a railway arch. All of it is invented. */
import { weekdayOf } from '@/lib/calendar';
import type { CivilDate, Series, SeriesDocument } from '@/lib/build';
import { celsius } from '@/lib/units';
import { coatingSystems, raiseHeating, raiseWeather, workshop } from './climate';
import { episodes } from './episodes';
import { cameras, promises } from './film';
import { links } from './links';
import { materials } from './materials';
import { parts } from './parts';
import { raisePastJobs } from './past-jobs';
import { people } from './people';
import { equipment, places } from './places';
import { dayOf, momentOf, raiseEpisode, raiseJob, raiseLink, raiseMaterial, raisePart, raiseLog, raisePerson, raiseSegment, raiseSponsor, raiseTask, raiseTrade, type Frame } from './raise';
import { renewIds } from './renew-ids';
import { buildSessions } from './sessions';
import { logs, segments, sponsors } from './story';
import { bodyTasks } from './tasks-body';
import { brakeTasks } from './tasks-brakes';
import { chassisTasks } from './tasks-chassis';
import { engineTasks } from './tasks-engine';
import { finishTasks } from './tasks-finish';
import { paintTasks } from './tasks-paint';
import { stripTasks } from './tasks-strip';
import { jobs, trades } from './trades';

/** Zone of the demo; its Monday is a date there. */
export const DEMO_ZONE = 'Europe/London';

const series: Series = {
  kind: 'series', id: 'series-bread-round', revision: 1, order: 0, name: 'Back on the Bread Round', zone: DEMO_ZONE,
  cadenceDays: 7, leadDays: 5, fillLimit: 0.7, workshopTemperature: celsius(12),
  runtime: { target: 16, min: 11, max: 24 }, frameRate: { numerator: 25, denominator: 1 }, titles: 0.5, bankMinimum: 2, usesExperience: false, frozenDays: 0,
  filming: { position: 8, shot: 2, take: 3, reset: 4, retakeChance: 0.25, oneWay: 25, packUp: 10, own: [] },
  camera: { cameras: 2, bitRate: 100, cards: [128, 64, 64], batteries: 4, batteryMinutes: 90, fillLimit: 0.9 }, workshop,
};

const tasks = [...stripTasks, ...brakeTasks, ...chassisTasks, ...paintTasks, ...engineTasks, ...bodyTasks, ...finishTasks];

/**
 * The whole demo, starting in the week of `monday` (a date in {@link DEMO_ZONE}): its first sessions are in that week,
 * the first strip-down is done in the week before and the bright parts are already at the plater.
 * Ids are readable and the same every time; with `newId` every record, state, shot and coat gets one from it.
 * @throws RangeError when the date is not a Monday.
 */
export function demoSeries(monday: CivilDate, newId?: () => string): SeriesDocument {
  if (weekdayOf(monday) !== 1) throw new RangeError(`The demo starts on a Monday, and ${monday} is not one.`);
  const frame: Frame = { monday, zone: DEMO_ZONE };
  const document: SeriesDocument = {
    series,
    changeNumber: 0,
    planChange: 0,
    people: people.map((draft, order) => raisePerson(frame, draft, order)),
    places: places.map((place, order) => ({ kind: 'place', revision: 1, order, ...place })),
    equipment: equipment.map((one, order) => ({ kind: 'equipment', revision: 1, order, ...one })),
    parts: parts.map(raisePart),
    materials: materials.map(raiseMaterial),
    trades: trades.map((draft, order) => raiseTrade(frame, draft, order)),
    outsideJobs: [...jobs.map((draft, order) => raiseJob(frame, draft, order)), ...raisePastJobs(frame, jobs.length)],
    tasks: tasks.map((draft, order) => raiseTask(frame, draft, order)),
    links: links.map(raiseLink),
    sessions: buildSessions(dayOf(frame, 0), (moment) => momentOf(frame, moment)),
    episodes: episodes.map((draft, order) => raiseEpisode(frame, draft, order)),
    segments: segments.map(raiseSegment),
    timeLogs: logs.map((draft, order) => raiseLog(frame, draft, order)),
    sponsorships: sponsors.map((draft, order) => raiseSponsor(frame, draft, order)),
    hazards: [],
    statements: [],
    coatingSystems,
    heatingRuns: raiseHeating(frame),
    weather: raiseWeather(frame),
    readings: [],
    cameras,
    promises,
  };
  return newId === undefined ? document : renewIds(document, newId);
}

/** What must not be forgotten between now and the next session. */
import { shotsAhead } from '@/lib/plan';
import { joinWords, type SeriesDocument } from '@/lib/build';
import { formatMoment } from '@/lib/calendar';
import type { PlanBlock } from '@/lib/plan';
import { addMinutes, MINUTES_PER_DAY, type Instant } from '@/lib/units';
import { findNextCoat, listWindowAlarms } from './waits-curing';
import { linkRecord, nameOf } from './week-block';
import type { Reminder } from './now-model';
import type { SessionCard } from './week-model';
import { listCoats, type Air } from './workshop-air';

/** Errands this far ahead are worth a reminder. */
const ERRAND_DAYS = 3;

interface Situation {
  readonly document: SeriesDocument;
  readonly blocks: readonly PlanBlock[];
  readonly now: Instant;
}

const until = (at: Instant, zone: string) => `until ${formatMoment(at, zone)}`;

/** Parts nobody may touch yet. */
export function listHandsOff({ document, blocks, now }: Situation): Reminder[] {
  return blocks.filter((block) => block.kind === 'cure' && block.start <= now && now < block.end).map((block) => ({
    kind: 'hands off',
    key: block.id,
    text: `${joinWords(block.partIds.map((id) => nameOf(id, document.parts, 'part'))) || block.title}: ${block.title}`,
    moment: until(block.end, document.series.zone),
    isUrgent: false,
    subject: linkRecord(block.subject.kind, block.subject.id, block.subject.kind === 'task' ? document.tasks : document.outsideJobs),
    readyKind: null,
  }));
}

/** Places whose air nobody may breathe yet, one reminder for each spraying. */
export function listStayOut({ document, blocks, now }: Situation): Reminder[] {
  const running = blocks.filter((block) => block.kind === 'shut' && block.start <= now && now < block.end);
  return running.filter((block, index) => running.findIndex(({ subject }) => subject.id === block.subject.id) === index).map((block) => ({
    kind: 'stay out',
    key: block.id,
    text: `${joinWords(running.filter(({ subject }) => subject.id === block.subject.id).map(({ placeId }) => nameOf(placeId ?? '', document.places, 'place')))}: nobody without air-fed protection. ${block.title}.`,
    moment: until(block.end, document.series.zone),
    isUrgent: true,
    subject: linkRecord('task', block.subject.id, document.tasks),
    readyKind: null,
  }));
}

const LATE_WORDS = { none: '', abrade: 'it must be abraded', 'clean and tack coat': 'it must be cleaned and tacked', strip: 'it must be stripped' } as const;

/** Coats that are on, wait for another one, and whose recoat window closes soon, has closed, or never opens in this cold. */
export function listRecoats({ document, now }: Situation, air: Air): Reminder[] {
  // What the plan makes of it is told beside the plan.
  const waiting = { document, plan: null, now };
  return listCoats(document, null, air).filter(({ isLaid }) => isLaid).flatMap((laid): Reminder[] => {
    const found = findNextCoat(waiting, laid);
    const [alarm] = listWindowAlarms(waiting, laid);
    if (found === null || alarm === undefined) return [];
    const { next, closes } = found;
    const late = LATE_WORDS[laid.coat.material.lateWork];
    const text = alarm.code === 'window-closed' ? `${next.name}: the recoat window of ${laid.material.name} has closed. ${alarm.fix}`
      : alarm.code === 'window-empty' ? `${next.name}: ${laid.material.name} has no recoat window in this cold. ${alarm.fix}`
        : `${next.name}: put it on before the recoat window of ${laid.material.name} closes${late === '' ? '' : `, or ${late}`}.`;
    return [{
      kind: 'recoat', key: `recoat:${laid.key}`, text, moment: `${closes <= now ? 'closed' : 'closes'} ${formatMoment(closes, document.series.zone)}`, isUrgent: true,
      subject: linkRecord(next.kind, next.id, document.tasks), readyKind: null,
    }];
  });
}

/** Work whose planned time is over and that nobody has ticked; `except` is shown elsewhere on the page. */
export function listNotTicked({ document, blocks, now }: Situation, except: ReadonlySet<string>): Reminder[] {
  return blocks.filter((block) => block.kind === 'task' && block.end <= now && !except.has(block.id)).flatMap((block): Reminder[] => {
    const task = document.tasks.find((one) => one.id === block.subject.id);
    if (!task || task.doneAt !== null) return [];
    return [{
      kind: 'not ticked',
      key: `open:${block.id}`,
      text: `${block.title}: done? Tick it, or re-plan.`,
      moment: `planned until ${formatMoment(block.end, document.series.zone)}`,
      isUrgent: false,
      subject: linkRecord('task', task.id, document.tasks),
      readyKind: null,
    }];
  });
}

/** Trips due in the next days, and trips whose day has passed. */
export function listErrands({ document, blocks, now }: Situation): Reminder[] {
  const { zone } = document.series;
  return blocks.filter((block) => block.kind === 'drop-off' || block.kind === 'collection').flatMap((block): Reminder[] => {
    const job = document.outsideJobs.find((one) => one.id === block.subject.id);
    const isOver = block.kind === 'drop-off' ? job?.droppedOffAt !== null : job?.collectedAt !== null;
    if (!job || isOver || block.start > addMinutes(now, ERRAND_DAYS * MINUTES_PER_DAY)) return [];
    const isLate = block.end <= now;
    const crew = joinWords(block.crewIds.map((id) => nameOf(id, document.people, 'person')));
    return [{
      kind: block.kind === 'drop-off' ? 'deliver' : 'collect',
      key: block.id,
      text: `${block.title}${crew ? ` · ${crew}` : ''}${isLate ? '. Its time has passed: mark it as done, or re-plan.' : ''}`,
      moment: formatMoment(block.start, zone),
      isUrgent: isLate,
      subject: linkRecord('outsideJob', job.id, document.outsideJobs),
      readyKind: null,
    }];
  });
}

/** Before-shots owed before an irreversible step of the session. */
export function listFilmFirst({ document }: Situation, workIds: readonly string[]): Reminder[] {
  return document.tasks
    .filter((task) => workIds.includes(task.id) && task.irreversible && task.doneAt === null)
    .flatMap((task): Reminder[] => {
      const shots = shotsAhead(task);
      if (shots.length === 0) return [];
      return [{
        kind: 'film first',
        key: `film:${task.id}`,
        text: `Before "${task.name}", which cannot be done twice, film: ${joinWords(shots.map((shot) => shot.name))}.`,
        moment: null,
        isUrgent: true,
        subject: linkRecord('task', task.id, document.tasks),
        readyKind: null,
      }];
    });
}

/** What the session needs to find in place. */
export function listSessionNeeds(session: SessionCard): Reminder[] {
  return session.ready.map((item, index) => ({
    kind: 'ready',
    key: `ready:${index}`,
    text: item.text,
    moment: null,
    isUrgent: item.isAtRisk,
    subject: item.subject,
    readyKind: item.kind,
  }));
}

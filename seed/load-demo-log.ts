/** What the demo's crew has logged of the work that is done: takes, looks, states and a fault. All of it is invented. */
import type { SeriesDocument, Task } from '@/lib/build';
import { dateOf, startOfDay } from '@/lib/calendar';
import { logEntry, type CommandContext } from '@/lib/commands';
import { frameAtMoment, writeTimecode } from '@/lib/continuity';
import { ok, type Result } from '@/lib/result';
import { instant, type Instant } from '@/lib/units';

const MINUTE = 60_000;
/** Length of a take. */
const TAKE_MS = 45_000;

const cameraOf = (number: number): string => (number % 2 === 1 ? 'camera-bench' : 'camera-hand');

type Draft = Readonly<Record<string, unknown>> & { readonly minutesBefore: number };

/** Entries of one task, by the minutes before it was done. */
function draftsOf(document: SeriesDocument, task: Task, order: number): readonly Draft[] {
  const shots = task.shots.filter(({ purpose }) => purpose === 'before' || purpose === 'during');
  const look = { clothes: order % 2 === 0 ? 'brown warehouse coat' : 'blue overalls', equipment: 'goggles, nitrile gloves', light: 'two panels, roller door shut', whiteBalance: '4300 K', lens: '24-70 at 35', tools: 'puller left of the vice' };
  const take = (number: number, size: string, verdict: string) => ({ cameraId: cameraOf(number), number, size, verdict, media: `A${order + 1} / ${String(number).padStart(4, '0')}`, reenactmentLabel: '' });
  // A take ends when it is logged; each camera labels it by its own clock.
  const labels = (minutesBefore: number, number: number) => {
    const camera = document.cameras.find(({ id }) => id === cameraOf(number));
    const end = instant((task.doneAt ?? 0) - minutesBefore * MINUTE);
    if (camera === undefined) return { start: '', end: '' };
    const midnight = startOfDay(dateOf(end, document.series.zone), document.series.zone);
    const label = (at: Instant) => writeTimecode(frameAtMoment(at, camera, midnight, camera.clockOffset * 1000), camera);
    return { start: label(instant(end - TAKE_MS)), end: label(end) };
  };
  return [
    { kind: 'look', minutesBefore: 55, text: '', look },
    ...shots.map((shot, index) => ({ kind: 'take', minutesBefore: 50 - index, shotId: shot.id, text: '', take: { ...take(index + 1, 'wide', 'good'), ...labels(50 - index, index + 1) } })),
    { kind: 'take', minutesBefore: 25, text: 'hand in front of the lens', take: { ...take(shots.length + 1, 'close', 'no good'), ...labels(25, shots.length + 1) } },
    { kind: 'fault', minutesBefore: 20, text: 'One thread is pulled; it gets an insert later.' },
    { kind: 'voice', minutesBefore: 12, text: 'Every bag gets its label before the next bolt comes out.' },
    ...task.parts.filter(({ to }) => to !== null).map((use) => ({ kind: 'state', minutesBefore: 0, text: '', observed: [{ partId: use.partId, stateId: use.to }] })),
  ];
}

/** Logs what belongs to the demo's finished tasks. Issues: those of the command. */
export async function loadDemoLog(context: CommandContext, document: SeriesDocument): Promise<Result<number>> {
  const now = context.now();
  let count = 0;
  for (const [order, task] of document.tasks.filter(({ doneAt }) => doneAt !== null).entries()) {
    for (const [index, { minutesBefore, ...entry }] of draftsOf(document, task, order).entries()) {
      const logged = await logEntry(context, document.series.id, {
        id: `demo-${task.id}-${index}`.slice(0, 64), deviceAt: (task.doneAt ?? now) - minutesBefore * MINUTE, sentAt: now, device: 'workshop phone', author: document.people[order % document.people.length]?.name ?? '', taskId: task.id, ...entry,
      });
      if (!logged.ok) return logged;
      count += 1;
    }
  }
  return ok(count);
}

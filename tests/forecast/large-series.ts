/** About 300 tasks: the demo three times over, each copy with its own parts, in as many more sessions. */
import type { SeriesDocument } from '@/lib/build';
import { continueSessions } from '@/lib/forecast';
import { demoSeries } from '@/seed/demo';

const suffix = (id: string, copy: number): string => (copy === 0 ? id : `${id}~${copy}`);

const uses = <T extends { partId: string; from: string | null; to: string | null }>(rows: readonly T[], copy: number): T[] =>
  rows.map((use) => ({ ...use, partId: suffix(use.partId, copy), from: use.from === null ? null : suffix(use.from, copy), to: use.to === null ? null : suffix(use.to, copy) }));

export function largeSeries(monday: string): SeriesDocument {
  const demo = demoSeries(monday);
  const { document } = continueSessions(demo, 8);
  const copies = [0, 1, 2];
  return {
    ...document,
    parts: copies.flatMap((copy) => demo.parts.map((part) => ({ ...part, id: suffix(part.id, copy), states: part.states.map((state) => ({ ...state, id: suffix(state.id, copy) })) }))),
    tasks: copies.flatMap((copy) => demo.tasks.map((task) => ({
      ...task, id: suffix(task.id, copy), parts: uses(task.parts, copy), shots: task.shots.map((shot) => ({ ...shot, id: suffix(shot.id, copy) })),
      coats: task.coats.map((coat) => ({ ...coat, id: suffix(coat.id, copy) })),
    }))),
    outsideJobs: copies.flatMap((copy) => demo.outsideJobs.map((job) => ({ ...job, id: suffix(job.id, copy), parts: uses(job.parts, copy) }))),
    links: copies.flatMap((copy) => demo.links.map((link) => ({ ...link, id: suffix(link.id, copy), from: { ...link.from, id: suffix(link.from.id, copy) }, to: { ...link.to, id: suffix(link.to.id, copy) } }))),
  };
}

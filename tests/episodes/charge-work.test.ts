import { expect, test } from 'vitest';
import { chargeWork } from '@/lib/episodes';
import { at, sampleSeries } from '../build/sample-series';

/** What each task pays for in the sample, with its tasks changed. */
function charge(change: (id: string) => { episodeId?: string | null; isDone?: boolean } = () => ({})): Record<string, string> {
  const sample = sampleSeries();
  const tasks = sample.tasks.map((task) => {
    const { episodeId = task.episodeId, isDone = false } = change(task.id);
    return { ...task, episodeId, doneAt: isDone ? at('2026-11-01', '09:00') : null };
  });
  return Object.fromEntries(chargeWork({ ...sample, tasks }, sample.episodes));
}

test('work of no episode is paid by the first episode that waits for it', () => {
  const order = sampleSeries().tasks.map(({ id }) => id);
  expect(order.slice(0, 3)).toEqual(['task-strip', 'task-clean', 'task-prime']);
  const paid = charge((id) => ({ episodeId: id === 'task-prime' ? 'episode-2' : null }));
  expect(paid).toEqual({ 'task-strip': 'episode-2', 'task-clean': 'episode-2', 'task-prime': 'episode-2' });
});

test('work of a later episode that an earlier one waits for is paid by the earlier one', () => {
  const paid = charge((id) => ({ episodeId: id === 'task-clean' ? 'episode-1' : id === 'task-strip' ? 'episode-2' : null }));
  expect(paid).toEqual({ 'task-strip': 'episode-1', 'task-clean': 'episode-1' });
});

test('finished work is paid, and what only leads to it is nobody’s', () => {
  const paid = charge((id) => ({ episodeId: id === 'task-prime' ? 'episode-1' : null, isDone: id === 'task-clean' }));
  expect(paid).toEqual({ 'task-prime': 'episode-1' });
});

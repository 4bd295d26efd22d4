import { startWith } from '@/lib/build';
import { dateOf, formatDay, formatWorkLength } from '@/lib/calendar';
import { sayAt, taskBlocks, type Facts } from '../facts';
import { makeCheck } from './check';

/** Coats that the plan lays after the last day of the batch. */
function oldBatches(facts: Facts) {
  return taskBlocks(facts).filter(({ task }) => task.doneAt === null).flatMap(({ block, task }) => task.coats.flatMap((coat) => {
    const material = facts.document.materials.find(({ id }) => id === coat.materialId);
    if (material?.usableUntil === undefined || dateOf(block.end, facts.document.series.zone) <= material.usableUntil) return [];
    return [{
      key: `${task.id}/${coat.id}/batch`, about: [task, material], message: `${startWith(task)} lays “${material.name}” on ${sayAt(facts, block.start)}, and its batch may be used until ${formatDay(material.usableUntil)}.`,
      fix: 'Get a new batch and write its date down, or lay it sooner.',
    }];
  }));
}

/** 7: a mixed material is used up before it sets, and before its batch is out of date. One mix a coat is assumed. */
export const potLife = makeCheck(7, 'stop', 'A material is laid within its pot life, and before its batch runs out', (facts) => [
  ...oldBatches(facts),
  ...facts.document.tasks.filter(({ coats, doneAt }) => coats.length > 0 && doneAt === null).flatMap((task) => task.coats.flatMap((coat) => {
    const material = facts.document.materials.find(({ id }) => id === coat.materialId);
    const each = task.effort.likely / task.coats.length;
    if (material?.potLife == null || each <= material.potLife) return [];
    return [{
      key: `${task.id}/${coat.id}`, about: [task, material],
      message: `${startWith(task)} takes ${formatWorkLength(each)} a coat, and the material “${material.name}” is usable for ${formatWorkLength(material.potLife)} once mixed.`,
      fix: 'Mix it in smaller batches and split the task, or choose a slower hardener.',
    }];
  })),
]);

import { startWith } from '@/lib/build';
import { formatWorkLength } from '@/lib/calendar';
import { makeCheck } from './check';

/** 7: a mixed material is used up before it sets. One mix a coat is assumed. */
export const potLife = makeCheck(7, 'stop', 'A mixed material is laid within its pot life', (facts) =>
  facts.document.tasks.filter(({ coats, doneAt }) => coats.length > 0 && doneAt === null).flatMap((task) => task.coats.flatMap((coat) => {
    const material = facts.document.materials.find(({ id }) => id === coat.materialId);
    const each = task.effort.likely / task.coats.length;
    if (material?.potLife == null || each <= material.potLife) return [];
    return [{
      key: `${task.id}/${coat.id}`, about: [task, material],
      message: `${startWith(task)} takes ${formatWorkLength(each)} a coat, and the material “${material.name}” is usable for ${formatWorkLength(material.potLife)} once mixed.`,
      fix: 'Mix it in smaller batches and split the task, or choose a slower hardener.',
    }];
  })));

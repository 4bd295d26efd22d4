import { startWith } from '@/lib/build';
import { judgeCoating, type GoCode } from '@/lib/cure';
import { minutesBetween } from '@/lib/units';
import { sayAt, taskBlocks } from '../facts';
import { makeCheck } from './check';

const DAMP: readonly GoCode[] = ['dew-margin', 'air-too-damp', 'air-too-dry', 'dew-before-dry', 'damp-before-dry'];

/** 9: from the first stroke until it is touch dry a coat keeps its distance from the dew point, in air that is dry enough. */
export const humidAir = makeCheck(9, 'stop', 'Dew margin and humidity hold while a coat is wet', (facts) => {
  const coatOf = facts.known?.coatOf ?? null;
  if (coatOf === null) return [];
  const materials = new Map(facts.document.materials.map((material) => [material.id, material]));
  return taskBlocks(facts).filter(({ task }) => task.doneAt === null && task.coats.length > 0).flatMap(({ block, task }) => {
    const airZone = block.placeId === null ? undefined : facts.places.get(block.placeId)?.airZone;
    if (airZone === undefined) return [];
    return [...new Set(task.coats.map(({ materialId }) => materialId))].flatMap((id) => {
      const material = materials.get(id);
      if (material === undefined) return [];
      const options = { length: minutesBetween(block.start, block.end), dustSettledAt: null, zone: facts.document.series.zone };
      const found = judgeCoating(coatOf(airZone, material), block.start, options).checks.filter(({ code, isMet }) => !isMet && DAMP.includes(code));
      return found.map(({ code, message }) => ({
        key: `${task.id}/${id}/${code}`, about: [task, material],
        message: `${startWith(task)} lays “${material.name}” on ${sayAt(facts, block.start)}: ${message}`, fix: 'Heat before and after, or lay it in drier air.',
      }));
    });
  });
});

import { deriveOrder, findCycle, findWork } from '@/lib/build';
import { makeCheck } from './check';

/** 38: no work waits for itself; the shots of before come with the task they stand ahead of. */
export const orderAcyclic = makeCheck(38, 'stop', 'No work waits for itself', ({ document }) => {
  const ring = findCycle(deriveOrder(document));
  if (ring === null) return [];
  const records = ring.flatMap(({ from }) => findWork(document, from) ?? []);
  return [{
    key: 'ring', about: records, message: `The order goes round in a ring: ${records.map(({ name }) => `“${name}”`).join(' before ')} before “${records[0]?.name ?? ''}”.`,
    fix: 'Take one of these waits out, or give a part one more state.',
  }];
});

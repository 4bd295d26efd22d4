/** Cameras of the demo and what its crew has promised on camera. */
import type { Camera, SpokenPromise } from '@/lib/build';

export const cameras: readonly Camera[] = [
  { kind: 'camera', id: 'camera-bench', revision: 1, order: 0, name: 'Bench camera', rate: { numerator: 25, denominator: 1 }, isDropFrame: false, clockOffset: 0 },
  { kind: 'camera', id: 'camera-hand', revision: 1, order: 1, name: 'Hand camera', rate: { numerator: 25, denominator: 1 }, isDropFrame: false, clockOffset: 4 },
];

const open = { kind: 'promise', revision: 1, closure: 'open', reason: '', closedInId: null } as const;

export const promises: readonly SpokenPromise[] = [
  { ...open, id: 'promise-zinc', order: 0, name: 'You will see the chassis come back in zinc', saidInId: 'ep-down-to-frame', where: 'closing words', dueId: 'ep-zinc' },
  { ...open, id: 'promise-first-loaf', order: 1, name: 'The first loaf rides in it before the series ends', saidInId: null, where: 'opening words', dueId: null },
];

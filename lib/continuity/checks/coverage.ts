import { startWith } from '@/lib/build';
import { findGaps } from '../coverage';
import { makeCheck } from './check';

/** 35: filmed work has a wide picture, a close one and its result. */
export const coverage = makeCheck(35, 'warn', 'Filmed work has a wide picture, a close one and its result', (facts) =>
  findGaps(facts).map(({ task, missing }) => ({
    key: `${task.id}/${missing.join('+')}`, about: [task], message: `${startWith(task)} is done, and its takes lack ${missing.join(', ')}.`,
    fix: 'Look for it on the cards, or plan a pickup while the parts are still in that state.',
  })));

import { sayAt } from '../facts';
import { makeCheck } from './check';

/** 30: a card is wiped only after two copies have been verified. */
export const cardCopies = makeCheck(30, 'stop', 'No card is reformatted with fewer than two verified copies', (facts) => {
  const verified = new Map<string, number>();
  return facts.entries.flatMap((entry) => {
    if (entry.card === null) return [];
    const { card, what } = entry.card;
    const copies = verified.get(card) ?? 0;
    if (what === 'copy verified') verified.set(card, copies + 1);
    if (what !== 'reformatted') return [];
    verified.set(card, 0);
    if (copies >= 2) return [];
    return [{
      key: entry.id, about: [], message: `The card “${card}” was reformatted on ${sayAt(facts, entry.at)} with ${copies} verified ${copies === 1 ? 'copy' : 'copies'}; there must be two.`,
      fix: 'Check the copies at once. If one is missing, do not write to the card and try to recover it.',
    }];
  });
});

import { sayAt } from '../facts';
import { makeCheck } from './check';

/** 20: what was played again for the camera says so on screen. */
export const reenactmentLabel = makeCheck(20, 'stop', 'Every re-enactment carries its label on screen', (facts) =>
  facts.takes.filter(({ take }) => take.isReenacted && take.verdict !== 'no good' && take.reenactmentLabel.trim() === '').map((entry) => ({
    key: entry.id, about: [entry.taskId === null ? undefined : facts.tasks.get(entry.taskId)],
    message: `Take ${entry.take.number} of ${sayAt(facts, entry.at)}${entry.take.media === '' ? '' : ` (${entry.take.media})`} is a re-enactment without a label.`,
    fix: 'Write the words that stand on screen over it, or leave it out of the episode.',
  })));

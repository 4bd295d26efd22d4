import { formatIsoWeek, dateOf } from '@/lib/calendar';
import { countBank } from '@/lib/episodes';
import { makeCheck } from './check';

/** 28: at the end of every week enough finished episodes are in hand. */
export const bankLow = makeCheck(28, 'warn', 'Enough finished episodes are in hand every week', (facts) => {
  const feasibleOn = facts.known?.feasibleOn;
  if (feasibleOn === undefined) return [];
  const { episodes, series } = facts.document;
  const banked = episodes.map(({ id, name, releaseDate, isEvergreen }) => ({ id, name, releaseDate, isEvergreen, finishedOn: feasibleOn.get(id) ?? null }));
  const { firstAlarm } = countBank(banked, dateOf(facts.now, series.zone), series.bankMinimum);
  if (firstAlarm === null) return [];
  return [{
    key: formatIsoWeek(firstAlarm.week), about: [], message: `At the end of ${formatIsoWeek(firstAlarm.week)} ${firstAlarm.inHand === 0 ? 'no finished episode is' : firstAlarm.inHand === 1 ? '1 finished episode is' : `${firstAlarm.inHand} finished episodes are`} in hand; ${series.bankMinimum} should be.`,
    fix: 'Record an episode that fits any week, or release less often.',
  }];
});

/** The board of episodes: load, then compute. */
import { joinWords, shootDue, type Episode, type Segment } from '@/lib/build';
import { addDays, compareDates, dateOf, formatDay, formatIsoWeek, formatMoment } from '@/lib/calendar';
import { checkSponsors, checkUnplaced, countBank, readObligation, spreadReleases, type Bank, type BankedEpisode } from '@/lib/episodes';
import type { ViewContext } from './context';
import {
  checkOrder, listBanked, listBeforeMissing, listBudgets, readSponsored, segmentReadyAt, segmentsOf, showRuntime, showStanding, STAGES, type EpisodesInput,
} from './episodes-facts';
import type { BankView, BoardRow, EpisodesView, ReelView } from './episodes-model';
import { proposePackings } from './episodes-proposals';
import { capitalise, formatCount } from './week-words';

/** What can be tried for the weeks to come. */
const CADENCES = [7, 14] as const;

function listOpen(input: EpisodesInput, episode: Episode): readonly string[] {
  const { document } = input;
  const before = listBeforeMissing(document, episode.id).length;
  const own = segmentsOf(document, episode.id);
  const stops = checkSponsors(readSponsored(input, episode), document.sponsorships.map(readObligation)).filter(({ severity }) => severity === 'stop').length;
  const isOut = episode.status === 'released';
  return [
    own.length === 0 ? 'no segments yet' : null,
    own.length > 0 && !own.some((segment) => segment.isResult) ? 'shows no result' : null,
    before > 0 ? `${formatCount(before, 'step')} with no before-shot` : null,
    stops > 0 && !isOut ? `${formatCount(stops, 'point')} owed to sponsors ${stops === 1 ? 'stops' : 'stop'} its release` : null,
  ].filter((text) => text !== null);
}

function showRow(input: EpisodesInput, segment: Segment): BoardRow {
  const { id, revision, name, length } = segment;
  const readyAt = segmentReadyAt(input, segment);
  return { id, revision, name, length, readyAt, ready: readyAt === null ? '' : `recorded ${formatMoment(readyAt, input.document.series.zone)}` };
}

function showReels(input: EpisodesInput): readonly ReelView[] {
  const { document } = input;
  const { zone } = document.series;
  const budgets = listBudgets(input);
  return document.episodes.map((episode, index) => {
    const own = segmentsOf(document, episode.id);
    return {
      id: episode.id,
      number: index + 1,
      name: episode.name,
      release: formatDay(episode.releaseDate),
      shootDue: formatDay(addDays(dateOf(shootDue(document.series, episode), zone), -1)),
      stage: episode.status,
      stagesDone: STAGES.indexOf(episode.status) + 1,
      isEvergreen: episode.isEvergreen,
      runtime: showRuntime(document, own),
      segments: own.length,
      rows: own.map((segment) => showRow(input, segment)),
      due: shootDue(document.series, episode),
      results: own.filter((segment) => segment.isResult).length,
      standing: episode.status === 'planned' ? showStanding(budgets.get(episode.id)) : showStanding(undefined),
      open: listOpen(input, episode),
    };
  });
}

function summarise(bank: Bank, minimum: number, tried: number | null): string {
  const missed = bank.missedIds.length;
  const start = tried === null ? '' : `Every ${tried} days: `;
  const late = missed === 0 ? 'no release is missed' : `${formatCount(missed, 'release')} ${missed === 1 ? 'is' : 'are'} missed or not foreseen by the plan`;
  const { firstAlarm } = bank;
  const alarm = firstAlarm === null
    ? `at least ${formatCount(minimum, 'episode')} in hand every week`
    : `${firstAlarm.inHand} in hand at the end of ${formatIsoWeek(firstAlarm.week)}, fewer than ${minimum}`;
  const words = `${start}${late}, ${alarm}.`;
  return capitalise(words);
}

function listEvents(week: Bank['weeks'][number], episodes: readonly BankedEpisode[]): readonly string[] {
  const names = (ids: readonly string[]): string => joinWords(ids.map((id) => episodes.find((episode) => episode.id === id)?.name ?? id));
  return [
    week.finishedIds.length > 0 ? `ready: ${names(week.finishedIds)}` : null,
    week.releasedIds.length > 0 ? `out: ${names(week.releasedIds)}` : null,
    week.missedIds.length > 0 ? `not ready in time: ${names(week.missedIds)}` : null,
  ].filter((text) => text !== null);
}

function showBank(input: EpisodesInput, cadence: number): BankView {
  const { series } = input.document;
  const today = dateOf(input.now, series.zone);
  const isTried = cadence !== series.cadenceDays;
  const banked = listBanked(input);
  const spread = isTried ? spreadReleases(banked, today, cadence) : null;
  const episodes = spread?.ok ? spread.value : banked;
  const bank = countBank(episodes, today, series.bankMinimum);
  return {
    minimum: series.bankMinimum,
    cadence,
    choices: [...new Set([series.cadenceDays, ...CADENCES])].map((days) => ({
      days, label: days === series.cadenceDays ? `As it is: every ${days} days` : `What if: every ${days} days`, isCurrent: days === cadence,
    })),
    summary: `${input.plan === null ? 'No plan is accepted yet, so the days of recording are not known. ' : ''}${summarise(bank, series.bankMinimum, isTried ? cadence : null)}`,
    isAlarm: bank.firstAlarm !== null || bank.missedIds.length > 0,
    weeks: bank.weeks.map((week) => ({
      week: formatIsoWeek(week.week), monday: formatDay(week.monday), inHand: week.inHand, evergreen: week.evergreen, events: listEvents(week, episodes), isBelow: week.isBelowMinimum,
    })),
    issues: spread !== null && !spread.ok ? spread.error : [],
  };
}

/** The whole board, with the bank at a cadence. Pure. */
export function computeEpisodes(input: EpisodesInput, cadence: number): EpisodesView {
  const { document } = input;
  const proposals = proposePackings(input);
  const obligations = document.sponsorships.map(readObligation);
  const coming = document.episodes.filter((episode) => episode.status !== 'released').toSorted((a, b) => compareDates(a.releaseDate, b.releaseDate));
  return {
    seriesId: document.series.id,
    reels: showReels(input),
    titles: document.series.titles,
    looseRows: segmentsOf(document, null).map((segment) => showRow(input, segment)),
    bank: showBank(input, cadence),
    loose: segmentsOf(document, null).map((segment) => ({ id: segment.id, name: segment.name, text: `${segment.length} min${segment.isEvergreen ? ', fits any episode' : ''}` })),
    proposals: proposals.ok ? proposals.value.filter(({ moves }) => moves > 0) : [],
    proposalIssues: proposals.ok ? [] : proposals.error,
    sponsorIssues: [...checkUnplaced(obligations), ...coming.flatMap((episode) => checkSponsors(readSponsored(input, episode), obligations))],
    orderIssues: checkOrder(document),
  };
}

/** The board of episodes; `cadence` is a what-if, null: as the series is. */
export async function viewEpisodes({ storage, now }: ViewContext, document: EpisodesInput['document'], cadence: number | null): Promise<EpisodesView> {
  const plan = await storage.acceptedPlan(document.series.id);
  return computeEpisodes({ document, plan, now }, cadence ?? document.series.cadenceDays);
}

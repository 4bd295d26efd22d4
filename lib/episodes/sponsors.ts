/** What a series owes its sponsors, and what it owes its viewers about them. */
import type { Sponsorship } from '@/lib/build';
import { compareDates, formatDay, type CivilDate } from '@/lib/calendar';
import { countWords, fitsSubtitle, leastReadingSeconds, READING } from '@/lib/estimate';
import { issue, type Issue, type Severity } from '@/lib/result';

/** Seconds from the start of an episode. */
type Seconds = number;

/** An obligation as agreed, and as far as it is met. */
export interface Obligation {
  readonly id: string;
  readonly name: string;
  readonly sponsor: string;
  /** The trade in which no competitor may appear: `abrasives`. Empty: none agreed. */
  readonly exclusiveIn: string;
  readonly episodeId: string | null;
  /** The latest release that keeps the agreement; null: none agreed. */
  readonly dueDate: CivilDate | null;
  readonly minimumSeconds: Seconds;
  /** Where in the episode it was agreed to be. */
  readonly part: Sponsorship['part'];
  /** What was cut in; null: nothing yet. */
  readonly spot: { readonly start: Seconds; readonly end: Seconds } | null;
  readonly disclosure: {
    readonly text: string;
    /** When it is said, null: not said. */
    readonly spokenAt: Seconds | null;
    /** When it is shown, null: not shown. */
    readonly shown: { readonly start: Seconds; readonly end: Seconds } | null;
  };
  readonly needsApproval: boolean;
  readonly approvedOn: CivilDate | null;
}

/** The record of an agreement as the rules see it. */
export function readObligation(record: Sponsorship): Obligation {
  const { spotStart, spotEnd, shownFrom, shownUntil } = record;
  return {
    ...record,
    spot: spotStart === null || spotEnd === null ? null : { start: spotStart, end: spotEnd },
    disclosure: { text: record.disclosureText, spokenAt: record.spokenAt, shown: shownFrom === null || shownUntil === null ? null : { start: shownFrom, end: shownUntil } },
  };
}

export interface SponsoredEpisode {
  readonly id: string;
  readonly name: string;
  readonly releaseDate: CivilDate;
  /** The first day it can be released by the plan; null: not known. */
  readonly feasibleOn: CivilDate | null;
  /** How long it is expected to be; 0: nothing in it yet. */
  readonly runtime: Seconds;
}

function about(obligation: Obligation, severity: Severity, path: readonly string[] = []) {
  return { severity, path, subjects: [{ kind: 'sponsorship', id: obligation.id, name: obligation.name }] };
}

const called = (obligation: Obligation): string => `“${obligation.name}”`;

/** A paid claim is said to be paid, aloud and on screen, no later than it starts, and long enough to be read. */
export function checkDisclosure(obligation: Obligation): readonly Issue[] {
  const { spot, disclosure: { spokenAt, shown, text } } = obligation;
  const claim = spot?.start ?? Infinity;
  const found: Issue[] = [];
  if (text.trim() === '') found.push(issue('disclosure-no-words', `There are no words yet that say ${called(obligation)} is paid for.`, 'Write what is said and shown, such as “Paid promotion”.', about(obligation, 'stop', ['disclosureText'])));
  if (spokenAt === null) found.push(issue('disclosure-not-spoken', `Nobody says that ${called(obligation)} is paid for.`, 'Say it before the claim and write down when.', about(obligation, 'stop', ['spokenAt'])));
  else if (spokenAt > claim) found.push(issue('disclosure-spoken-late', `${called(obligation)} is said to be paid for ${spokenAt - claim} s after the claim starts.`, 'Say it before the claim.', about(obligation, 'stop', ['spokenAt'])));
  if (shown === null) {
    return [...found, issue('disclosure-not-shown', `Nothing on screen says that ${called(obligation)} is paid for.`, 'Show it from before the claim and write down when.', about(obligation, 'stop', ['shownFrom']))];
  }
  if (shown.start > claim) found.push(issue('disclosure-shown-late', `${called(obligation)} is shown to be paid for ${shown.start - claim} s after the claim starts.`, 'Show it before the claim.', about(obligation, 'stop', ['shownFrom'])));
  if (!fitsSubtitle(text)) {
    found.push(issue('disclosure-too-long', `The disclosure of ${called(obligation)} does not fit ${READING.lines} lines of ${READING.charactersPerLine} characters.`, 'Say it in fewer words.', about(obligation, 'warn', ['disclosureText'])));
  }
  const least = leastReadingSeconds(countWords(text));
  if (shown.end - shown.start < least) {
    found.push(issue('disclosure-too-short', `The disclosure of ${called(obligation)} is on screen for ${Math.max(0, shown.end - shown.start)} s; its ${countWords(text)} words take ${Math.round(least * 10) / 10} s to read.`,
      'Show it longer, or say it in fewer words.', about(obligation, 'stop', ['shownFrom'])));
  }
  return found;
}

function checkSpot(obligation: Obligation): readonly Issue[] {
  const { spot, minimumSeconds } = obligation;
  if (spot === null) return [issue('spot-missing', `${called(obligation)} is not in the episode yet.`, 'Write down where it starts and ends.', about(obligation, 'stop', ['spotStart']))];
  if (spot.end <= spot.start) return [issue('spot-ends-early', `${called(obligation)} ends at ${spot.end} s, not after it starts at ${spot.start} s.`, 'Type an end after the start.', about(obligation, 'stop', ['spotEnd']))];
  const length = spot.end - spot.start;
  if (length >= minimumSeconds) return [];
  return [issue('spot-too-short', `${called(obligation)} lasts ${length} s; ${minimumSeconds} s are agreed.`, 'Make it longer.', about(obligation, 'stop', ['spotEnd']))];
}

const THIRDS: readonly Sponsorship['part'][] = ['first third', 'second third', 'last third'];

/** It starts in the part of the episode that was agreed, by the runtime its segments promise. */
function checkPart(obligation: Obligation, { name, runtime }: SponsoredEpisode): readonly Issue[] {
  const { part, spot } = obligation;
  const third = THIRDS.indexOf(part);
  if (third < 0 || spot === null || runtime <= 0) return [];
  const [from, to] = [(third * runtime) / 3, ((third + 1) * runtime) / 3];
  if (spot.start >= from && spot.start <= to) return [];
  return [issue('spot-elsewhere', `${called(obligation)} starts at ${spot.start} s, and the ${part} of “${name}” is expected from ${Math.round(from)} to ${Math.round(to)} s.`, 'Move it there, or ask the sponsor.', about(obligation, 'warn', ['spotStart']))];
}

function checkDates(obligation: Obligation, episode: SponsoredEpisode): readonly Issue[] {
  const { dueDate } = obligation;
  if (dueDate === null) return [];
  if (compareDates(episode.releaseDate, dueDate) > 0) {
    return [issue('sponsor-date-passed', `${called(obligation)} is due by ${formatDay(dueDate)}, and “${episode.name}” is released on ${formatDay(episode.releaseDate)}.`,
      'Put it into an earlier episode, or ask the sponsor for a later day.', about(obligation, 'warn', ['dueDate']))];
  }
  const { feasibleOn } = episode;
  if (feasibleOn === null || compareDates(feasibleOn, dueDate) <= 0) return [];
  return [issue('sponsor-date-not-feasible', `${called(obligation)} is due by ${formatDay(dueDate)}, and by the plan “${episode.name}” is not ready before ${formatDay(feasibleOn)}.`,
    'Bring the work of the episode forward, or put the obligation into another one.', about(obligation, 'warn', ['dueDate']))];
}

function isRival(one: Obligation, other: Obligation): boolean {
  const same = one.exclusiveIn.trim().toLowerCase();
  return same !== '' && same === other.exclusiveIn.trim().toLowerCase() && one.sponsor.trim().toLowerCase() !== other.sponsor.trim().toLowerCase();
}

function checkRivals(obligations: readonly Obligation[]): readonly Issue[] {
  return obligations.flatMap((one, index) => obligations.slice(index + 1).filter((other) => isRival(one, other)).map((other) =>
    issue('competing-sponsors', `${called(one)} and ${called(other)} are in the same episode, and both sponsors were promised to be the only one for ${one.exclusiveIn}.`,
      'Move one of them to another episode.', about(one, 'stop', ['episodeId']))));
}

/** Obligations that are due before any episode carries them, and those with no episode at all. */
export function checkUnplaced(obligations: readonly Obligation[]): readonly Issue[] {
  return obligations.filter((obligation) => obligation.episodeId === null).map((obligation) =>
    issue('sponsor-without-episode', `${called(obligation)}${obligation.dueDate === null ? '' : `, due by ${formatDay(obligation.dueDate)},`} is in no episode.`, 'Choose the episode it goes into.', about(obligation, 'warn', ['episodeId'])));
}

/**
 * What stands between an episode and its release on the sponsors' side: spot, seconds, disclosure before the claim, approval and
 * exclusivity stop it; agreed days warn. Empty when all is met, or nothing is owed.
 */
export function checkSponsors(episode: SponsoredEpisode, all: readonly Obligation[]): readonly Issue[] {
  const own = all.filter((obligation) => obligation.episodeId === episode.id);
  const each = own.flatMap((obligation) => [
    ...checkSpot(obligation),
    ...checkPart(obligation, episode),
    ...checkDisclosure(obligation),
    ...checkDates(obligation, episode),
    ...(obligation.needsApproval && obligation.approvedOn === null
      ? [issue('approval-missing', `${obligation.sponsor} has not approved ${called(obligation)} yet.`, 'Send the cut, and write down the day of the approval.', about(obligation, 'stop', ['approvedOn']))] : []),
  ]);
  return [...each, ...checkRivals(own)];
}

/** Lines that stand on records: what sponsors were promised, who has agreed to be shown, captions and flashes of the cut. */
import { NO_CONSENT, NO_CUT_CHECKS, subjectOf, type Episode, type Person, type SeriesDocument, type Task } from '@/lib/build';
import { formatDay } from '@/lib/calendar';
import { checkDisclosure, readObligation } from '@/lib/episodes';
import { issue, type Issue } from '@/lib/result';
import type { ItemDraft } from './checklist-item';
import type { ShownHazard } from './checklist-lines';

/** WCAG 2.2, success criterion 2.3.1: no more than three flashes in any second. */
const MOST_FLASHES = 3;

const common = { hazard: null, isNeeded: true, taskIds: [], recorded: null, record: null, issues: [] } as const;
const idsOf = (tasks: readonly Task[]): readonly string[] => tasks.map(({ id }) => id);

const seconds = (from: number | null, until: number | null): string => (from === null || until === null ? 'not shown' : `shown from ${from} s to ${until} s`);

/** A line for each obligation to a sponsor in the episode, and one for anything that no record knows of. */
function linesOfDisclosure({ sponsorships }: SeriesDocument, episode: Episode, tasks: readonly Task[]): readonly ItemDraft[] {
  const own = sponsorships.filter(({ episodeId }) => episodeId === episode.id);
  const each = own.map((record): ItemDraft => {
    const { id, name, sponsor, disclosureText, spokenAt, shownFrom, shownUntil, spotStart } = record;
    const stops = checkDisclosure(readObligation(record)).filter(({ severity }) => severity === 'stop');
    return {
      ...common, record: subjectOf(record), id: `disclosure:${id}`, kind: 'disclosure', basis: { disclosureText, spokenAt, shownFrom, shownUntil, spotStart, sponsor },
      text: `“${name}” is paid for by ${sponsor}: “${disclosureText}”, ${spokenAt === null ? 'not said' : `said at ${spokenAt} s`}, ${seconds(shownFrom, shownUntil)}`,
      issues: stops.map((found): Issue => ({ ...found, subjects: [subjectOf(record)] })),
    };
  });
  const rest = own.length === 0 ? 'Anything paid, gifted or lent: said and shown where it appears, not only in the description. Nothing of the kind: a signed exception.'
    : 'Anything else paid, gifted or lent, beside the sponsors above: said and shown where it appears. Nothing of the kind: a signed exception.';
  return [...each, { ...common, id: 'disclosure', kind: 'disclosure', taskIds: idsOf(tasks), text: rest, basis: 'disclosure' }];
}

/** Consent of each person of the crew, answered by the record; everybody else by a signature. */
function linesOfConsent({ people }: SeriesDocument, tasks: readonly Task[]): readonly ItemDraft[] {
  const each = people.map((person: Person): ItemDraft => {
    const consent = person.consent ?? NO_CONSENT;
    return {
      ...common, record: subjectOf(person), id: `consent:${person.id}`, kind: 'consents', text: `Consent of ${person.name} to be shown`, basis: consent,
      recorded: consent.givenOn === null ? null : `Given ${formatDay(consent.givenOn)} ${consent.givenOn.slice(0, 4)}${consent.where === '' ? '' : `, ${consent.where}`}`,
    };
  });
  return [...each, { ...common, id: 'consents', kind: 'consents', taskIds: idsOf(tasks), text: 'Consent of everybody else who can be recognised', basis: 'consents' }];
}

function lineOfCaptions(episode: Episode, tasks: readonly Task[]): ItemDraft {
  const { captions } = episode.checks ?? NO_CUT_CHECKS;
  const fault = captions.file === '' ? 'No file of captions is recorded' : captions.readOn === null ? `Nobody has read “${captions.file}” through` : null;
  return {
    ...common, record: subjectOf(episode), id: 'captions', kind: 'captions', taskIds: idsOf(tasks), basis: captions,
    text: `Captions of the whole episode, cautions included${captions.file === '' ? '' : `: ${captions.file}`}`,
    issues: fault === null ? [] : [issue('captions-not-read', `${fault}.`, 'Write the file and the day somebody read it through into the episode.', { subjects: [subjectOf(episode)] })],
  };
}

function faultOfFlashes({ perSecond, countedOn }: NonNullable<Episode['checks']>['flashes']): readonly [string, string] | null {
  if (perSecond === null || countedOn === null) return ['Nobody has counted the flashes of the welding shots', 'Count them in the cut, and write the most in any second into the episode.'];
  if (perSecond > MOST_FLASHES) return [`The welding shots flash ${perSecond} times in a second, and ${MOST_FLASHES} is the most`, 'Use a filter, reframe or slow the cuts, and count again. A warning alone does not pass.'];
  return null;
}

/** Only where welding is shown. */
function linesOfFlashes(episode: Episode, shown: readonly ShownHazard[]): readonly ItemDraft[] {
  const welding = shown.filter(({ hazard }) => hazard.id === 'welding').flatMap((one) => one.tasks);
  if (welding.length === 0) return [];
  const { flashes } = episode.checks ?? NO_CUT_CHECKS;
  const fault = faultOfFlashes(flashes);
  const counted = flashes.perSecond === null ? '' : ` Counted: ${flashes.perSecond}${flashes.remedy === '' ? '' : `, ${flashes.remedy}`}.`;
  return [{
    ...common, record: subjectOf(episode), id: 'flash', kind: 'flash', taskIds: idsOf(welding), basis: flashes,
    text: `Welding shots checked for flashes: at most three a second, by filter, reframing or slower cuts. A warning alone does not pass (WCAG 2.2, 2.3.1).${counted}`,
    issues: fault === null ? [] : [issue('flashes-not-clear', `${fault[0]}.`, fault[1], { subjects: [subjectOf(episode)] })],
  }];
}

/** What every episode owes whatever it shows; a flash check only where welding is shown. */
export function standingLines(document: SeriesDocument, episode: Episode, tasks: readonly Task[], shown: readonly ShownHazard[]): readonly ItemDraft[] {
  return [...linesOfFlashes(episode, shown), ...linesOfDisclosure(document, episode, tasks), lineOfCaptions(episode, tasks), ...linesOfConsent(document, tasks)];
}

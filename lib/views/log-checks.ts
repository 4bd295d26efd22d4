/** The checks, episode by episode, with what has been let pass. */
import type { SeriesDocument } from '@/lib/build';
import { formatDay, formatMoment } from '@/lib/calendar';
import { CHECKS, groupByEpisode, runChecks, type CheckedFinding, type Facts } from '@/lib/continuity';
import type { Issue } from '@/lib/result';
import { loadCheckedFacts } from './continuity-facts';
import type { ViewContext } from './context';

export interface FindingView {
  readonly check: number;
  readonly key: string;
  readonly title: string;
  readonly issue: Issue;
  /** The segment that would be marked as a flashback; null: that is no way out. */
  readonly flashback: { readonly id: string; readonly revision: number; readonly name: string } | null;
  /** `Let pass by Robin on Tue 1 Dec 18:30: said by voice`. */
  readonly waived: { readonly entryId: string; readonly words: string; readonly reason: string } | null;
}

export interface ChecksView {
  readonly groups: readonly { readonly episodeId: string | null; readonly name: string; readonly release: string | null; readonly stops: number; readonly warns: number; readonly findings: readonly FindingView[] }[];
  readonly held: readonly { readonly number: number; readonly title: string }[];
  /** Checks that can find nothing, since what they look at has not been written down. */
  readonly blind: readonly { readonly number: number; readonly title: string; readonly needs: string }[];
  readonly stops: number;
  readonly warns: number;
  readonly waived: number;
  readonly people: readonly string[];
  readonly hasPlan: boolean;
}

/** Number of the check on the order of airing. */
const AIRING_ORDER = 17;

const TITLES = new Map(CHECKS.map(({ number, title }) => [number, title]));

function flashbackOf({ segments }: SeriesDocument, { check, waived, subjects }: CheckedFinding): FindingView['flashback'] {
  const [first] = subjects;
  const segment = check === AIRING_ORDER && waived === null && first?.kind === 'segment' ? segments.find(({ id }) => id === first.id) : undefined;
  return segment === undefined ? null : { id: segment.id, revision: segment.revision, name: segment.name };
}

/** What a check cannot do without, beside the plan. */
const NEEDS: readonly (readonly [number: number, needs: string, has: (facts: Facts) => boolean])[] = [
  [9, 'a table of the weather', ({ document }) => document.weather.length > 0],
  [15, 'an episode that is cut', ({ document }) => document.episodes.some(({ status }) => status !== 'planned' && status !== 'recorded')],
  [18, 'looks in the log', ({ looks }) => looks.length > 0],
  [30, 'cards in the log', ({ entries }) => entries.some(({ card }) => card !== null)],
  [31, 'takes with timecode', ({ takes }) => takes.some(({ take }) => take.startFrame !== null)],
  [34, 'states in the log', ({ entries }) => entries.some(({ observed }) => observed.length > 0)],
];

function describe(document: SeriesDocument, finding: CheckedFinding): FindingView {
  const { waived } = finding;
  return {
    check: finding.check, key: finding.key, title: TITLES.get(finding.check) ?? '', issue: finding, flashback: flashbackOf(document, finding),
    waived: waived === null ? null : { entryId: waived.entryId, reason: waived.reason, words: `Let pass by ${waived.author || 'nobody named'} on ${formatMoment(waived.at, document.series.zone)}: ${waived.reason}` },
  };
}

const countOf = (findings: readonly CheckedFinding[], severity: 'stop' | 'warn'): number => findings.filter((one) => one.waived === null && one.severity === severity).length;

export async function viewChecks(context: ViewContext, document: SeriesDocument): Promise<ChecksView> {
  const facts = await loadCheckedFacts(context, document);
  const findings = runChecks(facts);
  const found = new Set(findings.map(({ check }) => check));
  const blind = NEEDS.filter(([number, , has]) => !found.has(number) && !has(facts)).map(([number, needs]) => ({ number, needs, title: TITLES.get(number) ?? '' }));
  return {
    groups: groupByEpisode(facts, findings).map((group) => {
      const episode = document.episodes.find(({ id }) => id === group.episodeId);
      return {
        episodeId: group.episodeId, name: episode?.name ?? 'The whole series', release: episode === undefined ? null : formatDay(episode.releaseDate), stops: countOf(group.findings, 'stop'), warns: countOf(group.findings, 'warn'),
        findings: group.findings.map((finding) => describe(document, finding)),
      };
    }),
    held: CHECKS.filter(({ number }) => !found.has(number) && !blind.some((one) => one.number === number)).map(({ number, title }) => ({ number, title })), blind,
    stops: countOf(findings, 'stop'), warns: countOf(findings, 'warn'), waived: findings.filter(({ waived }) => waived !== null).length,
    people: document.people.map(({ name }) => name), hasPlan: facts.blocks.length > 0,
  };
}

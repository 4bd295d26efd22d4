/** The checks, episode by episode, with what has been let pass. */
import type { SeriesDocument } from '@/lib/build';
import { formatDay, formatMoment } from '@/lib/calendar';
import { CHECKS, groupByEpisode, OPEN_CHECKS, runChecks, type CheckedFinding, type OpenCheck } from '@/lib/continuity';
import type { Issue } from '@/lib/result';
import { loadFacts } from './continuity-facts';
import type { ViewContext } from './context';

export interface FindingView {
  readonly check: number;
  readonly key: string;
  readonly title: string;
  readonly issue: Issue;
  /** `Let pass by Robin on Tue 1 Dec 18:30: said by voice`. */
  readonly waived: { readonly entryId: string; readonly words: string; readonly reason: string } | null;
}

export interface ChecksView {
  readonly groups: readonly { readonly episodeId: string | null; readonly name: string; readonly release: string | null; readonly stops: number; readonly warns: number; readonly findings: readonly FindingView[] }[];
  readonly held: readonly { readonly number: number; readonly title: string }[];
  readonly open: readonly OpenCheck[];
  readonly stops: number;
  readonly warns: number;
  readonly waived: number;
  readonly people: readonly string[];
  readonly hasPlan: boolean;
}

const TITLES = new Map(CHECKS.map(({ number, title }) => [number, title]));

function describe(document: SeriesDocument, finding: CheckedFinding): FindingView {
  const { waived } = finding;
  return {
    check: finding.check, key: finding.key, title: TITLES.get(finding.check) ?? '', issue: finding,
    waived: waived === null ? null : { entryId: waived.entryId, reason: waived.reason, words: `Let pass by ${waived.author || 'nobody named'} on ${formatMoment(waived.at, document.series.zone)}: ${waived.reason}` },
  };
}

const countOf = (findings: readonly CheckedFinding[], severity: 'stop' | 'warn'): number => findings.filter((one) => one.waived === null && one.severity === severity).length;

export async function viewChecks(context: ViewContext, document: SeriesDocument): Promise<ChecksView> {
  const facts = await loadFacts(context, document);
  const findings = runChecks(facts);
  const found = new Set(findings.map(({ check }) => check));
  return {
    groups: groupByEpisode(facts, findings).map((group) => {
      const episode = document.episodes.find(({ id }) => id === group.episodeId);
      return {
        episodeId: group.episodeId, name: episode?.name ?? 'The whole series', release: episode === undefined ? null : formatDay(episode.releaseDate), stops: countOf(group.findings, 'stop'), warns: countOf(group.findings, 'warn'),
        findings: group.findings.map((finding) => describe(document, finding)),
      };
    }),
    held: CHECKS.filter(({ number }) => !found.has(number)).map(({ number, title }) => ({ number, title })), open: OPEN_CHECKS,
    stops: countOf(findings, 'stop'), warns: countOf(findings, 'warn'), waived: findings.filter(({ waived }) => waived !== null).length,
    people: document.people.map(({ name }) => name), hasPlan: facts.blocks.length > 0,
  };
}

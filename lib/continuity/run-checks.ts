/** All checks on the facts of a series, and what has been let pass. */
import type { Instant } from '@/lib/units';
import { CHECKS } from './checks';
import type { Finding } from './checks/check';
import type { Facts } from './facts';
import type { LogEntry } from '@/lib/takes';

/** Who let a finding pass, when and why. */
export interface Waived {
  readonly entryId: string;
  readonly reason: string;
  readonly author: string;
  readonly at: Instant;
}

export interface CheckedFinding extends Finding {
  /** null: it counts. */
  readonly waived: Waived | null;
}

const waiverKey = (check: number, key: string): string => `${check} ${key}`;

function listWaivers(entries: readonly LogEntry[]): ReadonlyMap<string, Waived> {
  return new Map(entries.flatMap(({ id, waiver, text, author, at }) => (waiver === null ? [] : [[waiverKey(waiver.check, waiver.key), { entryId: id, reason: text, author, at }] as const])));
}

/** Every finding, check by check in the order of their numbers. A waived one stays in the list and says so. */
export function runChecks(facts: Facts): readonly CheckedFinding[] {
  const waivers = listWaivers(facts.entries);
  const seen = new Set<string>();
  return CHECKS.flatMap((check) => check.run(facts)).flatMap((finding) => {
    const key = waiverKey(finding.check, finding.key);
    if (seen.has(key)) return [];
    seen.add(key);
    return [{ ...finding, waived: waivers.get(key) ?? null }];
  });
}

/** Findings of one episode, those that count first, stops before warnings. */
export interface EpisodeFindings {
  readonly episodeId: string | null;
  readonly findings: readonly CheckedFinding[];
}

/** Grouped by episode in the order of the series; what belongs to none comes last. */
export function groupByEpisode(facts: Facts, findings: readonly CheckedFinding[]): readonly EpisodeFindings[] {
  const rank = (finding: CheckedFinding): number => (finding.waived === null ? 0 : 2) + (finding.severity === 'stop' ? 0 : 1);
  const groups = [...facts.document.episodes.map(({ id }) => id), null].map((episodeId) => ({
    episodeId, findings: findings.filter((finding) => finding.episodeId === episodeId).toSorted((a, b) => rank(a) - rank(b) || a.check - b.check),
  }));
  return groups.filter((group) => group.findings.length > 0);
}

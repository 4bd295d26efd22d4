/** What stands between episodes and their sponsors, as the checks sort it. */
import type { Episode, Sponsorship } from '@/lib/build';
import { checkSponsors, readObligation } from '@/lib/episodes';
import type { Issue } from '@/lib/result';
import { isCut } from './exposures';
import type { Facts } from './facts';
import { once } from './once';

export interface SponsorIssue {
  readonly issue: Issue;
  readonly episode: Episode;
  readonly sponsorship: Sponsorship;
  /** The paid part is in the cut, or the cut is made. */
  readonly isDue: boolean;
}

/** Everything that is wrong with sponsors. */
export const listSponsorIssues = once((facts: Facts): readonly SponsorIssue[] => {
  const { sponsorships, episodes } = facts.document;
  const obligations = sponsorships.map(readObligation);
  return sponsorships.length === 0 ? [] : episodes.flatMap((episode) => {
    const { id, name, releaseDate } = episode;
    return checkSponsors({ id, name, releaseDate, feasibleOn: facts.known?.feasibleOn.get(id) ?? null, runtime: 0 }, obligations).flatMap((one): readonly SponsorIssue[] => {
      const sponsorship = sponsorships.find((record) => record.id === one.subjects[0]?.id);
      return sponsorship === undefined ? [] : [{ issue: one, episode, sponsorship, isDue: sponsorship.spotStart !== null || isCut(episode) }];
    });
  });
});

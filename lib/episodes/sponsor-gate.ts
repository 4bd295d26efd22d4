/** Nothing paid for goes out undisclosed: what sponsors are owed stands before `cleared` and `released` beside the safety gate. */
import type { Episode, SeriesDocument } from '@/lib/build';
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';
import { checkSponsors, readObligation } from './sponsors';

const GUARDED: readonly Episode['status'][] = ['cleared', 'released'];

/**
 * Whether episodes that become cleared or released between two documents may, as far as sponsors go. Fails with `gate-closed`, one
 * issue a point; there is no override: what was agreed can be changed, an undisclosed claim cannot be signed away.
 */
export function checkSponsorRelease(before: SeriesDocument, after: SeriesDocument): Result<null> {
  const obligations = after.sponsorships.map(readObligation);
  const found = after.episodes.flatMap((episode): readonly Issue[] => {
    const { id, name, releaseDate, status } = episode;
    if (!GUARDED.includes(status) || before.episodes.find((each) => each.id === id)?.status === status) return [];
    return checkSponsors({ id, name, releaseDate, feasibleOn: null, runtime: 0 }, obligations).filter(({ severity }) => severity === 'stop').map(({ message, fix, subjects }) =>
      issue('gate-closed', `“${name}” cannot be called ${status}. ${message}`, fix, { path: ['status'], subjects: [{ kind: 'episode', id, name }, ...subjects] }));
  });
  return found.length > 0 ? fail(found) : ok(null);
}

import { listSponsorIssues } from '../sponsor-issues';
import { makeCheck } from './check';

const CODES: readonly string[] = ['sponsor-date-passed', 'sponsor-date-not-feasible'];

/** 25: the day agreed with a sponsor is no earlier than the release, or than the first release that the plan allows. */
export const sponsorDate = makeCheck(25, 'warn', 'No sponsor’s day comes before a release that can be met', (facts) =>
  listSponsorIssues(facts).filter(({ issue, episode }) => episode.status !== 'released' && CODES.includes(issue.code)).map(({ issue, sponsorship, episode }) => ({
    key: `${sponsorship.id}/${issue.code}`, about: [sponsorship, episode], message: issue.message, fix: issue.fix,
  })));

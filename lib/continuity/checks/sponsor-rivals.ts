import { listSponsorIssues } from '../sponsor-issues';
import { makeCheck } from './check';

/** 24: no two sponsors in one episode who were each promised to be the only one of their trade. */
export const sponsorRivals = makeCheck(24, 'stop', 'No competing sponsors in one episode', (facts) =>
  listSponsorIssues(facts).filter(({ issue }) => issue.code === 'competing-sponsors').map(({ issue, sponsorship, episode }) => ({
    key: `${episode.id}/${sponsorship.id}/${issue.message}`.slice(0, 500), about: [sponsorship, episode], message: issue.message, fix: issue.fix,
  })));

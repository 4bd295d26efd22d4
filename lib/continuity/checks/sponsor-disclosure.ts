import { listSponsorIssues } from '../sponsor-issues';
import { makeCheck } from './check';

const CODES: readonly string[] = ['disclosure-not-spoken', 'disclosure-spoken-late', 'disclosure-not-shown', 'disclosure-shown-late', 'disclosure-too-short'];

/** 23: what is paid for is said and shown to be, from before its claim, as soon as the claim is in the cut. */
export const sponsorDisclosure = makeCheck(23, 'stop', 'Every sponsor is disclosed, spoken and on screen', (facts) =>
  listSponsorIssues(facts).filter(({ issue, isDue }) => isDue && CODES.includes(issue.code)).map(({ issue, sponsorship, episode }) => ({
    key: `${sponsorship.id}/${issue.code}`, about: [sponsorship, episode], message: issue.message, fix: issue.fix,
  })));

import { issue, type Issue } from '@/lib/result';
import { deriveOrder, findCycle, type Precedence } from '../derive-order';
import type { SeriesDocument } from '../model';
import { findRecord } from '../records';
import { quoteName, stateName, subjectsOf } from '../words';
import { findWork, workKey } from '../works';
import type { Rule } from './rule';

const MOST_RINGS = 20;
const MOST_NAMES = 10;

function sayArc(document: SeriesDocument, { because, from, to }: Precedence): string {
  const [first, second] = [from, to].map((ref) => quoteName(findWork(document, ref)?.name ?? ref.id));
  if (because.kind === 'link') return `${second} waits for ${first} by the link ${quoteName(findRecord(document, 'link', because.linkId)?.name ?? because.linkId)}`;
  const part = findRecord(document, 'part', because.partId);
  return `${second} comes after ${first} through ${quoteName(part?.name ?? because.partId)} in ${quoteName(stateName(part, because.stateId))}`;
}

/** A link is the easier thing to drop; without one, the part of the last step. */
function sayFix(document: SeriesDocument, ring: readonly Precedence[]): string {
  const arc = ring.findLast(({ because }) => because.kind === 'link') ?? ring.at(-1);
  if (arc === undefined) throw new Error('A ring has at least one step');
  const { because } = arc;
  if (because.kind === 'link') return `Remove the link ${quoteName(findRecord(document, 'link', because.linkId)?.name ?? because.linkId)}.`;
  const part = findRecord(document, 'part', because.partId);
  return `Take the part ${quoteName(part?.name ?? because.partId)} out of ${quoteName(findWork(document, arc.to)?.name ?? arc.to.id)}, or choose another state for it there.`;
}

function describeRing(document: SeriesDocument, ring: readonly Precedence[]): Issue {
  const works = ring.map((arc) => findWork(document, arc.from));
  const names = works.map((work) => quoteName(work?.name ?? ''));
  const shown = names.length > MOST_NAMES ? [...names.slice(0, MOST_NAMES), `${names.length - MOST_NAMES} more`] : names;
  const links = ring.map(({ because }) => (because.kind === 'link' ? findRecord(document, 'link', because.linkId) : undefined));
  const reasons = ring.slice(0, MOST_NAMES).map((arc) => sayArc(document, arc)).join('; ');
  return issue('work-goes-round', `The order of work goes round in a ring: ${shown.join(' → ')} → ${names[0]}. ${reasons}.`, sayFix(document, ring), {
    subjects: subjectsOf(...works, ...links),
  });
}

/** The order of work, from part states and links, never comes back to where it began. One issue a ring, the shortest first. */
export const checkWorkOrder: Rule = (document) => {
  const found: Issue[] = [];
  let arcs = deriveOrder(document);
  for (let ring = findCycle(arcs); ring !== null && found.length < MOST_RINGS; ring = findCycle(arcs)) {
    found.push(describeRing(document, ring));
    const seen = new Set(ring.map((arc) => workKey(arc.from)));
    arcs = arcs.filter((arc) => !seen.has(workKey(arc.from)) && !seen.has(workKey(arc.to)));
  }
  return found;
};

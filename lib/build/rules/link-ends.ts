import { issue } from '@/lib/result';
import { quoteName, startWith, subjectsOf } from '../words';
import { findWork, workKey } from '../works';
import type { Rule } from './rule';

/** A link joins two different pieces of work. */
export const checkLinkEnds: Rule = (document) =>
  document.links
    .filter((link) => workKey(link.from) === workKey(link.to))
    .map((link) => issue('link-to-itself', `${startWith(link)} lets ${quoteName(findWork(document, link.from)?.name ?? link.from.id)} wait for itself.`,
      'Choose two different tasks or outside jobs.', { path: ['to'], subjects: subjectsOf(link, findWork(document, link.from)) }));

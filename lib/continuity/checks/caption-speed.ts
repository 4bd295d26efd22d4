import type { Episode } from '@/lib/build';
import { checkReading } from '@/lib/estimate';
import { breakLines, captionSeconds } from '@/lib/safety';
import { listCaptions } from '../exposures';
import type { Facts } from '../facts';
import { makeCheck } from './check';

interface Shown {
  readonly id: string;
  readonly text: string;
  /** Seconds in the episode. */
  readonly start: number;
  readonly end: number;
}

/** Cautions stand as long as they take to read, but never beside the next one; disclosures as long as is written down. */
function shownIn(facts: Facts, episode: Episode): readonly Shown[] {
  const cautions = (listCaptions(facts).get(episode.id) ?? []).flatMap(({ item, at }) => (at === null ? [] : [{ id: item.id, text: item.text, start: at }])).toSorted((a, b) => a.start - b.start);
  const spoken = cautions.map((caution, index): Shown => ({ ...caution, end: Math.min(caution.start + captionSeconds(caution.text), cautions[index + 1]?.start ?? Infinity) }));
  const paid = facts.document.sponsorships.flatMap(({ id, episodeId, disclosureText, shownFrom, shownUntil }): readonly Shown[] =>
    (episodeId !== episode.id || shownFrom === null || shownUntil === null || disclosureText.trim() === '' ? [] : [{ id, text: disclosureText, start: shownFrom, end: shownUntil }]));
  return [...spoken, ...paid];
}

/** 16: captions stand long enough to be read (BBC subtitle guidelines). */
export const captionSpeed = makeCheck(16, 'warn', 'Captions stay long enough to be read', (facts) =>
  facts.document.episodes.flatMap((episode) => shownIn(facts, episode).flatMap(({ id, text, start, end }) =>
    checkReading(breakLines(text).join('\n'), Math.max(end - start, 1e-3)).map(({ code, message, fix }) => ({
      key: `${episode.id}/${id}/${code}`, about: [episode], message: `In “${episode.name}”: ${message}`, fix,
    })))));

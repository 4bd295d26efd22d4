import { listCaptions, saySeconds } from '../exposures';
import { makeCheck } from './check';

/** 15: a caution stands before the hazard it warns of is first shown, or as it is. Without a start in the cut the segment's end counts. */
export const cautionTime = makeCheck(15, 'stop', 'Each caution comes before its hazard is first shown, or with it', (facts) =>
  facts.document.episodes.flatMap((episode) => (listCaptions(facts).get(episode.id) ?? []).flatMap(({ item, hazard, at, first }) => {
    if (item.state === 'excepted') return [];
    const tasks = item.taskIds.map((id) => facts.tasks.get(id));
    if (at === null) {
      return [{
        key: `${episode.id}/${hazard.id}`, about: [episode, ...tasks], message: `“${episode.name}” is ${episode.status} and shows “${hazard.name}” with no caution on screen.`,
        fix: 'Put the caution on screen and sign its timecode on the episode’s checklist.',
      }];
    }
    const latest = first === null ? null : first.isCut ? first.start : first.end;
    if (first === null || latest === null || at <= latest) return [];
    return [{
      key: `${episode.id}/${hazard.id}`, about: [first.segment, episode, ...tasks],
      message: `The caution for “${hazard.name}” comes at ${saySeconds(at)} in “${episode.name}”, and “${first.segment.name}” shows it ${first.isCut ? `from ${saySeconds(first.start)}` : `until about ${saySeconds(first.end)}`}.`,
      fix: 'Move the caution ahead of it, or correct where the segment starts in the cut.',
    }];
  })));

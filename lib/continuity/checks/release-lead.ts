import { shootDue, startWith } from '@/lib/build';
import { sayAt } from '../facts';
import { makeCheck } from './check';

/** 26: recording ends early enough for edit, review, captions and upload. */
export const releaseLead = makeCheck(26, 'stop', 'Each episode is recorded early enough for its edit, review, captions and upload', (facts) =>
  facts.document.episodes.filter(({ status }) => status === 'planned').flatMap((episode) => {
    const blocks = facts.blocks.filter(({ kind, subject }) => (kind === 'task' || kind === 'before-shot') && facts.tasks.get(subject.id)?.episodeId === episode.id);
    const last = blocks.toSorted((a, b) => b.end - a.end)[0];
    const due = shootDue(facts.document.series, episode);
    if (last === undefined || last.end <= due) return [];
    return [{
      key: episode.id, about: [episode, facts.tasks.get(last.subject.id)],
      message: `${startWith(episode)} is recorded on ${sayAt(facts, last.end)} (“${last.title}”); for its release on ${episode.releaseDate} it must be by ${sayAt(facts, due)}.`,
      fix: 'Move the release, or take that work out of the episode.',
    }];
  }));

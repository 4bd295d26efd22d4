import { listPictured } from '../in-picture';
import { makeCheck } from './check';

/** 33: everybody who can be recognised has agreed to be published. */
export const consent = makeCheck(33, 'stop', 'Everybody in picture has agreed to it', (facts) =>
  listPictured(facts).flatMap(({ person, episodes }) => {
    const [first] = episodes;
    if (first === undefined || (person.consent?.givenOn ?? null) !== null) return [];
    const more = episodes.length - 1;
    return [{
      key: person.id, about: [person, first], message: `${person.name} is in picture in “${first.name}”${more === 0 ? '' : ` and ${more} more ${more === 1 ? 'episode' : 'episodes'}`} and has not agreed to it in writing.`,
      fix: 'Ask, and write the day down with the person; or keep them out of frame.',
    }];
  }));

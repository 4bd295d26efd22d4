/** Stills of neighbouring pieces side by side, in the order of airing. */
import type { SeriesDocument } from '@/lib/build';
import { formatMoment } from '@/lib/calendar';
import { lookAt, takesOfPiece, type AiredPiece, type Facts, type Look, type TakeEntry } from '@/lib/continuity';
import { loadFacts } from './continuity-facts';
import type { ViewContext } from './context';

export interface StillView {
  readonly name: string;
  readonly when: string;
  readonly photoId: string | null;
  /** What is noted of the look; `differs`: the other side says otherwise. */
  readonly look: readonly { readonly words: string; readonly differs: boolean }[];
}

export interface StillsView {
  readonly episodes: readonly { readonly id: string; readonly name: string; readonly pairs: readonly { readonly left: StillView; readonly right: StillView }[] }[];
}

const WORDS: Readonly<Record<keyof Look, string>> = { clothes: 'Clothes', equipment: 'Protective equipment', light: 'Light', whiteBalance: 'White balance', lens: 'Lens', tools: 'Tools' };

const plain = (text: string): string => text.trim().toLowerCase();

function sayLook(look: Look | null, other: Look | null): StillView['look'] {
  if (look === null) return [];
  return (Object.keys(WORDS) as (keyof Look)[]).filter((key) => look[key] !== '').map((key) => ({
    words: `${WORDS[key]}: ${look[key]}`, differs: other !== null && other[key] !== '' && plain(other[key]) !== plain(look[key]),
  }));
}

interface Filmed {
  readonly piece: AiredPiece;
  /** By time. */
  readonly takes: readonly TakeEntry[];
}

const lookOf = (facts: Facts, take: TakeEntry | undefined): Look | null => (take === undefined ? null : lookAt(facts, take));

/** The last take of a piece beside the first of the next. */
export async function viewStills(context: ViewContext, document: SeriesDocument): Promise<StillsView> {
  const [facts, photos] = await Promise.all([loadFacts(context, document), context.storage.listLogPhotos(document.series.id)]);
  const photoOf = new Map(photos.map(({ id, entryId }) => [entryId, id]));
  const still = ({ piece, takes }: Filmed, isLast: boolean, other: Look | null): StillView => {
    const near = isLast ? takes.toReversed() : takes;
    const take = near[0];
    const pictured = near.find(({ id }) => photoOf.has(id));
    return {
      name: piece.name, when: take === undefined ? '' : formatMoment(take.at, document.series.zone), photoId: pictured === undefined ? null : (photoOf.get(pictured.id) ?? null), look: sayLook(lookOf(facts, take), other),
    };
  };
  const filmed = facts.airing.map((piece): Filmed => ({ piece, takes: takesOfPiece(facts, piece) })).filter(({ takes }) => takes.length > 0);
  return {
    episodes: document.episodes.flatMap(({ id, name }) => {
      const own = filmed.filter(({ piece }) => piece.episodeId === id);
      const pairs = own.slice(1).map((right, index) => {
        const left = own[index]!;
        return { left: still(left, true, lookOf(facts, right.takes[0])), right: still(right, false, lookOf(facts, left.takes.at(-1))) };
      });
      return pairs.length === 0 ? [] : [{ id, name, pairs }];
    }),
  };
}

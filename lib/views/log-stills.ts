/** Stills of neighbouring pieces side by side, in the order of airing. */
import type { SeriesDocument } from '@/lib/build';
import { formatMoment } from '@/lib/calendar';
import { lookAt, type AiredPiece, type Facts, type Look, type TakeEntry } from '@/lib/continuity';
import { loadFacts } from './continuity-facts';
import type { ViewContext } from './context';

export interface StillView {
  readonly name: string;
  readonly when: string;
  readonly photoId: string | null;
  readonly look: readonly string[];
}

export interface StillsView {
  readonly episodes: readonly { readonly id: string; readonly name: string; readonly pairs: readonly { readonly left: StillView; readonly right: StillView }[] }[];
}

const WORDS: Readonly<Record<keyof Look, string>> = { clothes: 'Clothes', equipment: 'Protective equipment', light: 'Light', whiteBalance: 'White balance', lens: 'Lens', tools: 'Tools' };

function sayLook(look: Look | null): readonly string[] {
  if (look === null) return [];
  return (Object.keys(WORDS) as (keyof Look)[]).flatMap((key) => (look[key] === '' ? [] : [`${WORDS[key]}: ${look[key]}`]));
}

function takesOf(facts: Facts, piece: AiredPiece): readonly TakeEntry[] {
  return piece.taskIds.flatMap((id) => facts.takesOfTask.get(id) ?? []).filter(({ take }) => take.verdict !== 'no good').toSorted((a, b) => a.at - b.at);
}

/** The last take of a piece beside the first of the next. */
export async function viewStills(context: ViewContext, document: SeriesDocument): Promise<StillsView> {
  const [facts, photos] = await Promise.all([loadFacts(context, document), context.storage.listLogPhotos(document.series.id)]);
  const photoOf = new Map(photos.map(({ id, entryId }) => [entryId, id]));
  const still = (piece: AiredPiece, takes: readonly TakeEntry[], isLast: boolean): StillView => {
    const near = isLast ? takes.toReversed() : takes;
    const take = near[0];
    const pictured = near.find(({ id }) => photoOf.has(id));
    return {
      name: piece.name, when: take === undefined ? '' : formatMoment(take.at, document.series.zone), photoId: pictured === undefined ? null : (photoOf.get(pictured.id) ?? null), look: take === undefined ? [] : sayLook(lookAt(facts, take)),
    };
  };
  const filmed = facts.airing.map((piece) => ({ piece, takes: takesOf(facts, piece) })).filter(({ takes }) => takes.length > 0);
  return {
    episodes: document.episodes.flatMap(({ id, name }) => {
      const own = filmed.filter(({ piece }) => piece.episodeId === id);
      const pairs = own.slice(1).map((right, index) => ({ left: still(own[index]!.piece, own[index]!.takes, true), right: still(right.piece, right.takes, false) }));
      return pairs.length === 0 ? [] : [{ id, name, pairs }];
    }),
  };
}

/** The checklist of an episode with its gate. */
import { findRecord, type SeriesDocument } from '@/lib/build';
import { formatMoment } from '@/lib/calendar';
import {
  buildChecklist, isAnswered, isGuarded, judgeGate, listOverrides, listUsableTakes, sayTake, STANDING_WORDS, startOfTake, takesEvidence,
  type Checklist, type ChecklistItem, type Footage, type Gate, type ItemKind, type ItemState,
} from '@/lib/safety';
import type { BlockRow, EpisodeSafetyView, ItemGroup, ItemView } from './safety-model';
import { formatLongDay } from './record-form-words';
import { chooseFrom, loadScene, saySignature, saySigns, SEVERITY_WORDS, type SafetyContext } from './safety-words';

const KINDS: Readonly<Record<ItemKind, readonly [word: string, asksFor: string]>> = {
  control: ['Control', 'The take and timecode where it is seen'],
  worn: ['Worn', 'The take and timecode where it is worn'],
  spoken: ['Said', 'The take and timecode where it is said; your own words are fine when they say as much'],
  caption: ['On screen', 'The timecode in the cut where it appears; name the cut as the take'],
  deferral: ['Leave it', 'An exception that says who, licensed or equipped for it, does it'],
  departure: ['Departure', 'The take and timecode of the whole statement'],
  combination: ['Together', 'An exception that says what was done about it'],
  flash: ['Flashes', 'The count in the record of the episode, then the cut and timecode that were checked'],
  disclosure: ['Disclosure', 'The take where it is said and shown; or an exception: nothing was paid, gifted or lent'],
  captions: ['Captions', 'The file in the record of the episode, then the cut and a timecode in it'],
  consents: ['Consent', 'The record of the person, or an exception that says where the papers are'],
};

const STATES: Readonly<Record<ItemState, string>> = { open: 'Open', evidenced: 'In a take', excepted: 'Exception', recorded: 'On record', reopened: 'Open again' };

const anchorOf = (itemId: string): string => `line-${itemId.replaceAll(/[^a-zA-Z0-9]+/g, '-')}`;

function viewItem(item: ChecklistItem, zone: string): ItemView {
  const [kindWord, asksFor] = KINDS[item.kind];
  return {
    id: item.id, anchor: anchorOf(item.id), kindWord, asksFor, text: item.text, state: item.state, stateWord: STATES[item.state], isNeeded: item.isNeeded, fingerprint: item.fingerprint,
    signed: item.signed === null ? null : saySignature(item.signed, zone), why: item.why, recorded: item.recorded, record: item.record, canWithdraw: item.state === 'evidenced' || item.state === 'excepted', issues: item.issues,
    takeTaskIds: takesEvidence(item.kind) ? item.taskIds : [],
  };
}

const isOpen = (item: ItemView): boolean => item.isNeeded && !isAnswered(item);

function groupOf(id: string, title: string, items: readonly ItemView[], more: Partial<ItemGroup> = {}): readonly ItemGroup[] {
  return items.length === 0 ? [] : [{ id, title, severity: null, signs: [], tasks: [], show: null, ...more, items, open: items.filter(isOpen).length }];
}

function groupItems(checklist: Checklist, zone: string): readonly ItemGroup[] {
  const views = checklist.items.map((item) => ({ item, view: viewItem(item, zone) }));
  const pick = (isIn: (item: ChecklistItem) => boolean): readonly ItemView[] => views.filter(({ item }) => isIn(item)).map(({ view }) => view);
  const standing: readonly ItemKind[] = ['flash', 'disclosure', 'captions', 'consents'];
  return [
    ...groupOf('together', 'Things together', pick(({ kind }) => kind === 'combination')),
    ...checklist.hazards.flatMap(({ hazard, tasks }) => groupOf(hazard.id, hazard.name, pick((item) => item.hazard?.id === hazard.id), {
      severity: SEVERITY_WORDS[hazard.severity], signs: saySigns(hazard.signs), tasks: chooseFrom(tasks), show: hazard.show,
    })),
    ...groupOf('worn', 'Worn in the shot', pick(({ kind }) => kind === 'worn')),
    ...groupOf('departures', "Departures from the maker's manual", pick(({ kind }) => kind === 'departure')),
    ...groupOf('standing', 'Owed by every episode', pick(({ kind }) => standing.includes(kind))),
  ];
}

/** Takes of the log by task, as far as the episode's lines are about them. */
function viewTakes(document: SeriesDocument, { tasks }: Checklist, footage: Footage): EpisodeSafetyView['takes'] {
  return Object.fromEntries(tasks.map(({ id }) => [id, listUsableTakes(footage, [id]).map((entry) => ({
    value: entry.id, timecode: startOfTake(entry),
    label: `${formatMoment(entry.at, document.series.zone)}: ${sayTake(document, entry)}${entry.take.verdict === 'good' ? '' : ' (unsure)'}`,
  }))]));
}

function viewBlocks(gate: Gate, zone: string): readonly BlockRow[] {
  return gate.blocks.map(({ id, message, fix, itemIds, override }) => ({
    id, message, fix, anchor: itemIds[0] === undefined ? null : anchorOf(itemIds[0]), override: override === null ? null : saySignature(override, zone),
  }));
}

/** The checklist and gate of an episode; null when there is none of that id. */
export async function viewEpisodeSafety({ storage }: Pick<SafetyContext, 'storage'>, document: SeriesDocument, episodeId: string): Promise<EpisodeSafetyView | null> {
  const episode = findRecord(document, 'episode', episodeId);
  if (episode === undefined) return null;
  const { id: seriesId, zone, frameRate } = document.series;
  const { work, footage } = await loadScene(storage, seriesId);
  const checklist = buildChecklist(document, episodeId, { work, footage });
  const gate = judgeGate(document, checklist);
  const captions = checklist.items.filter(({ kind }) => kind === 'caption');
  const groups = groupItems(checklist, zone);
  return {
    seriesId, standing: STANDING_WORDS, groups,
    episode: { id: episode.id, name: episode.name, revision: episode.revision, status: episode.status, release: formatLongDay(episode.releaseDate) },
    blocks: viewBlocks(gate, zone), openBlocks: gate.open.length,
    overrides: listOverrides(document, episodeId).map((statement) => saySignature(statement, zone)),
    people: chooseFrom(document.people), takes: viewTakes(document, checklist, footage), timecodeExample: frameRate.denominator === 1001 ? '00:12:04;11' : '00:12:04:11',
    captions: { ready: captions.filter(({ state }) => state === 'evidenced').length, of: captions.length },
    isBehind: isGuarded(episode.status) && gate.open.length > 0,
  };
}

/** May an episode be called cleared or released? The gate names each block and its fix; it never says that all is well. */
import type { Episode, SeriesDocument, Statement } from '@/lib/build';
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';
import { buildChecklist, type Checklist, type ChecklistMore } from './checklist';
import { isAnswered, type ChecklistItem, type ItemKind } from './checklist-item';
import { listOverrides } from './statements';

/** Something that stops an episode. */
export interface Block {
  /** Stable while the reason stays the same; changes when what it stood on changes. */
  readonly id: string;
  readonly code: string;
  readonly message: string;
  readonly fix: string;
  readonly itemIds: readonly string[];
  /** Set aside by somebody, with a reason. */
  readonly override: Statement | null;
}

export interface Gate {
  readonly blocks: readonly Block[];
  /** Blocks that nobody has set aside. */
  readonly open: readonly Block[];
  /** All overrides there ever were. */
  readonly overrides: readonly Statement[];
}

const CODES: Readonly<Record<ItemKind, readonly [code: string, what: string, fix: string]>> = {
  control: ['control-not-shown', 'A control that should be seen is not in the footage', 'Give the take and timecode where it is seen, film a pickup, or sign an exception.'],
  worn: ['equipment-not-shown', 'Protective equipment is not shown worn', 'Give the take where it is worn, film a pickup, or sign an exception.'],
  spoken: ['caution-not-spoken', 'The caution is not spoken', 'Record it, and give the take and timecode.'],
  caption: ['caution-not-on-screen', 'The caution is not on screen', 'Put it on screen, and give the timecode in the cut.'],
  deferral: ['deferral-open', 'The facts say to leave it', 'Say who licensed or equipped for it does it, or take it out of the episode.'],
  departure: ['departure-open', "The departure from the maker's manual is not stated", 'Record manual value, own value, reason and warning, spoken and on screen.'],
  combination: ['combination-open', 'Two things together are dangerous', 'Change the plan or the task; or sign what was done about it.'],
  flash: ['flash-open', 'The welding shots are not checked for flashes', 'Check them: filter, reframe or slow the cuts; then sign.'],
  disclosure: ['disclosure-open', 'The disclosure of anything paid, gifted or lent is missing', 'Give the take where it is said and shown, or sign that there was nothing.'],
  captions: ['captions-open', 'The captions are missing', 'Make them, and sign.'],
  consents: ['consents-open', 'A consent is missing', 'Get it in writing, and write it into the record of the person; or sign who is not to be seen, or where the papers are.'],
};

const endSentence = (text: string): string => (/[.!?]$/u.test(text) ? text : `${text}.`);

function blockOfItem(item: ChecklistItem): Omit<Block, 'override'> {
  const [code, what, fix] = CODES[item.kind];
  const again = item.why === null ? '' : ` It was signed, and ${item.why}.`;
  const found = item.issues[0];
  const about = item.hazard === null ? '' : ` (${item.hazard.name})`;
  return { id: `${item.id}@${item.fingerprint}`, code, message: `${what}${about}: ${found === undefined && again === '' ? item.text : endSentence(item.text)}${again}${found === undefined ? '' : ` ${found.message}`}`, fix: found?.fix ?? fix, itemIds: [item.id] };
}

/** Severity I with no control above what is worn, seen in a take. An exception proves nothing here. */
function blocksOfSevere(checklist: Checklist): readonly Omit<Block, 'override'>[] {
  return checklist.hazards.filter(({ hazard }) => hazard.severity === 'I').flatMap(({ hazard }) => {
    const controls = checklist.items.filter((item) => item.kind === 'control' && item.hazard?.id === hazard.id);
    if (controls.some(({ state }) => state === 'evidenced')) return [];
    return [{
      id: `no-control:${hazard.id}@${controls.map(({ fingerprint }) => fingerprint).join('')}`, code: 'no-control-above-equipment',
      message: `“${hazard.name}” can kill, and no control above protective equipment is in the footage.`,
      fix: `Give the take that shows one of: ${hazard.controls.map(({ text }) => text.toLowerCase()).join('; ')}.`, itemIds: controls.map(({ id }) => id),
    }];
  });
}

/** Judges a checklist. A block is set aside by an override that names it, until what it stands on changes. */
export function judgeGate(document: SeriesDocument, checklist: Checklist): Gate {
  const overrides = listOverrides(document, checklist.episodeId);
  const blocks = [...blocksOfSevere(checklist), ...checklist.items.filter((item) => item.isNeeded && !isAnswered(item)).map(blockOfItem)]
    .map((block): Block => ({ ...block, override: overrides.findLast(({ about }) => about.sort === 'override' && about.blocks.includes(block.id)) ?? null }));
  return { blocks, open: blocks.filter(({ override }) => override === null), overrides };
}

const GUARDED: readonly Episode['status'][] = ['cleared', 'released'];

/** True for a status that the gate guards. */
export function isGuarded(status: Episode['status']): status is 'cleared' | 'released' {
  return GUARDED.includes(status);
}

/** The lines that a refusal of the sponsors has named already: disclosures that lack something. */
function listTold({ items }: Checklist, owed: readonly Issue[]): ReadonlySet<string> {
  const refused = new Set(owed.flatMap(({ subjects }) => subjects).filter(({ kind }) => kind === 'sponsorship').map(({ id }) => id));
  return new Set(items.filter(({ issues, kind, record }) => kind === 'disclosure' && issues.length > 0 && record !== null && refused.has(record.id)).map(({ id }) => id));
}

/**
 * Whether episodes that become cleared or released between two documents may. Fails with `gate-closed`, one issue a block,
 * the message naming the block and `fix` its fix.
 * @param owed what the sponsors' gate refuses of the same change: a disclosure is not told twice
 */
export function checkRelease(before: SeriesDocument, after: SeriesDocument, more: ChecklistMore = {}, owed: readonly Issue[] = []): Result<null> {
  const issues = after.episodes.flatMap((episode): readonly Issue[] => {
    const was = before.episodes.find(({ id }) => id === episode.id)?.status;
    if (!isGuarded(episode.status) || was === episode.status) return [];
    const checklist = buildChecklist(after, episode.id, more);
    const told = listTold(checklist, owed);
    const open = judgeGate(after, checklist).open.filter(({ itemIds }) => !itemIds.some((id) => told.has(id)));
    return open.map(({ message, fix }) =>
      issue('gate-closed', `“${episode.name}” cannot be called ${episode.status}. ${message}`, fix, { path: ['status'], subjects: [{ kind: 'episode', id: episode.id, name: episode.name }] }));
  });
  return issues.length > 0 ? fail(issues) : ok(null);
}

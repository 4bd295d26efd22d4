import { describe, expect, it } from 'vitest';
import type { SeriesDocument } from '@/lib/build';
import type { LogEntry } from '@/lib/footage';
import type { SavedPlan } from '@/lib/plan';
import { addHazards } from '@/lib/commands';
import { viewBrief, viewCaptions, viewEpisodeSafety, viewHazards, viewSafety, viewTaskHazards } from '@/lib/views';
import { unwrap } from '@/lib/result';
import { at } from '../build/sample-series';
import { memoryContext } from '../commands/memory-store';
import { take } from '../continuity/sample-log';
import { itemOf, sign, withHazards } from '../safety/sample';
import { samplePlan } from './sample-plan';

const now = at('2026-12-01', '12:00');
const contextOf = (plan: SavedPlan | null, log: readonly LogEntry[] = []) => ({ now, storage: { acceptedPlan: async () => plan, listLogEntries: async () => log } });
const view = (shown: SeriesDocument) => viewEpisodeSafety(contextOf(null), shown, 'episode-1');

const caption = 'caption:tyre-inflation';
const document = withHazards('task-strip', ['tyre-inflating']);
const signed = sign(document, {
  sort: 'evidence', episodeId: 'episode-1', itemId: caption, fingerprint: itemOf(document, caption).fingerprint, evidence: { kind: 'take', take: 'cut 2', timecode: '00:10:00:12' },
});

describe('the checklist page', () => {
  it('groups lines by hazard, counts what is open and says who signed what', async () => {
    const page = await view(signed);
    const group = page?.groups.find(({ id }) => id === 'tyre-inflation');
    expect(group).toMatchObject({ severity: 'I catastrophic', tasks: [{ value: 'task-strip', label: 'Strip the frame' }] });
    expect(group?.items.find(({ id }) => id === caption)).toMatchObject({ state: 'evidenced', signed: 'Robin, Tue 1 Dec 20:00: cut 2 at 00:10:00:12. looked at it together', canWithdraw: true });
    expect(page?.groups.flatMap(({ items }) => items).length).toBe(new Set(page?.groups.flatMap(({ items }) => items.map(({ id }) => id))).size);
    expect(page?.captions).toEqual({ ready: 1, of: 1 });
  });

  it('names each block with its fix and the line to go to, and is null for no episode', async () => {
    const page = await view(document);
    const anchors = new Set(page?.groups.flatMap(({ items }) => items.map(({ anchor }) => anchor)));
    expect(page?.blocks.length).toBe(page?.openBlocks);
    const [work, ...lines] = page?.blocks ?? [];
    expect(work?.message).toMatch(/^\d+ tasks? of this episode (is|are) not done: /u);
    expect(lines.length).toBeGreaterThan(0);
    for (const block of lines) expect([block.fix.length > 0, anchors.has(block.anchor ?? '')]).toEqual([true, true]);
    expect(await viewEpisodeSafety(contextOf(null), document, 'nothing')).toBeNull();
  });

  it('offers the takes of a task that count, but not where a line stands in the cut', async () => {
    const logged = take({ number: 2 }, { taskId: 'task-strip', id: 'logged' });
    const page = await viewEpisodeSafety(contextOf(null, [logged, take({ verdict: 'no good' }, { taskId: 'task-strip' }), take({}, { taskId: 'task-prime' })]), document, 'episode-1');
    expect(page?.takes['task-strip']?.map(({ value, timecode }) => [value, timecode])).toEqual([['logged', '']]);
    const items = page?.groups.flatMap((group) => group.items) ?? [];
    expect(items.find(({ id }) => id === 'spoken:tyre-inflation')?.takeTaskIds).toEqual(['task-strip']);
    expect(items.find(({ id }) => id === caption)?.takeTaskIds).toEqual([]);
  });

  it('says when a cleared episode has fallen behind its list', async () => {
    const cleared = { ...document, episodes: document.episodes.map((one) => ({ ...one, status: 'cleared' as const })) };
    expect((await view(cleared))?.isBehind).toBe(true);
    expect((await view(document))?.isBehind).toBe(false);
  });
});

describe('captions', () => {
  it('hold the signed cautions at their time in the cut', () => {
    expect(unwrap(viewCaptions(signed, 'episode-1')).text).toContain('10:00.480 --> 10:0');
    expect(unwrap(viewCaptions(document, 'episode-1')).text).toBe('WEBVTT\n');
  });
});

describe('the room of safety', () => {
  it('has a cell for each episode that shows a hazard, and briefs only for sessions ahead', async () => {
    const room = await viewSafety(contextOf(samplePlan()), signed);
    const row = room.rows.find(({ id }) => id === 'tyre-inflation');
    expect(row?.cells.map((cell) => cell?.text ?? null)).toEqual(['1/3', null]);
    expect(room.sessions[0]?.label).toContain('Tue 1 Dec 18:30');
    expect(room.hasPlan).toBe(true);
  });
});

describe('the pages of a task, the library and a brief', () => {
  it('say why a hazard was found', async () => {
    const page = await viewTaskHazards(contextOf(null), document, 'task-strip');
    expect(page?.found.find(({ id }) => id === 'tyre-inflation')?.because).toBe('inflating or seating a tyre');
    expect(page?.others.some(({ value }) => value === 'tyre-inflation')).toBe(false);
  });

  it('mark what nobody has read, and write each hazard as text that can be brought in again', async () => {
    const cards = viewHazards(document);
    expect(cards.find(({ id }) => id === 'noise')?.equipment[0]?.standard).toContain('unverified');
    const memory = memoryContext(document);
    const all = `[${cards.map(({ asText }) => asText).join(',')}]`;
    expect((await addHazards(memory, 'series-sample', all)).ok).toBe(true);
    expect(viewHazards(memory.document()).every(({ isOwn, own }) => isOwn && own !== null)).toBe(true);
    expect(viewHazards(memory.document())).toHaveLength(cards.length);
  });

  it('list the work of the session by the plan', async () => {
    const page = await viewBrief(contextOf(samplePlan()), document, 'session-2');
    expect(page?.order.map(({ name }) => name)).toContain('Strip the frame');
    expect(page?.hazards.map(({ id }) => id)).toContain('tyre-inflation');
    expect((await viewBrief(contextOf(null), document, 'session-2'))?.order).toEqual([]);
    expect(await viewBrief(contextOf(null), document, 'none')).toBeNull();
  });
});

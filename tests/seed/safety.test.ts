/** The demo's safety work from the log to the gate. */
import { beforeAll, describe, expect, it } from 'vitest';
import { changeRecord, completeTask, correctEntry, signItem, type CommandContext } from '@/lib/commands';
import { datedWork } from '@/lib/plan';
import { buildChecklist, gatherFootage, isAnswered, judgeGate } from '@/lib/safety';
import { summariseSafety } from '@/lib/views/episode-summaries';
import { ok, unwrap } from '@/lib/result';
import { demoSeries } from '@/seed/demo';
import { loadDemoSafety } from '@/seed/load-demo-safety';
import { memoryContext } from '../commands/memory-store';

const seriesId = 'series-bread-round';
const memory = memoryContext(demoSeries('2026-11-30'));
const logging: Pick<CommandContext['storage'], 'getLogEntry' | 'addLogEntries'> = {
  getLogEntry: async (_series, id) => memory.log.find((entry) => entry.id === id) ?? null,
  addLogEntries: async (_series, added) => {
    const kept = added.map(({ entry }) => ({ ...entry, number: memory.log.length + 1 }));
    memory.log.push(...kept);
    return ok(kept.map((entry) => ({ entry, isNew: true })));
  },
};
// The commands of the log and of safety use no more of the storage than this.
const context = { ...memory, newId: () => `${memory.newId()}-of-the-test`, storage: { ...memory.storage, ...logging } } as unknown as CommandContext;

beforeAll(async () => {
  unwrap(await loadDemoSafety(context, seriesId, '2026-11-30'));
});

async function look(episodeId: string) {
  const [document, entries] = await Promise.all([context.storage.loadSeries(seriesId), context.storage.listLogEntries(seriesId, {})]);
  if (document === null) throw new Error('The demo is loaded');
  const footage = gatherFootage(entries);
  const checklist = buildChecklist(document, episodeId, { work: datedWork(null), footage });
  return { document, checklist, footage, open: judgeGate(document, checklist).open };
}

describe('the demo, pistons pushed out with air', () => {
  it('has every line signed but the caution on screen, and the gate names that one and the work to come', async () => {
    const { document, footage, open, checklist } = await look('ep-stuck-pistons');
    expect(open.map(({ code, itemIds }) => [code, ...itemIds])).toEqual([['work-open'], ['caution-not-on-screen', 'caption:piston-ejection']]);
    const episode = document.episodes.find(({ id }) => id === 'ep-stuck-pistons')!;
    expect(summariseSafety(document, { work: datedWork(null), footage }, episode).words).toMatch(/^2 things stand between it and its release/);
    const takes = checklist.items.filter(({ signed }) => signed?.about.sort === 'evidence' && signed.about.evidence.kind === 'take' && signed.about.evidence.entryId !== undefined);
    expect(takes.length).toBeGreaterThan(15);
    const departure = checklist.items.find(({ kind }) => kind === 'departure');
    expect(departure).toMatchObject({ state: 'evidenced' });
    expect(departure?.text).toContain('manual hydraulic pressure only, here air from zero up to 2 bar');
  });

  it('is refused at the gate, opens with the last line and the last task, and closes when the take of the pad is no good', async () => {
    const clear = async () => {
      const { document } = await look('ep-stuck-pistons');
      return changeRecord(context, seriesId, 'episode', 'ep-stuck-pistons', document.episodes.find(({ id }) => id === 'ep-stuck-pistons')?.revision ?? 0, { status: 'cleared' });
    };
    expect(await clear()).toMatchObject({ ok: false, error: [{ code: 'gate-closed' }, { code: 'gate-closed' }] });
    const { checklist } = await look('ep-stuck-pistons');
    const item = checklist.items.find(({ id }) => id === 'caption:piston-ejection');
    unwrap(await signItem(context, seriesId, {
      episodeId: 'ep-stuck-pistons', itemId: item?.id, fingerprint: item?.fingerprint, personId: 'person-joan', reason: '', evidence: { kind: 'take', take: 'rough cut 1', timecode: '00:05:10:00' },
    }));
    const last = await look('ep-stuck-pistons');
    expect(last.open.map(({ code }) => code)).toEqual(['work-open']);
    expect(await clear()).toMatchObject({ ok: false, error: [{ code: 'gate-closed' }] });
    for (const { id, revision } of last.document.tasks.filter((task) => task.episodeId === 'ep-stuck-pistons' && task.doneAt === null)) {
      unwrap(await completeTask(context, seriesId, id, revision, { before: 'leave' }));
    }
    expect((await look('ep-stuck-pistons')).open).toEqual([]);
    expect((await clear()).ok).toBe(true);
    unwrap(await correctEntry(context, seriesId, 'demo-rehearsal-pad', 'Marta', { verdict: 'no good' }));
    expect((await look('ep-stuck-pistons')).open.map(({ message }) => message)).toEqual([expect.stringContaining('the take has been marked no good since')]);
  });
});

describe('the demo, a respirator worn', () => {
  it('has the mask seen, checked and spoken of in a take, its caution open, and the rest of the episode open too', async () => {
    const { checklist, open } = await look('ep-three-rims');
    const lines = checklist.items.filter(({ hazard, isNeeded }) => hazard?.id === 'respirator' && isNeeded);
    expect(lines.filter((item) => !isAnswered(item)).map(({ id }) => id)).toEqual(['caption:respirator']);
    expect(checklist.items.find(({ id }) => id.startsWith('worn:Half mask with A2P3'))?.state).toBe('evidenced');
    expect(open.length).toBeGreaterThan(20);
  });
});

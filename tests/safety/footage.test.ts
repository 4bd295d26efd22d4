/** Lines answered with takes of the log, and what opens them again. */
import { describe, expect, it } from 'vitest';
import type { LogEntry } from '@/lib/footage';
import { signItem } from '@/lib/commands';
import { buildChecklist, checkRelease, gatherFootage, judgeGate, listUsableTakes, readTakeEvidence } from '@/lib/safety';
import { unwrap, type Result } from '@/lib/result';
import { memoryContext } from '../commands/memory-store';
import { take } from '../continuity/sample-log';
import { signAll, withHazards } from './sample';

const SERIES = 'series-sample';
const EPISODE = 'episode-1';
const LINE = 'spoken:tyre-inflation';
const format = { rate: { numerator: 50, denominator: 1 }, isDropFrame: false };
const document = withHazards('task-strip', ['tyre-inflating']);
/** 10 s from 01:00:00:00 at 50 frames. */
const good = take({ format, startFrame: 180_000, endFrame: 180_500, number: 3, media: 'A2 / 0003' }, { id: 'take-good', taskId: 'task-strip' });
const codes = (result: Result<unknown>): readonly string[] => (result.ok ? [] : result.error.map(({ code, path }) => `${code} at ${path.join('.')}`));

function start(...log: readonly LogEntry[]) {
  const context = memoryContext(document);
  context.log.push(...log);
  return context;
}

const linesOf = (context: ReturnType<typeof start>) => buildChecklist(context.document(), EPISODE, { footage: gatherFootage(context.log) }).items;

function lineOf(context: ReturnType<typeof start>, id = LINE) {
  const found = linesOf(context).find((item) => item.id === id);
  if (found === undefined) throw new Error(`No line ${id}`);
  return found;
}

function signWith(context: ReturnType<typeof start>, entryId: string, timecode = '', more: Readonly<Record<string, unknown>> = {}, id = LINE) {
  return signItem(context, SERIES, {
    episodeId: EPISODE, itemId: id, fingerprint: lineOf(context, id).fingerprint, personId: 'person-robin', reason: '', evidence: { kind: 'take', take: '', timecode, entryId }, ...more,
  });
}

describe('a line signed with a take of the log', () => {
  it('keeps the take, its words and where it starts', async () => {
    const context = start(good);
    expect(codes(await signWith(context, 'take-good'))).toEqual([]);
    const { state, signed } = lineOf(context);
    expect(state).toBe('evidenced');
    expect(signed?.about).toMatchObject({ evidence: { entryId: 'take-good', take: 'take 3 of “Strip the frame”, A2 / 0003', timecode: '01:00:00:00' } });
  });

  it('takes a timecode within the take, counted as its camera counts, and refuses one outside it', async () => {
    const context = start(good);
    expect(codes(await signWith(context, 'take-good', '01:00:10:00'))).toEqual(['timecode-outside-take at timecode']);
    expect(codes(await signWith(context, 'take-good', '00:59:59:49'))).toEqual(['timecode-outside-take at timecode']);
    expect(codes(await signWith(context, 'take-good', '01:00:09:50'))).toEqual(['timecode-out-of-range at timecode']);
    expect(context.writes()).toBe(0);
    expect(codes(await signWith(context, 'take-good', '01:00:09:49'))).toEqual([]);
  });

  it('asks for a timecode where nobody has read one', async () => {
    const context = start(take({}, { id: 'take-blank', taskId: 'task-strip' }));
    expect(codes(await signWith(context, 'take-blank'))).toEqual(['timecode-missing at timecode']);
    expect(codes(await signWith(context, 'take-blank', '00:10:00:24'))).toEqual([]);
  });

  it('is refused for a take that is no good, of other work, not in the log, or where the line stands in the cut', async () => {
    const context = start(good, take({ verdict: 'no good' }, { id: 'take-bad', taskId: 'task-strip' }), take({}, { id: 'take-other', taskId: 'task-prime' }));
    expect(codes(await signWith(context, 'take-bad'))).toEqual(['take-no-good at entryId']);
    expect(codes(await signWith(context, 'take-other'))).toEqual(['take-of-other-work at entryId']);
    expect(codes(await signWith(context, 'nothing', '', { personId: '' }))).toEqual(['take-missing at entryId', 'signed-by-nobody at personId']);
    expect(codes(await signWith(context, 'take-good', '', {}, 'caption:tyre-inflation'))).toEqual(['take-not-cut at entryId']);
    expect(context.writes()).toBe(0);
  });

  it.each<readonly [string, readonly LogEntry[], string]>([
    ['marked no good', [take({ verdict: 'no good' }, { taskId: 'task-strip', supersedes: 'take-good' })], 'the take has been marked no good since'],
    ['corrected', [take({}, { taskId: 'task-strip', supersedes: 'take-good', text: 'the other hand' })], 'the take has been corrected in the log since'],
    ['taken back', [take({}, { taskId: 'task-strip', supersedes: 'take-good', isWithdrawn: true })], 'the take has been taken back in the log since'],
  ])('is open again with the reason when the take is %s, and the gate says so', async (_what, later, why) => {
    const context = start(good);
    await signWith(context, 'take-good');
    context.log.push(...later);
    expect(lineOf(context)).toMatchObject({ state: 'reopened', why });
    const gate = judgeGate(context.document(), buildChecklist(context.document(), EPISODE, { footage: gatherFootage(context.log) }));
    expect(gate.open.find(({ itemIds }) => itemIds.includes(LINE))?.message).toContain(`It was signed, and ${why}.`);
  });

  it('stands while other takes are logged, and is open without a log', async () => {
    const context = start(good);
    await signWith(context, 'take-good');
    context.log.push(take({}, { taskId: 'task-strip' }));
    expect(lineOf(context).state).toBe('evidenced');
    expect(buildChecklist(context.document(), EPISODE).items.find(({ id }) => id === LINE)).toMatchObject({ state: 'reopened', why: 'the log does not have the take' });
  });

  it('holds the release once its take is no good', async () => {
    const context = memoryContext(signAll(document));
    context.log.push(good);
    await signWith(context, 'take-good');
    const signed = context.document();
    const cleared = { ...signed, episodes: signed.episodes.map((one) => (one.id === EPISODE ? { ...one, status: 'cleared' as const } : one)) };
    expect(checkRelease(signed, cleared, { footage: gatherFootage(context.log) }).ok).toBe(true);
    context.log.push(take({ verdict: 'no good' }, { taskId: 'task-strip', supersedes: 'take-good' }));
    expect(checkRelease(signed, cleared, { footage: gatherFootage(context.log) }).ok).toBe(false);
  });
});

describe('the takes on offer', () => {
  it('are those of the tasks that count, the unsure ones too', () => {
    const [unsure, corrected] = [take({ verdict: 'unsure' }, { taskId: 'task-strip' }), take({}, { taskId: 'task-strip', supersedes: 'take-good' })];
    expect(listUsableTakes(gatherFootage([good, unsure, corrected, take({ verdict: 'no good' }, { taskId: 'task-strip' })]), ['task-strip']).map(({ id }) => id)).toEqual([unsure.id, corrected.id]);
  });

  it('need no camera format for a typed label of the series', () => {
    const blank = take({}, { id: 'blank', taskId: 'task-strip' });
    const evidence = readTakeEvidence(document, gatherFootage([blank]), { kind: 'spoken', taskIds: ['task-strip'] }, { entryId: 'blank', timecode: '00:00:01:00' });
    expect(unwrap(evidence)).toMatchObject({ timecode: '00:00:01:00', entryId: 'blank' });
  });
});

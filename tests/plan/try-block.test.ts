import { describe, expect, it } from 'vitest';
import { instantOf } from '@/lib/calendar';
import { scheduleOf, tryBlock, type BlockTrial, type MoveTarget, type PlanBlock } from '@/lib/plan';
import { unwrap } from '@/lib/result';
import { check, Standing } from '@/lib/scheduling';
import { addMinutes } from '@/lib/units';
import { DEMO_ZONE, demoSeries } from '@/seed/demo';
import { planOf } from './plan-of';

const MONDAY = '2027-02-01';
const now = instantOf(MONDAY, '09:00', DEMO_ZONE);
const document = demoSeries(MONDAY);
const { compiled, plan, schedule } = planOf(document, now, { schedules: 20 });
const standing = new Standing(compiled.problem, scheduleOf(compiled, plan));
const tasks = plan.blocks.filter((block) => block.kind === 'task');

function attempt(block: PlanBlock, target: MoveTarget): BlockTrial {
  return unwrap(tryBlock(compiled, standing, block.id, target));
}

describe('a block moved by hand', () => {
  it('asks the plan as it was solved', () => {
    const back = scheduleOf(compiled, plan);
    expect(back.placements.map(({ activity, crew, start }) => ({ activity, crew, start })).toSorted((a, b) => a.activity.localeCompare(b.activity)))
      .toEqual(schedule.placements.filter(({ activity }) => !activity.startsWith('episode:')).map(({ activity, crew, start }) => ({ activity, crew, start })).toSorted((a, b) => a.activity.localeCompare(b.activity)));
    expect(check(compiled.problem, back).map(({ rule }) => rule).filter((rule) => rule !== 'score')).toEqual([]);
  });

  it('fits where it stands, whatever block it is', () => {
    for (const block of tasks) expect(attempt(block, { at: block.start })).toMatchObject({ verdict: 'fits', start: block.start, breaks: [], givesWay: [] });
  });

  it('is told in words what it breaks outside every session', () => {
    const block = tasks[0]!;
    const answer = attempt(block, { at: instantOf('2027-02-03', '03:00', DEMO_ZONE) });
    expect(answer.verdict).toBe('impossible');
    expect(answer.breaks).toEqual([{ text: 'There is no session Wed 3 Feb 03:00.', change: 'Move it into a session, or add one there.' }]);
  });

  it('is told which session lacks what', () => {
    const noisy = document.tasks.find((task) => task.isNoisy && tasks.some((block) => block.subject.id === task.id))!;
    const quiet = document.sessions.find((session) => !session.isNoiseAllowed && session.start > now)!;
    const answer = attempt(tasks.find((block) => block.subject.id === noisy.id)!, { sessionId: quiet.id });
    expect(answer.verdict).toBe('impossible');
    expect(answer.breaks.map(({ text }) => text).join(' ')).toContain('with noise allowed');
  });

  it('is told which work stands in its way, and nothing is said twice', () => {
    const answers = tasks.map((block) => attempt(block, { at: addMinutes(block.start, 30) })).filter(({ verdict }) => verdict === 'displaces');
    expect(answers.length).toBeGreaterThan(0);
    for (const { breaks, givesWay } of answers) {
      expect(givesWay.length).toBeGreaterThan(0);
      expect(breaks.length).toBeGreaterThan(0);
      expect(new Set(breaks.map(({ text }) => text)).size).toBe(breaks.length);
    }
  });

  it('finds the first place in a session', () => {
    const block = tasks.find(({ start }) => start > addMinutes(now, 7 * 1440))!;
    const session = document.sessions.find((one) => one.start <= block.start && block.start < one.end)!;
    const answer = attempt(block, { sessionId: session.id });
    expect(answer.verdict).toBe('fits');
    expect(answer.start).toBeGreaterThanOrEqual(session.start);
    expect(answer.start).toBeLessThanOrEqual(block.start);
  });

  it('is refused for a trip and for work that is gone', () => {
    for (const id of ['away:x', 'task:gone', plan.blocks.find(({ kind }) => kind === 'drop-off')!.id]) {
      const answer = tryBlock(compiled, standing, id, { at: now });
      expect(answer.ok ? [] : answer.error.map(({ code }) => code)).toEqual(['block-not-movable']);
    }
  });
});

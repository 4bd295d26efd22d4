import { describe, expect, it } from 'vitest';
import type { Task, ThreePoint } from '@/lib/build';
import { minutes } from '@/lib/units';
import { at, sampleSeries, withTask } from '../sample-series';
import { changed, codesOf, issuesOf } from './rule-cases';

const sample = sampleSeries();
const effort = (low: number, likely: number, high: number): ThreePoint => ({ low: minutes(low), likely: minutes(likely), high: minutes(high) });

describe('hands-on time', () => {
  it.each([
    [effort(1, 1, 1), []], [effort(60, 60, 90), []],
    [effort(0, 60, 90), ['effort-not-positive']], [effort(-60, 60, 90), ['effort-not-positive']],
    [effort(61, 60, 90), ['effort-out-of-order']], [effort(30, 91, 90), ['effort-out-of-order']],
  ])('judges %j as %j', (value, codes) => {
    expect(codesOf(withTask('task-clean', { effort: value }))).toEqual(codes);
  });

  it('names the task, the time and the field', () => {
    const [found] = issuesOf(withTask('task-clean', { effort: effort(-90, 60, 90) }), 'effort-not-positive');
    expect(found?.message).toBe('The task “Clean the frame” has a smallest hands-on time of -1 h 30 min; it must be more than 0 min.');
    expect(found?.path).toEqual(['effort', 'low']);
  });

  it('refuses a shot that takes less than no time', () => {
    const shots = (sample.tasks[0]?.shots ?? []).map((shot, index) => ({ ...shot, time: minutes(index === 0 ? 0 : -1) }));
    expect(issuesOf(withTask('task-strip', { shots }), 'shot-time-negative').map(({ path }) => path)).toEqual([['shots', 1, 'time']]);
  });
});

describe('coats', () => {
  it.each(['paint', 'filler'] as const)('asks for a coat in %s work', (category) => {
    const [found] = issuesOf(withTask('task-clean', { category }), 'missing-coats');
    expect(found?.severity).toBe('stop');
    expect(found?.message).toContain('“Clean the frame”');
    expect(found?.path).toEqual(['coats']);
  });

  it('asks for none in other work', () => {
    expect(codesOf(withTask('task-clean', { category: 'welding' }))).toEqual([]);
  });
});

describe('crew', () => {
  it('stops at a skill that nobody has, and at one that too few have', () => {
    expect(codesOf(withTask('task-clean', { crew: [{ skill: 'upholstery', count: 1 }] }))).toContain('skill-nobody-has');
    expect(codesOf(withTask('task-clean', { crew: [{ skill: 'welding', count: 2 }] }))).toContain('skill-held-by-too-few');
    expect(codesOf(withTask('task-clean', { crew: [{ skill: 'welding', count: 1 }] }))).toEqual([]);
  });

  it('stops at a crew larger than the people there are', () => {
    expect(codesOf(withTask('task-clean', { crew: [{ skill: null, count: 2 }] }))).toEqual([]);
    const [found] = issuesOf(withTask('task-clean', { crew: [{ skill: null, count: 3 }] }), 'crew-larger-than-people');
    expect(found?.message).toBe('The task “Clean the frame” needs 3 people at once, and the series has 2 people.');
    expect(codesOf(sampleSeries({ outsideJobs: changed(sample.outsideJobs, 'job-wheel', { crew: 3 }) }))).toEqual(['crew-larger-than-people']);
  });

  it('refuses a count of no people', () => {
    expect(codesOf(withTask('task-clean', { crew: [{ skill: null, count: 0 }] }))).toEqual(['crew-count-not-positive']);
    expect(codesOf(sampleSeries({ outsideJobs: changed(sample.outsideJobs, 'job-wheel', { crew: 0 }) }))).toEqual(['crew-count-not-positive']);
  });

  it('says nothing about done tasks, or while there are no people', () => {
    const done: Partial<Task> = { crew: [{ skill: 'upholstery', count: 5 }], doneAt: at('2026-12-01', '19:00') };
    expect(codesOf(withTask('task-clean', done))).toEqual([]);
    expect(codesOf(sampleSeries({ people: [], sessions: [] }))).toEqual([]);
  });
});

describe('sessions that could hold a task', () => {
  it('lets a task in one go fill its longest session and not a minute more', () => {
    expect(codesOf(withTask('task-paint', { effort: effort(60, 420, 480) }))).toEqual([]);
    const [found] = issuesOf(withTask('task-paint', { effort: effort(60, 421, 480) }), 'task-longer-than-any-session');
    expect(found?.severity).toBe('stop');
    expect(found?.message).toBe('The task “Paint the frame” is to be done in one go and takes 7 h 1 min with its filming, '
      + 'but the longest session that could hold it is “Saturday” on Sat 5 Dec 10:00, 7 h long.');
    expect(found?.fix).toBe('Split it into tasks of 7 h or less.');
  });

  it('counts the during-shots and not the before-shots', () => {
    const shot = { id: 's', name: 'Brush', time: minutes(1), mustHave: true, filmedAt: null };
    expect(codesOf(withTask('task-paint', { effort: effort(60, 420, 480), shots: [{ ...shot, purpose: 'before' }] }))).toEqual([]);
    expect(codesOf(withTask('task-paint', { effort: effort(60, 420, 480), shots: [{ ...shot, purpose: 'during' }] }))).toEqual(['task-longer-than-any-session']);
  });

  it('says nothing about work that may pause, done work, or a series without sessions', () => {
    expect(codesOf(withTask('task-paint', { effort: effort(60, 900, 900), inOneGo: false }))).toEqual([]);
    expect(codesOf(withTask('task-paint', { effort: effort(60, 900, 900), doneAt: at('2026-12-01', '19:00') }))).toEqual([]);
    expect(codesOf({ ...withTask('task-paint', { effort: effort(60, 900, 900) }), sessions: [] })).toEqual([]);
  });

  it('looks only at sessions with the place, the camera, the daylight, the quiet and the skills', () => {
    const saturdays = sample.sessions.filter((session) => session.hasDaylight);
    const long = withTask('task-paint', { effort: effort(60, 400, 480) });
    for (const more of [{ placeIds: ['place-bench'] }, { isRecording: false }, { crewIds: ['person-kim'] }]) {
      const sessions = long.sessions.map((session) => (saturdays.some(({ id }) => id === session.id) ? { ...session, ...more } : session));
      expect(codesOf({ ...long, sessions })).toContain('task-longer-than-any-session');
    }
    const evenings = sample.sessions.filter((session) => !session.hasDaylight);
    expect(codesOf({ ...sample, sessions: evenings })).toEqual(['no-session-for-task']);
    expect(issuesOf({ ...sample, sessions: evenings }, 'no-session-for-task')[0]?.message)
      .toBe('The task “Clean the frame” needs a session in “Main bay”, with noise allowed, with 1 person; there is none yet.');
  });
});

describe('pins and before-shots', () => {
  it('points out a fixed start outside the sessions of its place', () => {
    expect(codesOf(withTask('task-clean', { pinnedStart: at('2026-12-05', '10:00') }))).toEqual([]);
    const [found] = issuesOf(withTask('task-clean', { pinnedStart: at('2026-12-05', '17:00') }), 'pin-outside-sessions');
    expect(found?.severity).toBe('warn');
    expect(found?.message).toContain('Sat 5 Dec 17:00');
  });

  it('points out a filmed irreversible task without a before-shot', () => {
    const [found] = issuesOf(withTask('task-strip', { shots: [] }), 'before-shot-missing');
    expect(found?.severity).toBe('warn');
    expect(codesOf(withTask('task-strip', { shots: [], coverage: 'none' }))).toEqual([]);
    expect(codesOf(withTask('task-strip', { shots: [], irreversible: false }))).toEqual([]);
  });
});

describe('before-shots of work that is done', () => {
  const [before, during] = sample.tasks.find(({ id }) => id === 'task-strip')!.shots;
  const doneAt = at('2026-12-01', '20:00');

  it('points out a must-have that was not filmed before a step that cannot be undone', () => {
    const [found] = issuesOf(withTask('task-strip', { doneAt }), 'before-shot-missed');
    expect(found?.severity).toBe('warn');
    expect(found?.message).toBe('The task “Strip the frame” is done and cannot be undone, but its before-shot “Frame as bought, all round” is not marked as filmed.');
  });

  it('says nothing once it is filmed, where it is not a must-have, or where the step can be done again', () => {
    expect(issuesOf(withTask('task-strip', { doneAt, shots: [{ ...before!, filmedAt: doneAt }, during!] }), 'before-shot-missed')).toEqual([]);
    expect(issuesOf(withTask('task-strip', { doneAt, shots: [{ ...before!, mustHave: false }] }), 'before-shot-missed')).toEqual([]);
    expect(issuesOf(withTask('task-strip', { doneAt, irreversible: false }), 'before-shot-missed')).toEqual([]);
  });
});

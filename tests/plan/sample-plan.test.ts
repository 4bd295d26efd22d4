import { describe, expect, it } from 'vitest';
import { compilePlan } from '@/lib/plan';
import { celsius, minutes, minutesBetween } from '@/lib/units';
import { at, sampleSeries, withTask } from '../build/sample-series';
import { blockOf, planOf } from './plan-of';

const now = at('2026-11-30', '09:00');

describe('the plan of the sample series', () => {
  const { plan } = planOf(sampleSeries(), now);

  it('finds a place for all work', () => {
    expect(plan.unplaced).toEqual([]);
  });

  it('films the before-shots of the irreversible task ahead of it', () => {
    expect(blockOf(plan, 'before-shot:task-strip').end).toBeLessThanOrEqual(blockOf(plan, 'task:task-strip').start);
  });

  it('plans no before-shots that are in the can already, and books the task no longer for it', () => {
    const strip = sampleSeries().tasks.find((task) => task.id === 'task-strip')!;
    const shots = strip.shots.map((shot) => (shot.purpose === 'before' ? { ...shot, filmedAt: now } : shot));
    const filmed = planOf(withTask('task-strip', { shots }), now).plan;
    expect(filmed.blocks.some((block) => block.id === 'before-shot:task-strip')).toBe(false);
    const worked = blockOf(filmed, 'task:task-strip').pieces.reduce((sum, piece) => sum + minutesBetween(piece.start, piece.end), 0);
    expect(worked).toBe(110);
  });

  it('takes no part away or on before the shots that show it as it is', () => {
    const shots = sampleSeries().tasks.find((task) => task.id === 'task-strip')!.shots;
    const shown = (shot: (typeof shots)[number]) => ({ ...shot, states: [{ partId: 'part-wheel', stateId: 'wheel-bare' }] });
    const ahead = planOf(withTask('task-strip', { shots: shots.map((shot) => (shot.purpose === 'before' ? shown(shot) : shot)) }), now).plan;
    expect(blockOf(ahead, 'before-shot:task-strip').end).toBeLessThanOrEqual(blockOf(ahead, 'drop-off:job-wheel').start);
    expect(blockOf(plan, 'before-shot:task-strip').end).toBeGreaterThan(blockOf(plan, 'drop-off:job-wheel').start);
    const during = planOf(withTask('task-strip', { shots: shots.map((shot) => (shot.purpose === 'during' ? shown(shot) : shot)) }), now).plan;
    expect(blockOf(during, 'task:task-strip').end).toBeLessThanOrEqual(blockOf(during, 'drop-off:job-wheel').start);
    const fitted = [{ ...shots[1]!, states: [{ partId: 'part-wheel', stateId: 'wheel-fitted' }] }];
    const after = planOf(withTask('task-closing', { parts: [], shots: fitted }), now).plan;
    expect(blockOf(after, 'task:task-closing').start).toBeGreaterThanOrEqual(blockOf(after, 'task:task-fit').end);
  });

  it('books the mean hands-on time and the shots that are taken during the work', () => {
    const strip = blockOf(plan, 'task:task-strip');
    const worked = strip.pieces.reduce((sum, piece) => sum + minutesBetween(piece.start, piece.end), 0);
    // (60 + 4 x 90 + 180) / 6 = 100 min of work and 10 min of filming.
    expect(worked).toBe(110);
  });

  it('leaves the primer alone until its recoat window opens in a 12 °C workshop', () => {
    const wait = minutesBetween(blockOf(plan, 'task:task-prime').end, blockOf(plan, 'task:task-paint').start);
    // 120 min at 20 °C, rate 2^(-8/10): 209 min.
    expect(wait).toBeGreaterThanOrEqual(209);
  });

  it('paints before the recoat window closes', () => {
    const wait = minutesBetween(blockOf(plan, 'task:task-prime').end, blockOf(plan, 'task:task-paint').start);
    expect(wait).toBeLessThanOrEqual(2880);
  });

  it('shows the drying coat with its stages in order', () => {
    const { stages } = blockOf(plan, 'cure:task-paint');
    expect(stages!.touchDry).toBeLessThan(stages!.recoatFrom);
    expect(stages!.recoatFrom).toBeLessThan(stages!.handle);
    expect(stages!.recoatUntil).toBeNull();
  });

  it('does not fit the wheel before it is collected', () => {
    expect(blockOf(plan, 'task:task-fit').start).toBeGreaterThanOrEqual(blockOf(plan, 'collection:job-wheel').end);
  });

  it('counts the working days of the outside trade between drop-off and collection', () => {
    const away = blockOf(plan, 'away:job-wheel');
    // Mean of 3, 4, 8 days is 4.5, booked as 5 opening days: never less than 5 days on the clock.
    expect(minutesBetween(away.start, away.end)).toBeGreaterThan(5 * 1440 - 17 * 60);
  });

  it('puts noisy work only where noise is allowed and filmed work only where the camera is', () => {
    const sessions = sampleSeries().sessions;
    const sessionOf = (id: string) => blockOf(plan, id).pieces.map((piece) => sessions.find((session) => session.start <= piece.start && piece.end <= session.end));
    expect(sessionOf('task:task-clean').every((session) => session?.isNoiseAllowed)).toBe(true);
    expect(sessionOf('task:task-closing').every((session) => session?.isRecording)).toBe(true);
  });

  it('says why a block is not earlier', () => {
    expect(blockOf(plan, 'task:task-clean').because.length).toBeGreaterThan(0);
    expect(blockOf(plan, 'task:task-paint').because.map((because) => because.text).join(' ')).not.toBe('');
  });

  it('names the coat, the moment and what warmth would buy where a coat binds', () => {
    const texts = blockOf(planOf(sampleSeries({ series: { ...sampleSeries().series, workshopTemperature: celsius(0), fillLimit: 1 } }), now).plan, 'task:task-fit').because;
    const coat = texts.find((because) => because.text.includes('Green gloss'));
    expect(coat?.text).toContain('somebody must keep it that warm');
    expect(coat?.change).toContain('20 °C');
  });

  it('tells each episode when its recording is complete', () => {
    expect(plan.episodes.map((episode) => [episode.episodeId, episode.late])).toEqual([['episode-1', 0], ['episode-2', 0]]);
  });

  it('places nothing before now', () => {
    const later = planOf(sampleSeries(), at('2026-12-03', '19:00')).plan;
    expect(Math.min(...later.blocks.filter((block) => block.kind !== 'cure' && block.kind !== 'away').map((block) => block.start))).toBeGreaterThanOrEqual(at('2026-12-03', '19:00'));
  });
});

describe('work that no session can hold', () => {
  it('is left out with what is missing, and so is what waits for it', () => {
    const { plan } = planOf(withTask('task-prime', { effort: { low: minutes(500), likely: minutes(500), high: minutes(500) } }), now);
    const prime = plan.unplaced.find((work) => work.subject.id === 'task-prime');
    expect(prime?.because[0]?.text).toBe('Takes 8 h 20 min in one go, and the longest time ahead at Spray corner, at 8 °C or more is 7 h.');
    const paint = plan.unplaced.find((work) => work.subject.id === 'task-paint');
    expect(paint?.because[0]?.text).toContain('Prime the frame');
  });

  it('names the skill that too few people have', () => {
    const { plan } = planOf(withTask('task-fit', { crew: [{ skill: 'welding', count: 2 }] }), now);
    expect(plan.unplaced.find((work) => work.subject.id === 'task-fit')?.because[0]?.text).toBe('Needs 2 people with the skill, and only Robin has it.');
  });
});

describe('a series that cannot be planned', () => {
  it('is told that there is no session ahead', () => {
    const result = compilePlan({ document: sampleSeries(), now: at('2027-03-01', '09:00'), previousBlocks: new Map() });
    expect(result.ok ? [] : result.error.map((found) => found.code)).toEqual(['no-sessions-ahead']);
  });

  it('is told that all work is done', () => {
    const document = sampleSeries();
    const done = { ...document, tasks: document.tasks.map((task) => ({ ...task, doneAt: now })), outsideJobs: [] };
    const result = compilePlan({ document: done, now, previousBlocks: new Map() });
    expect(result.ok ? [] : result.error.map((found) => found.code)).toEqual(['nothing-to-plan']);
  });
});

describe('work that is done', () => {
  it('still makes the next coat wait', () => {
    const laidAt = at('2026-12-05', '10:00');
    const document = sampleSeries();
    const tasks = document.tasks.map((task) => (['task-strip', 'task-clean', 'task-prime', 'task-paint'].includes(task.id) ? { ...task, doneAt: laidAt } : task));
    const { plan } = planOf({ ...document, tasks }, laidAt);
    // Handle 1440 min at 20 °C is 2508 min at 12 °C: Monday 7 Dec 03:48.
    expect(blockOf(plan, 'task:task-fit').start).toBeGreaterThanOrEqual(laidAt + 2508 * 60_000);
    expect(blockOf(plan, 'cure:task-paint').end).toBe(laidAt + 2508 * 60_000);
  });

  it('leaves only the collection of a job that is away, not before the promised day', () => {
    const document = sampleSeries();
    const jobs = document.outsideJobs.map((job) => ({ ...job, droppedOffAt: at('2026-11-27', '09:00'), promisedFor: '2026-12-11' }));
    const { plan } = planOf({ ...document, outsideJobs: jobs }, now);
    expect(plan.blocks.some((block) => block.id === 'drop-off:job-wheel')).toBe(false);
    expect(blockOf(plan, 'collection:job-wheel').start).toBeGreaterThanOrEqual(at('2026-12-11', '08:00'));
  });
});

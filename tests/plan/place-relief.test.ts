import { describe, expect, it } from 'vitest';
import type { SeriesDocument } from '@/lib/build';
import { explainUnplaced, scheduleOf } from '@/lib/plan';
import { addMinutes, minutes } from '@/lib/units';
import { at, sampleSeries, withTask } from '../build/sample-series';
import { blockOf, planOf } from './plan-of';

const now = at('2026-11-30', '09:00');
const sample = sampleSeries();
const first = (count: number): SeriesDocument => sampleSeries({ sessions: sample.sessions.slice(0, count) });

/** What is told of the first piece of work of a task or job that a plan of the document leaves out. */
function ask(document: SeriesDocument, id: string) {
  const { compiled, plan } = planOf(document, now);
  const work = plan.unplaced.find(({ subject }) => subject.id === id)!;
  return { ...explainUnplaced(compiled, scheduleOf(compiled, plan), work), plan };
}

const textsOf = ({ reliefs }: ReturnType<typeof ask>): readonly string[] => reliefs.map(({ text }) => text);

describe('what would give left out work a place', () => {
  it('is a skill for somebody else, with the start that a plan with it has too', () => {
    const document = withTask('task-fit', { crew: [{ skill: 'welding', count: 2 }] });
    const { reliefs } = ask(document, 'task-fit');
    expect(reliefs.map(({ text }) => text)).toEqual(['Teach Kim “welding”, or find somebody with that skill for the same sessions: it then has a place Sat 12 Dec 13:28.']);
    const people = document.people.map((person) => (person.name === 'Kim' ? { ...person, skills: [...person.skills, 'welding'] } : person));
    const { plan } = planOf({ ...document, people }, now);
    expect(plan.unplaced).toEqual([]);
    expect(blockOf(plan, 'task:task-fit').start).toBe(reliefs[0]?.start);
  });

  it('names the one session that needs the camera, and it is enough', () => {
    const sessions = sample.sessions.map((session) => ({ ...session, isRecording: false }));
    expect(textsOf(ask(sampleSeries({ sessions }), 'task-strip'))[0]).toBe('Set up the camera in the session of Tue 1 Dec 18:30: it then has a place Tue 1 Dec 18:50.');
    const withCamera = planOf(sampleSeries({ sessions: sessions.map((session, k) => ({ ...session, isRecording: k === 0 })) }), now).plan;
    expect(withCamera.unplaced.map(({ subject }) => subject.id)).not.toContain('task-strip');
  });

  it('is more hours of one session, as few as do', () => {
    const document = first(4);
    expect(textsOf(ask(document, 'task-prime'))[0]).toBe('Stay 3 hours longer in the session of Sat 5 Dec 10:00: it then has a place Sat 5 Dec 14:00.');
    const longer = (hours: number) => ({ ...document, sessions: document.sessions.map((session, k) => (k === 2 ? { ...session, end: addMinutes(session.end, hours * 60) } : session)) });
    expect(planOf(longer(2), now).plan.unplaced.map(({ subject }) => subject.id)).toContain('task-paint');
    expect(planOf(longer(3), now).plan.unplaced.map(({ subject }) => subject.id)).not.toContain('task-paint');
  });

  it('is one more session, and the work that comes before goes with it', () => {
    const [, add] = textsOf(ask(first(4), 'task-paint'));
    expect(add).toBe('Add a session with Robin and Kim, Thu 10 Dec 18:30 for 3 h: it then has a place Thu 10 Dec 18:30.');
  });

  it('is the slack of a session, and no other change is smaller', () => {
    const document = sampleSeries({ series: { ...sample.series, fillLimit: 0.3 } });
    expect(textsOf(ask(document, 'task-paint'))[0]).toBe('Book Robin for all of the session of Sat 19 Dec 10:00, with nothing in reserve: it then has a place Sat 19 Dec 14:39.');
  });

  it('is free hours for the trips of an outside job', () => {
    const people = sample.people.map((person) => ({ ...person, hours: [] }));
    expect(textsOf(ask(sampleSeries({ people }), 'job-wheel'))).toEqual(['Let Robin and Kim be free for the trips of Mon 30 Nov 09:00 and Mon 7 Dec 08:00: it then has a place Mon 7 Dec 08:00.']);
  });

  it('is a pause, where no session is long enough in one go', () => {
    const long = minutes(450);
    const document = withTask('task-clean', { inOneGo: true, effort: { low: long, likely: long, high: long } });
    const texts = textsOf(ask(document, 'task-clean'));
    expect(texts[0]).toContain('Let “Clean the frame” pause from one session to the next: it then has a place ');
    expect(textsOf(ask(withTask('task-prime', { effort: { low: long, likely: long, high: long } }), 'task-prime')).join()).not.toContain('pause');
  });

  it('is to plan again, where nothing is in the way any more', () => {
    const { compiled, plan } = planOf(sample, now);
    const kept = { ...plan, blocks: plan.blocks.filter(({ id }) => id !== 'task:task-closing') };
    const { reliefs, tried } = explainUnplaced(compiled, scheduleOf(compiled, kept), { subject: { kind: 'task', id: 'task-closing' }, title: '', because: [] });
    expect(reliefs.map(({ text }) => text)).toEqual([`Plan again as things stand: nothing is in its way any more: it then has a place Sat 12 Dec 14:38.`]);
    expect(tried).toBe(1);
    expect(explainUnplaced(compiled, scheduleOf(compiled, plan), { subject: { kind: 'task', id: 'gone' }, title: '', because: [] })).toMatchObject({ reliefs: [], problem: 'There is no such work to plan any more: plan again.' });
  });
});

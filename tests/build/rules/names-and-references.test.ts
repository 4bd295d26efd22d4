import { describe, expect, it } from 'vitest';
import { sampleSeries, withTask } from '../sample-series';
import { changed, codesOf, issuesOf } from './rule-cases';

const sample = sampleSeries();

describe('names', () => {
  it('takes 200 characters and refuses 201', () => {
    expect(codesOf(withTask('task-strip', { name: 'n'.repeat(200) }))).toEqual([]);
    expect(codesOf(withTask('task-strip', { name: 'n'.repeat(201) }))).toEqual(['name-too-long']);
  });

  it('tells how long a name of 10,000 characters is, without repeating it', () => {
    const [found] = issuesOf(withTask('task-strip', { name: 'x'.repeat(10_000) }), 'name-too-long');
    expect(found?.message).toContain('10,000 characters; at most 200 fit');
    expect(found?.message.length).toBeLessThan(200);
    expect(found?.fix).toContain('9,800');
  });

  it('refuses a name of blanks, and empty names of states and shots', () => {
    expect(issuesOf(sampleSeries({ places: changed(sample.places, 'place-bench', { name: '   ' }) }), 'name-missing')[0]?.message)
      .toBe('The place has no name.');
    const parts = changed(sample.parts, 'part-wheel', { states: [{ id: 'wheel-bare', name: '' }, { id: 'wheel-coated', name: 'coated' }, { id: 'wheel-fitted', name: 'fitted' }] });
    expect(issuesOf(sampleSeries({ parts }), 'name-missing')[0]?.path).toEqual(['states', 0, 'name']);
    const shots = sample.tasks[0]?.shots.map((shot) => ({ ...shot, name: '' })) ?? [];
    expect(issuesOf(withTask('task-strip', { shots }), 'name-missing').map(({ path }) => path)).toEqual([['shots', 0, 'name'], ['shots', 1, 'name']]);
  });
});

describe('references', () => {
  it.each([
    ['place', withTask('task-strip', { placeId: 'gone' }), ['placeId']],
    ['episode', withTask('task-strip', { episodeId: 'gone' }), ['episodeId']],
    ['part', withTask('task-strip', { parts: [{ partId: 'gone', from: null, to: null }] }), ['parts', 0, 'partId']],
    ['equipment', withTask('task-prime', { equipmentIds: ['equipment-gun', 'gone'] }), ['equipmentIds', 1]],
    ['material', withTask('task-prime', { coats: [{ id: 'c', materialId: 'gone' }] }), ['coats', 0, 'materialId']],
    ['trade', sampleSeries({ outsideJobs: changed(sample.outsideJobs, 'job-wheel', { tradeId: 'gone' }) }), ['tradeId']],
    ['task', sampleSeries({ links: changed(sample.links, 'link-recoat', { to: { kind: 'task', id: 'gone' } }) }), ['to']],
    ['person', sampleSeries({ sessions: changed(sample.sessions, 'session-1', { crewIds: ['gone'] }) }), ['crewIds', 0]],
    ['place', sampleSeries({ parts: changed(sample.parts, 'part-frame', { whereabouts: { kind: 'place', id: 'gone' } }) }), ['whereabouts', 'id']],
  ])('finds a %s that is not there', (kind, document, path) => {
    const found = issuesOf(document, 'reference-missing');
    expect(found.map((one) => one.path)).toEqual([path]);
    expect(found[0]?.severity).toBe('stop');
    expect(found[0]?.subjects.at(-1)).toEqual({ kind, id: 'gone', name: '' });
  });
});

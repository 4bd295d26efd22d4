import { describe, expect, it } from 'vitest';
import type { Link } from '@/lib/build';
import { minutes } from '@/lib/units';
import { sampleSeries, withTask } from '../sample-series';
import { changed, codesOf, issuesOf } from './rule-cases';

const sample = sampleSeries();
const withLink = (id: string, more: Partial<Link>) => sampleSeries({ links: changed(sample.links, id, more) });
const backwards: Link = {
  kind: 'link', id: 'link-back', revision: 1, order: 2, name: 'Fit first', from: { kind: 'task', id: 'task-fit' }, to: { kind: 'task', id: 'task-clean' },
  stage: null, minWait: minutes(0), maxWait: null, clock: 'elapsed',
};

describe('windows of a link', () => {
  it.each([
    [{ minWait: minutes(120), maxWait: minutes(120) }, []],
    [{ minWait: minutes(121), maxWait: minutes(120) }, ['window-reversed']],
    [{ minWait: minutes(0) }, []], [{ minWait: minutes(-1) }, ['wait-negative']],
    [{ maxWait: minutes(119) }, ['window-shorter-than-stage']],
  ])('judges %j between primer and paint as %j', (more, codes) => {
    expect(codesOf(withLink('link-recoat', more))).toEqual(codes);
  });

  it('tells the stage, the coat, the time and the temperature of a window that is too short', () => {
    const [found] = issuesOf(withLink('link-recoat', { maxWait: minutes(60) }), 'window-shorter-than-stage');
    expect(found?.message).toBe('The link “Primer ready for paint” allows at most 1 h, but the coat of “Grey primer” from “Prime the frame” is ready to recoat only after 2 h at 20 °C.');
    expect(found?.subjects.map(({ id }) => id)).toEqual(['link-recoat', 'task-prime', 'material-primer']);
  });

  it('refuses to wait for a coat that is not laid, and for itself', () => {
    expect(codesOf(withLink('link-recoat', { from: { kind: 'task', id: 'task-clean' } }))).toEqual(['stage-without-coat']);
    expect(codesOf(withLink('link-recoat', { from: { kind: 'outsideJob', id: 'job-wheel' } }))).toEqual(['stage-without-coat']);
    expect(codesOf(withLink('link-recoat', { to: { kind: 'task', id: 'task-prime' } }))).toContain('link-to-itself');
  });
});

describe('order of work', () => {
  it('names the tasks of a ring in order and the link to remove', () => {
    const found = issuesOf(sampleSeries({ links: [...sample.links, backwards] }), 'work-goes-round');
    expect(found).toHaveLength(1);
    expect(found[0]?.message).toContain('“Clean the frame” → “Prime the frame” → “Paint the frame” → “Fit the wheel” → “Clean the frame”.');
    expect(found[0]?.fix).toBe('Remove the link “Fit first”.');
    expect(found[0]?.subjects.map(({ id }) => id)).toContain('link-back');
  });

  it('is content with the same link the other way round', () => {
    expect(codesOf(sampleSeries({ links: [...sample.links, { ...backwards, from: backwards.to, to: backwards.from }] }))).toEqual([]);
  });

  it('finds a ring of part states alone and says which part to take out', () => {
    const ring = withTask('task-closing', { parts: [{ partId: 'part-frame', from: 'frame-wheeled', to: null }, { partId: 'part-wheel', from: 'wheel-bare', to: null }] });
    const [found] = issuesOf(ring, 'work-goes-round');
    expect(found?.message).toContain('“Powder coat the wheel”');
    expect(found?.fix).toMatch(/^Take the part “(Frame|Wheel)” out of /u);
  });

  it('finds each of two separate rings', () => {
    const links = [
      { ...backwards, id: 'a', from: { kind: 'task', id: 'task-clean' }, to: { kind: 'task', id: 'task-strip' } },
      { ...backwards, id: 'b', from: { kind: 'task', id: 'task-paint' }, to: { kind: 'task', id: 'task-prime' } },
    ] as const;
    expect(issuesOf(sampleSeries({ links }), 'work-goes-round')).toHaveLength(2);
  });
});

import { describe, expect, it } from 'vitest';
import type { Series } from '@/lib/build';
import { sampleSeries } from '../sample-series';
import { codesOf, issuesOf } from './rule-cases';

const sample = sampleSeries();
const withSeries = (more: Partial<Series>) => sampleSeries({ series: { ...sample.series, ...more } });

describe('rules of the series itself', () => {
  it('refuses a zone that does not exist and suggests a near one', () => {
    const [found] = issuesOf(withSeries({ zone: 'Europe/Lodnon' }), 'unknown-zone');
    expect(found?.severity).toBe('stop');
    expect(found?.message).toBe('The series “Arch build”: There is no time zone "Europe/Lodnon".');
    expect(found?.fix).toContain('Europe/London');
    expect(found?.path).toEqual(['zone']);
  });

  it('still tells other faults in UTC while the zone is unknown', () => {
    const [session] = sample.sessions;
    if (session === undefined) throw new Error('The sample has sessions');
    const broken = { ...withSeries({ zone: 'Nowhere' }), sessions: [{ ...session, end: session.start }] };
    expect(issuesOf(broken, 'session-ends-before-start')[0]?.message).toContain('UTC');
  });

  it.each([
    [{ cadenceDays: 1 }, []], [{ cadenceDays: 0 }, ['cadence']], [{ cadenceDays: 1.5 }, ['cadence']],
    [{ cadenceDays: 365 }, []], [{ cadenceDays: 366 }, ['cadence']],
    [{ leadDays: 0 }, []], [{ leadDays: -1 }, ['lead-days']], [{ leadDays: 365 }, []], [{ leadDays: 366 }, ['lead-days']],
    [{ fillLimit: 1 }, []], [{ fillLimit: 0.01 }, []], [{ fillLimit: 0 }, ['fill-limit']], [{ fillLimit: 1.01 }, ['fill-limit']],
    [{ runtime: { min: 20, target: 20, max: 20 } }, []],
    [{ runtime: { min: 21, target: 20, max: 25 } }, ['runtime-out-of-range']],
    [{ runtime: { min: 15, target: 26, max: 25 } }, ['runtime-out-of-range']],
    [{ runtime: { min: 0, target: 20, max: 25 } }, ['runtime-out-of-range']],
    [{ frameRate: { numerator: 30_000, denominator: 1001 } }, []],
    [{ frameRate: { numerator: 25, denominator: 0 } }, ['frame-rate']],
    [{ frameRate: { numerator: 23.976, denominator: 1 } }, ['frame-rate']],
  ])('judges %j as %j', (more, codes) => {
    expect(codesOf(withSeries(more))).toEqual(codes);
  });
});

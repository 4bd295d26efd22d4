import { describe, expect, test } from 'vitest';
import { CHECKS, gatherFacts, groupByEpisode, runChecks } from '@/lib/continuity';
import { NO_TASK_HAZARDS } from '@/lib/build';
import { addMinutes } from '@/lib/units';
import { at, sampleSeries, sampleTask } from '../build/sample-series';
import { cameraA, find, later, R25, shot, tue } from './check-case';
import { humid, segment, STORY_CASES } from './check-cases-story';
import { promise, WORK_CASES } from './check-cases-work';
import { block, entry, LOOK, NOW, take } from './sample-log';

const CASES = [...WORK_CASES, ...STORY_CASES];

/** An open promise, and a last episode that has come so far. */
const ending = (status: 'recorded' | 'cut') =>
  sampleSeries({ promises: [{ ...promise, dueId: null }], episodes: sampleSeries().episodes.map((episode) => (episode.id === 'episode-2' ? { ...episode, status } : episode)) });

describe('the checks', () => {
  test.each(CASES.map(([number, what, wrong, right]) => ({ number, what, wrong, right })))('check $number finds $what, and nothing where it is right', ({ number, wrong, right }) => {
    const found = find(number, wrong);
    expect(found.length).toBeGreaterThan(0);
    for (const { message, fix, key } of found) {
      expect(message).toMatch(/\.$/);
      expect(message).not.toMatch(/undefined|null|NaN|Invalid/);
      expect(fix).toMatch(/\.$/);
      expect(key).not.toBe('');
    }
    expect(find(number, right)).toEqual([]);
  });

  test('all forty are computed, each has its number, and each has a case', () => {
    expect(CHECKS.map(({ number }) => number)).toEqual(Array.from({ length: 40 }, (_, index) => index + 1));
    expect(new Set(CASES.map(([number]) => number)).size).toBe(CHECKS.length);
  });

  test('an open promise blocks once the series is over', () => {
    expect(find(21, { document: sampleSeries({ promises: [promise] }), now: at('2027-01-05', '12:00') })[0]?.severity).toBe('stop');
    expect(find(21, { document: sampleSeries({ promises: [{ ...promise, closure: 'kept' }] }), now: at('2027-01-05', '12:00') })).toEqual([]);
  });

  test('an open promise blocks as soon as the last episode is cut, and not while it is only recorded', () => {
    expect(find(21, { document: ending('cut') }).map(({ severity }) => severity)).toEqual(['stop']);
    expect(find(21, { document: ending('recorded') })).toEqual([]);
  });

  test('a waived finding stays in the list with its reason, and counts again once the waiver is taken back', () => {
    const wrong = take({ isReenacted: true }, { id: 'take-x' });
    const waiver = entry({ id: 'waiver-x', kind: 'waiver', text: 'obvious in the picture', waiver: { check: 20, key: 'take-x' } });
    expect(find(20, { entries: [wrong, waiver] })[0]?.waived?.reason).toBe('obvious in the picture');
    expect(find(20, { entries: [wrong, waiver, entry({ kind: 'waiver', supersedes: 'waiver-x', isWithdrawn: true })] })[0]?.waived).toBeNull();
  });

  test('findings are grouped by episode in the order of the series, those of no episode last', () => {
    const document = sampleSeries({ cameras: [{ ...cameraA, clockOffset: 5 }] });
    const facts = gatherFacts({ document, blocks: [block('task-clean', later, 2), block('task-fit', later, 1)], entries: [], now: NOW });
    const groups = groupByEpisode(facts, runChecks(facts));
    expect(groups.map(({ episodeId }) => episodeId)).toEqual(['episode-1', 'episode-2', null]);
    expect(groups[0]?.findings[0]?.severity).toBe('stop');
  });
});

test('2,000 shots and 20,000 entries are checked in 200 ms on a quiet machine', () => {
  const tasks = Array.from({ length: 500 }, (_, index) => sampleTask(`t${index}`, index, `Task ${index}`, {
    episodeId: index % 2 === 0 ? 'episode-1' : 'episode-2', coverage: 'moved camera', irreversible: index % 5 === 0, coats: index % 10 === 0 ? [{ id: `coat-${index}`, materialId: 'material-primer' }] : [],
    hazards: index % 3 === 0 ? { ...NO_TASK_HAZARDS, facts: ['grinding', 'solvent-wiping'] } : NO_TASK_HAZARDS, doneAt: index < 250 ? addMinutes(tue, index) : null,
    parts: [{ partId: `p${index % 50}`, from: `p${index % 50}-s${Math.floor(index / 50)}`, to: `p${index % 50}-s${Math.floor(index / 50) + 1}` }],
    shots: [shot(`t${index}-b`, 'before', { mustHave: true }), shot(`t${index}-d`, 'during'), shot(`t${index}-a`, 'after'), shot(`t${index}-i`, 'insert')],
  }));
  const parts = Array.from({ length: 50 }, (_, index) => ({
    kind: 'part' as const, id: `p${index}`, revision: 1, order: index, name: `Part ${index}`, assembly: 'A', whereabouts: { kind: 'store' as const, id: null },
    states: Array.from({ length: 11 }, (_state, state) => ({ id: `p${index}-s${state}`, name: `state ${state}` })),
  }));
  const entries = Array.from({ length: 20_000 }, (_, index) => (index % 4 === 0
    ? take({ number: index, cameraId: 'camera-a', size: 'wide', format: R25, startFrame: index * 100, endFrame: index * 100 + 90 }, { at: addMinutes(tue, index % 500), taskId: `t${index % 500}`, shotId: `t${index % 500}-d` })
    : entry({ at: addMinutes(tue, index / 60), kind: index % 4 === 1 ? 'look' : 'note', look: index % 4 === 1 ? LOOK : null, observed: index % 20 === 2 ? [{ partId: `p${index % 50}`, stateId: `p${index % 50}-s5`, whereabouts: null }] : [] })));
  const segments = Array.from({ length: 125 }, (_, index) => segment(`seg${index}`, index, { episodeId: index % 2 === 0 ? 'episode-1' : 'episode-2', taskIds: [`t${index}`, `t${index + 250}`] }));
  const sample = sampleSeries({ tasks, parts, segments, outsideJobs: [], links: [], cameras: [cameraA] });
  const document = { ...sample, episodes: sample.episodes.map((episode) => (episode.id === 'episode-1' ? { ...episode, status: 'cut' as const } : episode)) };
  const blocks = tasks.slice(250).map((task, index) => block(task.id, addMinutes(later, index * 60), 1, { partIds: task.parts.map(({ partId }) => partId) }));
  const measure = () => {
    const start = process.cpuUsage();
    const findings = runChecks(gatherFacts({ document, blocks, entries, now: NOW, known: humid(84) }));
    return { time: process.cpuUsage(start).user / 1000, count: new Set(findings.map(({ check }) => check)).size };
  };
  measure();
  const runs = [measure(), measure(), measure()];
  expect(runs[0]!.count).toBeGreaterThanOrEqual(10);
  // Time of the processor, half as much again as the figure: other work may share the machine.
  expect(Math.min(...runs.map(({ time }) => time))).toBeLessThan(300);
  console.log(`checks of 2,000 shots and 20,000 entries: ${Math.min(...runs.map(({ time }) => time)).toFixed(0)} ms, findings of ${runs[0]!.count} checks`);
});

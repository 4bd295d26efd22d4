/** The two pieces of work that the demo carries from the first fact to an open gate: pistons eased out with air, and a respirator worn. */
import { describe, expect, it } from 'vitest';
import { instant } from '@/lib/units';
import type { SeriesDocument } from '@/lib/build';
import { unwrap } from '@/lib/result';
import { buildChecklist, captionSeconds, findCombinations, findHazards, judgeGate, signStatement, vapourOfTask, writeCaptions } from '@/lib/safety';
import { demoSeries } from '@/seed/demo';
import { at } from '../build/sample-series';
import { changeTask, taskOf } from './sample';

const demo = demoSeries('2026-11-30');
const hazardsOf = (taskId: string): readonly string[] => findHazards(demo, taskOf(demo, taskId)).found.map(({ hazard }) => hazard.id);

/** Every needed line of an episode signed by Marta: takes for all but the deferrals, which say who does it. */
function signEpisode(document: SeriesDocument, episodeId: string): SeriesDocument {
  return buildChecklist(document, episodeId).items.filter(({ isNeeded, state }) => isNeeded && state !== 'recorded').reduce((next, { id, kind, fingerprint }, index) => {
    const evidence = kind === 'deferral' ? { kind: 'exception' } as const : { kind: 'take', take: 'cam A 4', timecode: `00:${String(index).padStart(2, '0')}:00:00` } as const;
    const statement = unwrap(signStatement(next, {
      id: `s${index}`, name: id.slice(0, 100), personId: 'person-marta', at: at('2026-12-20', '20:00'), reason: 'the brake shop down the road checks and signs it',
      about: { sort: 'evidence', episodeId, itemId: id, fingerprint, evidence },
    }));
    return { ...next, statements: [...next.statements, statement] };
  }, document);
}

const openOf = (document: SeriesDocument, episodeId: string): number => judgeGate(document, buildChecklist(document, episodeId)).open.length;

describe('pistons eased out with compressed air', () => {
  it('bring the thrown piston, air cleaning, the rebuilt caliper and the noise of the compressor', () => {
    expect(hazardsOf('task-caliper-pistons')).toEqual(['piston-ejection', 'air-cleaning', 'caliper-rebuild', 'noise']);
  });

  it('owe the gauge, the pad, clear hands, face and eyes, both cautions, and the departure from the manual', () => {
    const lines = buildChecklist(demo, 'ep-stuck-pistons').items.filter(({ isNeeded }) => isNeeded);
    const texts = lines.map(({ text }) => text).join('\n');
    for (const words of ['Regulator with a gauge', 'Hardwood pad in the bridge', 'out of the line of the bore', 'Face shield over eye protection', 'manual hydraulic pressure only', 'Air throws a piston hard']) {
      expect(texts).toContain(words);
    }
    expect(lines.every(({ state, kind }) => state === 'open' || (state === 'recorded' && kind === 'consents'))).toBe(true);
  });

  it('pass the gate once every line is signed, and are held again when the pressure shown or the shots change', () => {
    const filmed = { ...demo, tasks: demo.tasks.map((task) => (task.episodeId === 'ep-stuck-pistons' ? { ...task, doneAt: instant(0) } : task)) };
    const signed = signEpisode(filmed, 'ep-stuck-pistons');
    expect(openOf(demo, 'ep-stuck-pistons')).toBeGreaterThan(20);
    expect(openOf(signEpisode(demo, 'ep-stuck-pistons'), 'ep-stuck-pistons')).toBe(1);
    expect(openOf(signed, 'ep-stuck-pistons')).toBe(0);
    const task = taskOf(signed, 'task-caliper-pistons');
    const departure = task.hazards.departure === null ? null : { ...task.hazards.departure, ownValue: 'air up to 6 bar' };
    expect(openOf(changeTask(signed, task.id, { hazards: { ...task.hazards, departure } }), 'ep-stuck-pistons')).toBeGreaterThan(0);
    expect(openOf(changeTask(signed, task.id, { shots: task.shots.slice(1) }), 'ep-stuck-pistons')).toBeGreaterThan(0);
  });

  it('are left to somebody with a hydraulic rig when seized', () => {
    const task = taskOf(demo, 'task-caliper-pistons');
    const seized = changeTask(demo, task.id, { hazards: { ...task.hazards, facts: [...task.hazards.facts, 'seized'] } });
    expect(buildChecklist(seized, 'ep-stuck-pistons').items.some(({ id }) => id === 'deferral:piston-ejection')).toBe(true);
    expect(buildChecklist(demo, 'ep-stuck-pistons').items.some(({ id }) => id === 'deferral:piston-ejection')).toBe(false);
  });
});

describe('respirator work', () => {
  it('is found where solvent is sprayed, with what the mask does not do: ignition and extraction', () => {
    expect(hazardsOf('task-rims-prime')).toEqual(expect.arrayContaining(['respirator', 'solvent-spray', 'spray-ignition']));
    expect(hazardsOf('task-rims-prime')).not.toContain('isocyanate');
  });

  it('asks for a filter against vapour and mist, shown with its label, and never for carbon alone', () => {
    const items = buildChecklist(demo, 'ep-three-rims').items;
    expect(items.some(({ kind, text }) => kind === 'worn' && text === 'Half mask with A2P3 filters (vapour and mist)')).toBe(true);
    expect(items.find(({ id }) => id === 'spoken:respirator')?.text).toContain('A carbon mask is not enough');
  });

  it('comes with the vapour to expect in the tent: above the limit while spraying, below it minutes later', () => {
    const vapour = vapourOfTask(demo, taskOf(demo, 'task-rims-prime'));
    if (vapour === null || !vapour.ok) throw new Error('The demo has all figures for its tent');
    expect(vapour.value.peak).toBeGreaterThan(vapour.value.limit);
    expect(vapour.value.belowLimitAfter).toBeGreaterThan(0);
    expect(vapour.value.belowLimitAfter).toBeLessThan(60);
  });

  it('gives captions that stand long enough to read', () => {
    const cautions = buildChecklist(demo, 'ep-three-rims').items.filter(({ kind }) => kind === 'caption');
    const file = unwrap(writeCaptions(cautions.map(({ id, text }, index) => ({ id, text, start: index * 10, end: index * 10 + captionSeconds(text) }))));
    expect(file.warnings).toEqual([]);
    expect(file.text.match(/-->/g)).toHaveLength(cautions.length);
  });
});

describe('the demo as a whole', () => {
  it('has no two things together that its own tasks would make dangerous', () => {
    expect(findCombinations(demo).filter(({ severity }) => severity === 'stop')).toEqual([]);
  });
});

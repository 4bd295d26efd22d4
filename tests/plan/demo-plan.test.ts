/** Rules of the trade checked on the demo's plan from the plan alone, without the engine's words for them. */
import { beforeAll, describe, expect, it } from 'vitest';
import { demoSeries } from '@/seed/demo';
import { formatMoment, instantOf } from '@/lib/calendar';
import type { PlanBlock } from '@/lib/plan';
import { minutesBetween } from '@/lib/units';
import { planOf, type Planned } from './plan-of';

const ZONE = 'Europe/London';
const document = demoSeries('2026-11-30');
const now = instantOf('2026-11-30', '09:00', ZONE);
let planned: Planned;

const work = () => planned.plan.blocks.filter((block) => block.kind === 'task' || block.kind === 'before-shot');
const overlaps = (a: { start: number; end: number }, b: { start: number; end: number }) => a.start < b.end && b.start < a.end;
const endOf = (ref: { kind: string; id: string }) => planned.plan.blocks.find((block) => block.id === `${ref.kind === 'task' ? 'task' : 'collection'}:${ref.id}`)?.end;
const startOf = (ref: { kind: string; id: string }) => planned.plan.blocks.find((block) => block.id === `${ref.kind === 'task' ? 'task' : 'drop-off'}:${ref.id}`)?.start;
const zoneOf = (placeId: string | null) => document.places.find((place) => place.id === placeId)?.airZone;
const tell = (block: PlanBlock) => `${block.title} ${formatMoment(block.start, ZONE)}`;

describe('the plan of the demo series', () => {
  beforeAll(() => {
    planned = planOf(document, now, { schedules: 60 });
  });

  it('puts every worked piece inside one session that opens its place and has its crew', () => {
    const strays = work().filter((block) =>
      block.pieces.some((piece) => !document.sessions.some((session) =>
        session.start <= piece.start && piece.end <= session.end && session.placeIds.includes(block.placeId ?? '') && block.crewIds.every((id) => session.crewIds.includes(id)))),
    );
    expect(strays.map(tell)).toEqual([]);
  });

  it('books nobody twice at the same time', () => {
    const pieces = planned.plan.blocks.flatMap((block) => block.pieces.flatMap((piece) => block.crewIds.map((person) => ({ ...piece, person, block }))));
    const clashes = pieces.filter((a, i) => pieces.some((b, j) => j > i && a.person === b.person && overlaps(a, b)));
    expect(clashes.map((clash) => tell(clash.block))).toEqual([]);
  });

  it('works on no part that is away', () => {
    const away = planned.plan.blocks.filter((block) => block.kind === 'away');
    expect(away.length).toBeGreaterThanOrEqual(6);
    const clashes = work().filter((block) => away.some((wait) => overlaps(block, wait) && block.partIds.some((id) => wait.partIds.includes(id))));
    expect(clashes.map(tell)).toEqual([]);
  });

  it('lets no task touch a part with a wet coat', () => {
    const wet = planned.plan.blocks.filter((block) => block.kind === 'cure');
    const clashes = wet.flatMap((coat) =>
      work().filter((block) => block.start >= coat.start && block.start < coat.stages!.touchDry && block.partIds.some((id) => coat.partIds.includes(id))),
    );
    expect(clashes.map(tell)).toEqual([]);
  });

  it('has the before-shots of every irreversible task in the can first', () => {
    const shots = planned.plan.blocks.filter((block) => block.kind === 'before-shot');
    expect(shots.length).toBeGreaterThan(0);
    for (const shot of shots) {
      const task = work().find((block) => block.kind === 'task' && block.subject.id === shot.subject.id);
      expect(task === undefined || shot.end <= task.start, tell(shot)).toBe(true);
    }
  });

  it('keeps two weeks between the painted rims and the tyres', () => {
    const link = document.links.find((candidate) => candidate.minWait >= 14 * 1440);
    expect(link).toBeDefined();
    const [painted, fitted] = [endOf(link!.from), startOf(link!.to)];
    expect(painted !== undefined && fitted !== undefined).toBe(true);
    expect(minutesBetween(painted!, fitted!)).toBeGreaterThanOrEqual(14 * 1440);
  });

  it('sands in no air in which paint is wet', () => {
    const dusty = work().filter((block) => document.tasks.find((task) => task.id === block.subject.id)?.isDusty && block.kind === 'task');
    const wet = planned.plan.blocks.filter((block) => block.kind === 'cure');
    const clashes = dusty.flatMap((dust) => wet.filter((coat) => zoneOf(coat.placeId) === zoneOf(dust.placeId) && dust.pieces.some((piece) => overlaps(piece, { start: coat.start, end: coat.stages!.touchDry }))));
    expect(clashes.map(tell)).toEqual([]);
  });

  it('gives every block that is not first in line a reason', () => {
    const first = Math.min(...document.sessions.filter((session) => session.end > now).map((session) => session.start));
    const silent = work().filter((block) => block.start > first + 86_400_000 && block.because.length === 0);
    expect(silent.map(tell)).toEqual([]);
  });
});

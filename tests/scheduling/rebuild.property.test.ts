import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compile } from '@/lib/scheduling/compile';
import { Constructor } from '@/lib/scheduling/construct';
import { listByKey } from '@/lib/scheduling/list-order';
import { Moves } from '@/lib/scheduling/moves';
import { TERMS } from '@/lib/scheduling/objective';
import { arrange } from '@/lib/scheduling/order';
import { propagate } from '@/lib/scheduling/propagate';
import { Random } from '@/lib/scheduling/random';
import { rate } from '@/lib/scheduling/score';
import { validate } from '@/lib/scheduling/validate';
import { problems } from './random-problem';

const wellFormed = problems.filter((problem) => validate(problem).ok);

function readState(builder: Constructor) {
  const { placer } = builder;
  const terms = new Float64Array(TERMS);
  rate(builder.model, placer, terms);
  const placed = [...placer.status.keys()].filter((i) => placer.status[i] === 1);
  const crews = placed.map((i) => [...placer.crew.subarray(builder.model.crew.from[i]!, builder.model.crew.from[i + 1]!)]);
  return { terms: [...terms], placed, starts: placed.map((i) => placer.start[i]), ends: placed.map((i) => placer.end[i]), crews };
}

describe('building a schedule again from the first change of its list', () => {
  it('gives the schedule that building it from the beginning gives, whatever was built and given up before', () => {
    let spared = 0;
    fc.assert(fc.property(wellFormed, fc.integer(), (problem, seed) => {
      const model = compile(problem);
      const propagation = propagate(model);
      if (!propagation.ok) return;
      const order = arrange(model);
      const random = new Random(seed);
      const moves = new Moves(model, order, random);
      const again = new Constructor(model, order, propagation.bounds);
      const list = listByKey(order, new Float64Array(model.count));
      const steady = new Uint8Array(model.count);
      again.build(list, steady);
      const reference = { sequence: new Int32Array(model.count), steady: steady.slice(), start: again.placer.start.slice(), crew: again.placer.crew.slice() };
      again.copySequence(reference.sequence);
      const isWhole = again.placer.status.every((status) => status === 1);
      for (let round = 0; round < 6; round += 1) {
        moves.apply(list, again.placer);
        steady[random.below(model.count)] = random.below(2);
        const limit = random.below(2) === 0 ? Float64Array.from([random.below(2), random.below(200), 0, 0, 0]) : null;
        const isBuilt = again.rebuild(list, steady, isWhole ? reference : null, limit);
        const anew = new Constructor(model, order, propagation.bounds);
        anew.build(list, steady);
        if (isBuilt) expect(readState(again)).toEqual(readState(anew));
        else {
          spared += 1;
          const [unplaced, late] = readState(anew).terms;
          expect(unplaced! > limit![0]! || (unplaced === limit![0]! && late! > limit![1]!)).toBe(true);
        }
      }
    }), { numRuns: 400 });
    expect(spared).toBeGreaterThan(20);
  });
});

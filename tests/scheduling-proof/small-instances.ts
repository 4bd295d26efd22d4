import * as fc from 'fast-check';
import type { CoreInstance, Relation, StartRange } from '@/lib/scheduling/proof';

const activities = 4;
const horizon = 11;

const lag = (least: number, most: number): fc.Arbitrary<Relation> =>
  fc.record({ pair: fc.uniqueArray(fc.integer({ min: 0, max: activities - 1 }), { minLength: 2, maxLength: 2 }), lag: fc.integer({ min: least, max: most }) })
    .map(({ pair, lag: length }) => ({ from: pair[0]!, to: pair[1]!, lag: length }));

/** A wait that ends no earlier when it begins later: a step function with a rising stretch. */
const curve: fc.Arbitrary<Relation> = fc.record({
  pair: fc.uniqueArray(fc.integer({ min: 0, max: activities - 1 }), { minLength: 2, maxLength: 2 }),
  first: fc.integer({ min: 0, max: 4 }),
  step: fc.integer({ min: 1, max: 4 }),
  rise: fc.integer({ min: 0, max: 3 }),
  slope: fc.constantFrom(0 as const, 1 as const),
}).map(({ pair, first, step, rise, slope }) => ({
  from: Math.min(...pair),
  to: Math.max(...pair),
  pieces: [{ from: 0, value: first, slope: 0 as const }, { from: step, value: first + rise, slope }],
}));

const ranges: fc.Arbitrary<readonly StartRange[] | null> = fc.option(
  fc.record({ a: fc.integer({ min: 0, max: 3 }), b: fc.integer({ min: 0, max: 2 }), c: fc.integer({ min: 2, max: 4 }), d: fc.integer({ min: 0, max: 2 }) })
    .map(({ a, b, c, d }) => [{ first: a, last: a + b }, { first: a + b + c, last: a + b + c + d }]),
  { nil: null },
);

const base = {
  durations: fc.array(fc.integer({ min: 0, max: 4 }), { minLength: activities, maxLength: activities }),
  capacities: fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 2, maxLength: 2 }),
  demands: fc.array(fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 2, maxLength: 2 }), { minLength: activities, maxLength: activities }),
  horizon: fc.constant(horizon),
};

/** Minimum and maximum lags in any direction. */
export const withMaximumLags: fc.Arbitrary<CoreInstance> = fc.record({ ...base, relations: fc.array(lag(-6, 5), { maxLength: 5 }) });

/** Curves and holes beside plain lags. */
export const withCurves: fc.Arbitrary<CoreInstance> = fc.record({
  ...base,
  relations: fc.tuple(fc.array(lag(-6, 4), { maxLength: 2 }), fc.array(curve, { maxLength: 2 })).map(([plain, bent]) => [...plain, ...bent]),
  allowedStarts: fc.array(ranges, { minLength: activities, maxLength: activities }),
});

/** Finish-to-start precedence and shared resources, no more than that. */
export const withPrecedence: fc.Arbitrary<CoreInstance> = fc.record({
  ...base,
  arcs: fc.array(fc.uniqueArray(fc.integer({ min: 0, max: activities - 1 }), { minLength: 2, maxLength: 2 }), { maxLength: 4 }),
  horizon: fc.constant(16),
}).map(({ arcs, ...rest }) => ({
  ...rest,
  demands: rest.demands.map((row) => row.map((r, k) => Math.min(r, rest.capacities[k]!))),
  relations: arcs.map((pair) => ({ from: Math.min(...pair), to: Math.max(...pair), lag: rest.durations[Math.min(...pair)]! })),
}));

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { runInThisContext } from 'node:vm';
import { toCore } from './published';
import type { PublishedCase } from './published';

/** What an independent solver says. */
export interface ReferenceAnswer {
  readonly status: 'optimal' | 'infeasible' | 'unknown';
  /** -1 without a plan. */
  readonly makespan: number;
  readonly seconds: number;
}

type Handler = (event: { readonly data: unknown }) => unknown;
interface Told {
  readonly type: string;
  readonly status?: string;
  readonly output?: { readonly default?: string };
}

/**
 * Solves with the clause-learning solver that the package minizinc brings as WebAssembly. The package runs it in a browser's
 * worker; here its script gets the two functions of a worker that it asks for, and runs in this thread. It keeps state from
 * one model to the next, so that each gets a fresh one; what starting it takes does not count in the seconds.
 */
export async function solveByMinizinc(published: PublishedCase, seconds: number, clock: () => number): Promise<ReferenceAnswer> {
  const require = createRequire(import.meta.url);
  const script = new URL('minizinc-worker.js', pathToFileURL(require.resolve('minizinc')));
  let handle: Handler | null = null;
  const told: Told[] = [];
  const shell = runInThisContext(`(function (addEventListener, postMessage, require, __filename, __dirname) {${readFileSync(script, 'utf8')}\n})`) as (...parts: readonly unknown[]) => void;
  shell((_: string, given: Handler) => { handle = given; }, (message: Told) => told.push(message), require, script.pathname, new URL('.', script).pathname);
  const file = (name: string): string => new URL(name, script).pathname;
  const send = (data: unknown): unknown => (handle as Handler | null)?.({ data });
  await send({ wasmURL: file('minizinc.wasm'), dataURL: file('minizinc.data') });
  const args = ['--solver', 'org.minizinc.chuffed', '-f', '--time-limit', String(Math.round(seconds * 1000)), 'model.mzn'];
  const begin = clock();
  await send({ jsonStream: true, files: { 'model.mzn': writeModel(published) }, args });
  return { ...readAnswer(told), seconds: (clock() - begin) / 1000 };
}

function list(values: readonly (number | string)[]): string {
  return `[${values.join(', ')}]`;
}

/** Starts, lags between them and a cumulative resource each: the plain model of the class. */
function writeModel(published: PublishedCase): string {
  const { capacities, demands, durations, horizon, relations } = toCore(published);
  const tasks = durations.map((_, i) => i).filter((i) => durations[i]! > 0);
  const resources = capacities.map((capacity, k) => {
    const users = tasks.filter((i) => demands[i]![k]! > 0);
    if (users.length === 0) return '';
    return `constraint cumulative(${list(users.map((i) => `s[${i}]`))}, ${list(users.map((i) => durations[i]!))}, ${list(users.map((i) => demands[i]![k]!))}, ${capacity});`;
  });
  return [
    'include "cumulative.mzn";',
    `array[0..${durations.length - 1}] of var 0..${horizon}: s;`,
    `var 0..${horizon}: finish;`,
    ...durations.map((duration, i) => `constraint s[${i}] + ${duration} <= finish;`),
    ...relations.map(({ from, lag, to }) => `constraint s[${to}] >= s[${from}] + ${lag};`),
    ...resources,
    'solve :: int_search(s, smallest, indomain_min) minimize finish;',
    'output ["\\(finish)"];',
  ].join('\n');
}

function readAnswer(told: readonly Told[]): Omit<ReferenceAnswer, 'seconds'> {
  const last = told.findLast((message) => message.type === 'solution')?.output?.default;
  const makespan = last === undefined ? -1 : Number(last);
  const status = told.findLast((message) => message.type === 'status')?.status;
  if (status === 'OPTIMAL_SOLUTION') return { status: 'optimal', makespan };
  return { status: status === 'UNSATISFIABLE' ? 'infeasible' : 'unknown', makespan };
}

import type { StopRule } from './rule';

/** Stops as soon as one of the rules does. */
export function anyOf(...rules: readonly StopRule[]): StopRule {
  return { share: (state) => rules.reduce((most, rule) => Math.max(most, rule.share(state)), 0) };
}

/** What was typed, put on top of what somebody else has saved meanwhile. */
import type { Draft, DraftObject } from '@/lib/views';

export function isSameDraft(a: Draft | undefined, b: Draft | undefined): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

/** Fields that somebody else changed, with whether they were typed in here too. */
export function findChanges(base: DraftObject, typed: DraftObject, newest: DraftObject): readonly { readonly name: string; readonly isTyped: boolean }[] {
  return Object.keys(newest)
    .filter((name) => !isSameDraft(base[name], newest[name]))
    .map((name) => ({ name, isTyped: !isSameDraft(base[name], typed[name]) }));
}

/** The newest values, with every field that was typed in here kept as typed. */
export function mergeDrafts(base: DraftObject, typed: DraftObject, newest: DraftObject): DraftObject {
  return Object.fromEntries(
    Object.entries(newest).map(([name, value]) => {
      const mine = typed[name];
      return [name, mine === undefined || isSameDraft(base[name], mine) ? value : mine];
    }),
  );
}

/** What the phone must know to log without network. */
import type { SeriesDocument } from '@/lib/build';
import type { ViewContext } from './context';

interface Named {
  readonly id: string;
  readonly name: string;
}

export interface PhoneTask extends Named {
  readonly shots: readonly Named[];
}

export interface PhoneView {
  readonly seriesId: string;
  readonly seriesName: string;
  /** The task at hand first, then those planned next, then the rest. */
  readonly tasks: readonly PhoneTask[];
  readonly parts: readonly (Named & { readonly states: readonly Named[] })[];
  readonly cameras: readonly Named[];
  readonly people: readonly string[];
  readonly trades: readonly Named[];
  readonly places: readonly Named[];
}

const named = ({ id, name }: Named): Named => ({ id, name });

export async function viewLogPhone({ storage, now }: ViewContext, document: SeriesDocument): Promise<PhoneView> {
  const plan = await storage.acceptedPlan(document.series.id);
  const starts = new Map<string, number>();
  for (const { kind, subject, start, end } of plan?.result.blocks ?? []) if (kind === 'task' && end >= now && !starts.has(subject.id)) starts.set(subject.id, start);
  const rank = (id: string, isDone: boolean): number => starts.get(id) ?? (isDone ? Number.MAX_SAFE_INTEGER : Number.MAX_SAFE_INTEGER - 1);
  const tasks = document.tasks.toSorted((a, b) => rank(a.id, a.doneAt !== null) - rank(b.id, b.doneAt !== null) || a.order - b.order);
  return {
    seriesId: document.series.id, seriesName: document.series.name, tasks: tasks.map((task) => ({ ...named(task), shots: task.shots.map(named) })),
    parts: document.parts.map((part) => ({ ...named(part), states: part.states.map(named) })), cameras: document.cameras.map(named), people: document.people.map(({ name }) => name),
    trades: document.trades.map(named), places: document.places.map(named),
  };
}

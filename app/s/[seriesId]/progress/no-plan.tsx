import { EmptyState, LinkButton, newRecordPath, plansPath } from '@/app/_ui';
import type { ProgressView } from '@/lib/views';

/** What to do before there is anything to be told: the first task, or the first plan. */
export function NoPlan({ view }: { readonly view: Pick<ProgressView, 'hasWork' | 'seriesId'> }) {
  if (!view.hasWork) {
    return (
      <EmptyState title="There is no work yet" actions={<LinkButton href={newRecordPath(view.seriesId, 'task')} look="main">Add a task</LinkButton>}>
        <p>Progress is measured in tasks: add the first, then make a plan.</p>
      </EmptyState>
    );
  }
  return (
    <EmptyState title="There is no accepted plan yet" actions={<LinkButton href={plansPath(view.seriesId)} look="main">Make a plan</LinkButton>}>
      <p>Odds and progress are told about a plan that counts. Make one and accept it.</p>
    </EmptyState>
  );
}

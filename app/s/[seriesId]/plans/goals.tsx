import { ArrowDown, ArrowUp } from 'lucide-react';
import Link from 'next/link';
import { ActionButton } from '@/app/_actions/action-button';
import { seriesSettingsPath } from '@/app/_ui';
import type { GoalLine, PlansView } from '@/lib/views';
import { moveGoalAction } from './actions';
import styles from './goals.module.css';

interface GoalsProps {
  readonly view: PlansView;
}

/** What a new plan puts first, to be put in another order. */
export function Goals({ view }: GoalsProps) {
  return (
    <details className={styles.goals}>
      <summary>
        What counts first: {view.goals.map(({ name }) => name).join(', then ')}
      </summary>
      <p>Work without a place always comes before these. Each counts only where those above it are equal.</p>
      <ol className={`plain ${styles.list}`}>
        {view.goals.map((line, index) => (
          <Goal key={line.goal} line={line} place={index} view={view} />
        ))}
      </ol>
      <p>
        {view.frozen} <Link href={seriesSettingsPath(view.seriesId)}>Settings of the series</Link>
      </p>
    </details>
  );
}

interface GoalProps {
  readonly line: GoalLine;
  /** From 0. */
  readonly place: number;
  readonly view: PlansView;
}

function Goal({ line: { goal, label, text }, place, view }: GoalProps) {
  const move = (by: -1 | 1) => moveGoalAction.bind(null, view.seriesId, view.seriesRevision, goal, by);
  return (
    <li>
      <span className={styles.place}>{place + 1}</span>
      <span>
        <strong>{label}</strong> <span className={styles.text}>{text}</span>
      </span>
      <span className={styles.moves}>
        {place > 0 ? (
          <ActionButton seriesId={view.seriesId} run={move(-1)}>
            <ArrowUp size={18} aria-hidden /> <span className="visually-hidden">{label} counts more</span>
          </ActionButton>
        ) : null}
        {place < view.goals.length - 1 ? (
          <ActionButton seriesId={view.seriesId} run={move(1)}>
            <ArrowDown size={18} aria-hidden /> <span className="visually-hidden">{label} counts less</span>
          </ActionButton>
        ) : null}
      </span>
    </li>
  );
}

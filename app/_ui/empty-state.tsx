import type { ReactNode } from 'react';
import styles from './empty-state.module.css';

interface EmptyStateProps {
  readonly title: string;
  /** What to do next, in a sentence or two. */
  readonly children?: ReactNode;
  readonly actions?: ReactNode;
}

/** Says that there is nothing yet, and what to do next. */
export function EmptyState({ title, children, actions }: EmptyStateProps) {
  return (
    <section className={styles.empty}>
      <h2 className={styles.title}>{title}</h2>
      {children ? <div className={styles.body}>{children}</div> : null}
      {actions ? <div className={styles.actions}>{actions}</div> : null}
    </section>
  );
}

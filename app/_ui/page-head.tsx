import type { ReactNode } from 'react';
import styles from './page-head.module.css';

interface PageHeadProps {
  readonly title: string;
  /** A line over the title: where this page stands. */
  readonly above?: ReactNode;
  /** A sentence under it. */
  readonly lead?: ReactNode;
  /** Buttons and links beside it. */
  readonly actions?: ReactNode;
}

/** The head of a page with its only h1. */
export function PageHead({ title, above, lead, actions }: PageHeadProps) {
  return (
    <header className={styles.head}>
      <div className={styles.words}>
        {above ? <p className={styles.above}>{above}</p> : null}
        <h1>{title}</h1>
        {lead ? <p className={styles.lead}>{lead}</p> : null}
      </div>
      {actions ? <div className={styles.actions}>{actions}</div> : null}
    </header>
  );
}

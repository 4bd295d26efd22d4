'use client';

import { useSyncExternalStore, type ReactNode } from 'react';
import styles from './fold.module.css';

const NARROW = '(max-width: 759px)';

function watch(changed: () => void): () => void {
  const query = matchMedia(NARROW);
  query.addEventListener('change', changed);
  return () => query.removeEventListener('change', changed);
}

interface FoldProps {
  readonly id: string;
  readonly title: ReactNode;
  readonly className?: string | undefined;
  /** Of its head; left out: h2. */
  readonly level?: 'h2' | 'h3';
  readonly children: ReactNode;
}

/** A section that is folded away on a phone, so that what comes first stands first; on a wider screen and on paper it is open. */
export function Fold({ children, className, id, level: Head = 'h2', title }: FoldProps) {
  const isNarrow = useSyncExternalStore(watch, () => matchMedia(NARROW).matches, () => false);
  const head = <Head id={id}>{title}</Head>;
  if (isNarrow) {
    return (
      <details className={styles.fold}>
        <summary>{head}</summary>
        <div className={className}>{children}</div>
      </details>
    );
  }
  return <section className={`${styles.open} ${className ?? ''}`} aria-labelledby={id}>{head}{children}</section>;
}

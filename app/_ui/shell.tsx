import Link from 'next/link';
import { Anvil } from 'lucide-react';
import type { ReactNode } from 'react';
import { Rooms } from './rooms';
import { ThemeToggle } from './theme-toggle';
import styles from './shell.module.css';

interface SeriesBandProps {
  readonly seriesId: string;
  readonly seriesName: string;
  /** The current ISO week, `2026-W49`. */
  readonly week: string;
}

/** The top band of a series with its rooms; on the phone the rooms lie at the foot. */
export function SeriesBand({ seriesId, seriesName, week }: SeriesBandProps) {
  return (
    <header className={styles.band}>
      <Link href="/" className={styles.home} aria-label="Benchtake, all series">
        <Anvil size={22} aria-hidden />
        <span className={styles.homeWord}>Benchtake</span>
      </Link>
      <span className={styles.series}>{seriesName}</span>
      <Rooms seriesId={seriesId} week={week} />
      <div className={styles.end}>
        <ThemeToggle />
      </div>
    </header>
  );
}

/** The band of pages that belong to no series. */
export function HomeBand() {
  return (
    <header className={`${styles.band} ${styles.homeAlone}`}>
      <Link href="/" className={styles.home}>
        <Anvil size={22} aria-hidden />
        <span className={styles.homeWord}>Benchtake</span>
      </Link>
      <div className={styles.end}>
        <ThemeToggle />
      </div>
    </header>
  );
}

interface PageBodyProps {
  readonly children: ReactNode;
  /** Draws across the whole screen. */
  readonly isWide?: boolean;
  /** Made for a sheet of its own kind: see print.css. */
  readonly paper?: 'strip' | 'brief';
}

/** The main part of a page. Exactly one a page. */
export function PageBody({ children, isWide = false, paper }: PageBodyProps) {
  return (
    <main id="content" tabIndex={-1} data-paper={paper} className={isWide ? `${styles.page} ${styles.wide}` : styles.page}>
      {children}
    </main>
  );
}

import Link from 'next/link';
import type { ReactNode } from 'react';
import { logPath, PageHead } from '@/app/_ui';
import styles from './log.module.css';

const PAGES = [
  { at: '', name: 'Log' }, { at: 'take', name: 'Log a take' }, { at: 'states', name: 'States' }, { at: 'checks', name: 'Checks' }, { at: 'promises', name: 'Promises' }, { at: 'pickups', name: 'Pickups' }, { at: 'stills', name: 'Stills' },
] as const;

interface LogHeadProps {
  readonly seriesId: string;
  readonly at: (typeof PAGES)[number]['at'];
  readonly title: string;
  readonly lead?: ReactNode;
}

/** The head of every page of the log, with the way to the others. */
export function LogHead({ seriesId, at, title, lead }: LogHeadProps) {
  return (
    <>
      <nav aria-label="Pages of the log" className={styles.pages}>
        <ul>
          {PAGES.map((page) => (
            <li key={page.at}>
              <Link href={page.at === '' ? logPath(seriesId) : `${logPath(seriesId)}/${page.at}`} prefetch={false} aria-current={page.at === at ? 'page' : undefined}>{page.name}</Link>
            </li>
          ))}
        </ul>
      </nav>
      <PageHead title={title} lead={lead} />
    </>
  );
}

import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { IssueList, PageBody, PageHead, recordsPath } from '@/app/_ui';
import { RecordForm } from '@/app/_record-form';
import { checkDocument, issuesAbout, loadDocument, viewRecordForm } from '@/lib/views';
import styles from '../records.module.css';

export const metadata: Metadata = { title: 'Settings of the series' };

export default async function SeriesSettingsPage({ params }: { params: Promise<{ seriesId: string }> }) {
  const { seriesId } = await params;
  const document = await loadDocument(seriesId);
  const view = document === null ? null : viewRecordForm(document, 'series', seriesId);
  if (document === null || view === null) notFound();
  const issues = issuesAbout(checkDocument(document), 'series', seriesId);
  return (
    <PageBody>
      <PageHead title="Settings of the series" above={<Link href={recordsPath(seriesId)}>All records</Link>} />
      {issues.length > 0 ? (
        <div className={styles.issues}>
          <IssueList issues={issues} />
        </div>
      ) : null}
      <RecordForm view={view} one="series" />
    </PageBody>
  );
}

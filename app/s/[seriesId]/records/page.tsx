import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { OctagonX, TriangleAlert } from 'lucide-react';
import { IssueList, kindPath, LinkButton, newRecordPath, PageBody, PageHead, seriesSettingsPath } from '@/app/_ui';
import { checkDocument, loadDocument, viewRecordsIndex, type KindCount } from '@/lib/views';
import styles from './records.module.css';

export const metadata: Metadata = { title: 'Records' };

export default async function RecordsPage({ params }: { params: Promise<{ seriesId: string }> }) {
  const { seriesId } = await params;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const view = viewRecordsIndex(document, checkDocument(document));
  return (
    <PageBody>
      <PageHead
        title="Records"
        lead="Everything the plan is made from. Fill them in from the top; what stands further down leans on what stands above."
        actions={<LinkButton href={seriesSettingsPath(seriesId)}>Settings of the series</LinkButton>}
      />
      {view.next ? (
        <p className={styles.next}>
          <span>
            <strong>Next: {view.next.plural.toLowerCase()}.</strong> {view.next.whenNone}
          </span>
          <LinkButton look="main" href={newRecordPath(seriesId, view.next.kind)}>
            Add {view.next.one}
          </LinkButton>
        </p>
      ) : null}
      {view.issues.length > 0 ? (
        <div className={styles.issues}>
          <IssueList issues={view.issues} seriesId={seriesId} />
        </div>
      ) : null}
      <ol className={styles.kinds}>
        {view.kinds.map((kind) => (
          <KindRow key={kind.kind} seriesId={seriesId} kind={kind} />
        ))}
      </ol>
    </PageBody>
  );
}

function KindRow({ seriesId, kind: { kind, plural, purpose, count, stops, warnings } }: { seriesId: string; kind: KindCount }) {
  return (
    <li className={styles.kind}>
      <span className={`${styles.count} ${count === 0 ? styles.countNone : ''} figures`} aria-hidden>
        {count}
      </span>
      <div>
        <Link href={kindPath(seriesId, kind)} className={styles.kindName}>
          {plural}
          <span className="visually-hidden">, {count}</span>
        </Link>
        <p className={styles.purpose}>{purpose}</p>
      </div>
      <p className={styles.marks}>
        {stops > 0 ? (
          <span className={styles.stop}>
            <OctagonX size={18} aria-hidden /> {stops} to put right
          </span>
        ) : null}
        {warnings > 0 ? (
          <span className={styles.warn}>
            <TriangleAlert size={18} aria-hidden /> {warnings} {warnings === 1 ? 'note' : 'notes'}
          </span>
        ) : null}
      </p>
    </li>
  );
}

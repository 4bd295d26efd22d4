import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { EmptyState, historyPath, LinkButton, PageBody, PageHead, recordPath, recordsPath } from '@/app/_ui';
import { HISTORY_STEP, loadDocument, openViewContext, viewHistory, type ChangeView, type EditView } from '@/lib/views';
import { UndoButton } from './undo-button';
import styles from './history.module.css';

export const metadata: Metadata = { title: 'History' };

interface HistoryPageProps {
  readonly params: Promise<{ seriesId: string }>;
  readonly searchParams: Promise<{ show?: string | string[] }>;
}

const MOST_SHOWN = 1000;

function readShow(show: string | string[] | undefined): number {
  const asked = typeof show === 'string' ? Math.floor(Number(show)) : HISTORY_STEP;
  return asked >= 1 && asked <= MOST_SHOWN ? asked : HISTORY_STEP;
}

export default async function HistoryPage({ params, searchParams }: HistoryPageProps) {
  const { seriesId } = await params;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const view = await viewHistory(await openViewContext(), document, readShow((await searchParams).show));
  return (
    <PageBody>
      <PageHead title="History" lead="Every change, newest first. Taking one back is a change too, so it can be taken back in turn." />
      {view.changes.length === 0 ? (
        <EmptyState title="Nothing has been changed yet" actions={<LinkButton look="main" href={recordsPath(seriesId)}>Go to the records</LinkButton>}>
          <p>What you add, change, remove or move in the records is listed here and can be taken back here.</p>
        </EmptyState>
      ) : (
        <ol className={styles.changes}>
          {view.changes.map((change) => (
            <ChangeItem key={change.number} seriesId={seriesId} change={change} />
          ))}
        </ol>
      )}
      {view.more === null ? null : (
        <p className={styles.more}>
          <LinkButton href={`${historyPath(seriesId)}?show=${view.more}`} scroll={false}>
            Show older changes
          </LinkButton>
        </p>
      )}
    </PageBody>
  );
}

function ChangeItem({ seriesId, change }: { seriesId: string; change: ChangeView }) {
  return (
    <li className={styles.change} id={`change-${change.number}`}>
      <span className={`${styles.number} figures`}>{change.number}</span>
      <div className={styles.words}>
        <h2 className={styles.label}>{change.label}</h2>
        <p className={styles.when}>
          <time dateTime={change.isoAt}>{change.at}</time>
          {change.undoes === null ? null : <span>takes back change {change.undoes}</span>}
        </p>
        <ul className={styles.edits}>
          {change.edits.map((edit) => (
            <EditItem key={`${edit.kind}:${edit.id}`} seriesId={seriesId} edit={edit} />
          ))}
          {change.moreEdits > 0 ? <li>and {change.moreEdits} more</li> : null}
        </ul>
        {change.whyNot === null ? null : <p className={styles.whyNot}>{change.whyNot}</p>}
      </div>
      {change.whyNot === null ? <UndoButton seriesId={seriesId} number={change.number} label={change.label} /> : null}
    </li>
  );
}

function EditItem({ seriesId, edit }: { seriesId: string; edit: EditView }) {
  const href = edit.isThere ? recordPath(seriesId, edit.kind, edit.id) : null;
  return (
    <li>
      <span className={styles.what}>{edit.what}</span> {edit.kindWord} {href === null ? edit.name : <Link href={href}>{edit.name}</Link>}
      {edit.fields.length > 0 ? (
        <dl className={styles.fields}>
          {edit.fields.map(({ label, before, after }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>
                <del>{before}</del> <span aria-hidden>→</span> <ins>{after}</ins>
              </dd>
            </div>
          ))}
        </dl>
      ) : null}
    </li>
  );
}

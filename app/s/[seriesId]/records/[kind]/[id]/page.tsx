import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { episodeSafetyPath, findKind, IssueList, kindPath, LinkButton, taskHazardsPath, PageBody, PageHead } from '@/app/_ui';
import { RecordForm } from '@/app/_record-form';
import { checkDocument, issuesAbout, loadDocument, viewRecordForm, wordsOfKind } from '@/lib/views';
import styles from '../../records.module.css';

interface RecordPageProps {
  readonly params: Promise<{ seriesId: string; kind: string; id: string }>;
}

async function findForm({ params }: RecordPageProps) {
  const { seriesId, kind: slug, id } = await params;
  const kind = findKind(slug);
  const document = await loadDocument(seriesId);
  if (kind === null || document === null) return null;
  const view = viewRecordForm(document, kind, id);
  return view === null ? null : { seriesId, kind, view, document };
}

export async function generateMetadata(props: RecordPageProps): Promise<Metadata> {
  const found = await findForm(props);
  return { title: found === null ? 'No such record' : found.view.name };
}

export default async function RecordPage(props: RecordPageProps) {
  const found = await findForm(props);
  if (found === null) notFound();
  const { seriesId, kind, view, document } = found;
  const words = wordsOfKind(kind);
  const issues = issuesAbout(checkDocument(document), kind, view.id ?? '');
  return (
    <PageBody>
      <PageHead title={view.name} above={<Link href={kindPath(seriesId, kind)}>{words.plural}</Link>} actions={<SafetyLink seriesId={seriesId} kind={kind} id={view.id ?? ''} />} />
      {issues.length > 0 ? (
        <div className={styles.issues}>
          <IssueList issues={issues} seriesId={seriesId} {...(view.id === null ? {} : { except: view.id })} />
        </div>
      ) : null}
      <RecordForm view={view} one={words.one} />
    </PageBody>
  );
}

/** The way to the hazards of a task and the checklist of an episode. */
function SafetyLink({ seriesId, kind, id }: { readonly seriesId: string; readonly kind: string; readonly id: string }) {
  if (kind === 'task') return <LinkButton href={taskHazardsPath(seriesId, id)}>Hazards</LinkButton>;
  if (kind === 'episode') return <LinkButton href={episodeSafetyPath(seriesId, id)}>Safety checklist</LinkButton>;
  return null;
}

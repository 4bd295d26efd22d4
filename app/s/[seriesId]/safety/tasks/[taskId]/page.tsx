import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { TriangleAlert } from 'lucide-react';
import { hazardsPath, IssueList, LinkButton, PageBody, PageHead, recordPath, safetyPath } from '@/app/_ui';
import { loadDocument, openViewContext, viewTaskHazards } from '@/lib/views';
import { VapourList } from '../../exposures';
import { Ruling } from '../../ruling';
import styles from '../../safety.module.css';

interface Props {
  readonly params: Promise<{ seriesId: string; taskId: string }>;
}

async function findView({ params }: Props) {
  const { seriesId, taskId } = await params;
  const document = await loadDocument(seriesId);
  return document === null ? null : viewTaskHazards(await openViewContext(), document, taskId);
}

export async function generateMetadata(props: Props): Promise<Metadata> {
  const view = await findView(props);
  return { title: view === null ? 'No such task' : `Hazards: ${view.task.label}` };
}

export default async function TaskHazardsPage(props: Props) {
  const view = await findView(props);
  if (view === null) notFound();
  const { seriesId, task } = view;
  const record = recordPath(seriesId, 'task', task.value);
  return (
    <PageBody>
      <PageHead title={task.label} above={<Link href={safetyPath(seriesId)}>Safety</Link>} lead={view.standing} actions={record === null ? null : <LinkButton href={record}>Change the facts</LinkButton>} />
      <section className={styles.section} aria-labelledby="facts-head">
        <h2 id="facts-head">What is known of it</h2>
        {view.facts.length === 0 ? <p className={styles.soft}>No fact is stated, and none follows from its materials, tools or place. That says nothing about the work.</p> : <p>{view.facts.join(' · ')}</p>}
      </section>
      {view.combinations.length + view.gaps.length === 0 ? null : (
        <div className={styles.section}>
          <IssueList issues={[...view.combinations, ...view.gaps]} seriesId={seriesId} except={task.value} />
        </div>
      )}
      <section className={styles.section} aria-labelledby="found-head">
        <h2 id="found-head">Hazards found</h2>
        {view.found.length === 0 ? <p className={styles.soft}>None, as far as the facts tell.</p> : null}
        <ul className={`plain ${styles.lines}`}>
          {view.found.map((hazard) => (
            <li key={hazard.id} className={styles.found}>
              <p>
                <Link href={`${hazardsPath(seriesId)}#hazard-${hazard.id}`}>{hazard.name}</Link> <span className={styles.soft}>severity {hazard.severity}</span>
              </p>
              <p className={styles.soft}>Because: {hazard.because}</p>
              {hazard.deferral === null ? null : (
                <p className={styles.stop}>
                  <TriangleAlert size={16} aria-hidden /> Leave it to somebody licensed or equipped for it: {hazard.deferral}
                </p>
              )}
            </li>
          ))}
        </ul>
      </section>
      {view.vapour === null ? null : (
        <section className={styles.section} aria-labelledby="vapour-head">
          <h2 id="vapour-head">Its vapour</h2>
          <VapourList rows={[view.vapour]} seriesId={seriesId} />
        </section>
      )}
      {view.removed.length === 0 ? null : (
        <section className={styles.section} aria-labelledby="removed-head">
          <h2 id="removed-head">Taken out by a person</h2>
          <ul className={`plain ${styles.lines}`}>
            {view.removed.map(({ id, name, ruling }) => (
              <li key={id} className={styles.found}>
                <p>{name}</p>
                <p className={styles.soft}>{ruling}</p>
              </li>
            ))}
          </ul>
        </section>
      )}
      <Ruling view={view} />
    </PageBody>
  );
}

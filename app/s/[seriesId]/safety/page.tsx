import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { OctagonX } from 'lucide-react';
import { briefPath, EmptyState, episodeSafetyPath, hazardsPath, IssueList, LinkButton, newRecordPath, PageBody, PageHead, plansPath, taskHazardsPath } from '@/app/_ui';
import { loadDocument, openViewContext, viewSafety, type SafetyRoomView } from '@/lib/views';
import { ExposureTable, VapourList } from './exposures';
import { ReviewList } from './review-list';
import styles from './safety.module.css';

interface Props {
  readonly params: Promise<{ seriesId: string }>;
}

export const metadata: Metadata = { title: 'Safety' };

export default async function SafetyPage({ params }: Props) {
  const { seriesId } = await params;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const view = await viewSafety(await openViewContext(), document);
  return (
    <PageBody>
      <PageHead title="Safety" lead={view.standing} actions={<LinkButton href={hazardsPath(seriesId)}>Library of hazards</LinkButton>} />
      <Episodes view={view} />
      {view.combinations.length > 0 ? (
        <section className={styles.section} aria-labelledby="together-head">
          <h2 id="together-head">Things together</h2>
          <IssueList issues={view.combinations} seriesId={seriesId} />
        </section>
      ) : null}
      <section className={styles.section} aria-labelledby="briefs-head">
        <h2 id="briefs-head">Briefs for the next sessions</h2>
        {view.sessions.length === 0 ? <p className={styles.soft}>No session is ahead. <Link href={newRecordPath(seriesId, 'session')}>Add a session</Link></p> : null}
        <ul className={`plain ${styles.links}`}>
          {view.sessions.map(({ value, label }) => (
            <li key={value}>
              <Link href={briefPath(seriesId, value)}>{label}</Link>
            </li>
          ))}
        </ul>
      </section>
      <section className={styles.section} aria-labelledby="exposure-head">
        <h2 id="exposure-head">Noise, vibration and vapour by person and day, three weeks ahead</h2>
        {view.hasPlan ? null : (
          <p className={styles.soft}>
            Nothing is planned, so nothing can be added up. <Link href={plansPath(seriesId)}>Make a plan</Link>
          </p>
        )}
        {view.hasPlan && view.exposures.length === 0 ? <p className={styles.soft}>No person-day reaches an action value, as far as the tools have figures.</p> : null}
        <ExposureTable rows={view.exposures} />
      </section>
      <section className={styles.section} aria-labelledby="vapour-head">
        <h2 id="vapour-head">Vapour of what will be sprayed</h2>
        {view.vapours.length + view.vapourGaps.length === 0 ? <p className={styles.soft}>No task ahead sprays a solvent coat.</p> : null}
        <VapourList rows={view.vapours} seriesId={seriesId} />
        <IssueList issues={view.vapourGaps} seriesId={seriesId} />
      </section>
      <Reviews view={view} />
      {document.tasks.length === 0 ? (
        <p className={styles.soft}>
          Hazards follow from the facts of each task. <Link href={newRecordPath(seriesId, 'task')}>Add the first task</Link>
        </p>
      ) : (
        <details className={styles.fold}>
          <summary>Hazards task by task ({document.tasks.length})</summary>
          <p className={styles.soft}>Hazards follow from the facts of each task: open one to see which, and why.</p>
          <ul className={`plain ${styles.links}`}>
            {document.tasks.map(({ id, name }) => (
              <li key={id}>
                <Link href={taskHazardsPath(seriesId, id)}>{name}</Link>
              </li>
            ))}
          </ul>
        </details>
      )}
    </PageBody>
  );
}

function Episodes({ view }: { readonly view: SafetyRoomView }) {
  if (view.columns.length === 0) {
    return (
      <div className={styles.section}>
        <EmptyState title="No episode yet" actions={<LinkButton href={newRecordPath(view.seriesId, 'episode')} look="main">Add an episode</LinkButton>}>
          <p>The checklist of an episode is computed from the tasks it shows. Add an episode, then tasks for it.</p>
        </EmptyState>
      </div>
    );
  }
  return (
    <section className={styles.section} aria-labelledby="matrix-head">
      <h2 id="matrix-head">Which episode shows what</h2>
      <ol className={`plain ${styles.episodes}`}>
        {view.columns.map(({ id, number, name, status, open, overrides }) => (
          <li key={id}>
            <span className={styles.number}>{number}</span>
            <Link href={episodeSafetyPath(view.seriesId, id)}>{name}</Link>
            <span className={styles.soft}>{status}</span>
            <span className={open > 0 ? styles.stop : styles.soft}>
              {open > 0 ? <OctagonX size={16} aria-hidden /> : null} {sayBlocks(open, overrides)}
            </span>
          </li>
        ))}
      </ol>
      {view.rows.length === 0 ? null : <Matrix view={view} />}
    </section>
  );
}

function sayBlocks(open: number, overrides: number): string {
  const over = overrides > 0 ? 'overridden' : '';
  if (open > 0) return [`${open} ${open === 1 ? 'blocks' : 'block'} it`, over].filter(Boolean).join(', ');
  return over === '' ? 'nothing on this list is open' : over;
}

function Matrix({ view }: { readonly view: SafetyRoomView }) {
  return (
    <section className={styles.scroll} aria-label="Hazards by episode">
      <table className={styles.matrix}>
        <caption>Lines answered of lines owed. An empty cell: not shown.</caption>
        <thead>
          <tr>
            <th scope="col">Hazard</th>
            {view.columns.map(({ id, number, name }) => (
              <th key={id} scope="col">
                <Link href={episodeSafetyPath(view.seriesId, id)} aria-label={`Episode ${number}, ${name}`}>
                  {number}
                </Link>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {view.rows.map((row) => (
            <tr key={row.id}>
              <th scope="row">
                {row.name} <span className={styles.soft}>{row.severity}</span>
              </th>
              {row.cells.map((cell, index) => (
                <td key={view.columns[index]?.id ?? index} className={cell === null ? undefined : cell.isOpen ? styles.openCell : styles.doneCell}>
                  {cell === null ? null : (
                    <>
                      <span aria-hidden>{cell.text}</span>
                      <span className="visually-hidden">{cell.label}</span>
                    </>
                  )}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Reviews({ view }: { readonly view: SafetyRoomView }) {
  return (
    <details className={styles.fold}>
      <summary>Yearly review of {view.reviews.length} sources: {view.reviewSummary}</summary>
      <p className={styles.soft}>
        Each source is read again within a year of the last reading. What is from memory or from practice counts as unverified until somebody has read a source. A source that says something else now: copy the hazard and change it there.
      </p>
      <ReviewList view={view} />
    </details>
  );
}

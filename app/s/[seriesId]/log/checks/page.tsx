import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { EmptyState, LinkButton, newRecordPath, PageBody, plansPath } from '@/app/_ui';
import { loadDocument, openViewContext, viewChecks } from '@/lib/views';
import { LogHead } from '../log-head';
import styles from '../log.module.css';
import { FindingItem } from './finding-item';

export const metadata: Metadata = { title: 'Checks' };

const count = (amount: number, one: string, many = `${one}s`): string => `${amount} ${amount === 1 ? one : many}`;

export default async function ChecksPage({ params }: { readonly params: Promise<{ seriesId: string }> }) {
  const { seriesId } = await params;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const view = await viewChecks(await openViewContext(), document);
  const sum = [view.stops > 0 ? count(view.stops, 'stop') : 'No stop', view.warns > 0 ? count(view.warns, 'note') : 'no note', view.waived > 0 ? `${view.waived} let pass` : ''].filter((word) => word !== '').join(', ');
  if (document.tasks.length === 0 && view.groups.length === 0) {
    return (
      <PageBody>
        <LogHead seriesId={seriesId} at="checks" title="Checks" lead="Forty rules on what will not cut together, run on every change." />
        <EmptyState title="There is nothing to check yet" actions={<LinkButton look="main" href={newRecordPath(seriesId, 'task')}>Add a task</LinkButton>}>
          <p>Write down the first task with its shots. What is planned, filmed and seen is then checked here, episode by episode.</p>
        </EmptyState>
        <details className={styles.group}>
          <summary>What will be checked</summary>
          <ul className={styles.lines}>{[...view.held, ...view.blind].toSorted((a, b) => a.number - b.number).map(({ number, title }) => <li key={number}>{number}. {title}</li>)}</ul>
        </details>
      </PageBody>
    );
  }
  return (
    <PageBody>
      <LogHead seriesId={seriesId} at="checks" title="Checks" lead={`${sum}. ${view.held.length} of 40 checks find nothing.`} />
      {view.hasPlan ? null : <p className={styles.remark}>No plan is accepted yet, so what is still to come is checked only in part. <LinkButton href={plansPath(seriesId)}>Go to the plans</LinkButton></p>}
      {view.groups.length === 0 ? <EmptyState title="Nothing to put right"><p>Every check that has something to look at finds nothing. They run again on every change.</p></EmptyState> : null}
      {view.groups.map((group) => (
        <section key={group.episodeId ?? 'series'} className={styles.group} aria-labelledby={`group-${group.episodeId ?? 'series'}`}>
          <h2 id={`group-${group.episodeId ?? 'series'}`}>{group.name}</h2>
          <p className={styles.by}>{[group.release === null ? '' : `Release ${group.release}`, count(group.stops, 'stop'), count(group.warns, 'note')].filter((word) => word !== '').join(' · ')}</p>
          <ul className={styles.findings}>
            {group.findings.map((finding) => <FindingItem key={`${finding.check} ${finding.key}`} seriesId={seriesId} finding={finding} people={view.people} />)}
          </ul>
        </section>
      ))}
      <details className={styles.group}>
        <summary>Checks that find nothing ({view.held.length})</summary>
        <ul className={styles.lines}>{view.held.map(({ number, title }) => <li key={number}>{number}. {title}</li>)}</ul>
      </details>
      {view.blind.length === 0 ? null : (
        <details className={styles.group}>
          <summary>Checks with nothing to look at yet ({view.blind.length})</summary>
          <ul className={styles.lines}>{view.blind.map(({ number, title, needs }) => <li key={number}>{number}. {title}: needs {needs}</li>)}</ul>
        </details>
      )}
    </PageBody>
  );
}

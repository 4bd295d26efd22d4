import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { EmptyState, LinkButton, newRecordPath, PageBody } from '@/app/_ui';
import { loadDocument, openViewContext, viewStates, type ThreadView } from '@/lib/views';
import { LogHead } from '../log-head';
import styles from '../log.module.css';

export const metadata: Metadata = { title: 'States' };

function Thread({ thread, now }: { readonly thread: ThreadView; readonly now: number }) {
  return (
    <li className={styles.thread}>
      <h3 className={styles.threadName}>{thread.name}</h3>
      <div className={styles.line} aria-hidden>
        {thread.stretches.map((stretch) => (
          <span key={`${stretch.from} ${stretch.state}`} title={stretch.words} className={[styles.stretch, stretch.isPlanned ? styles.planned : '', stretch.isAway ? styles.away : '', stretch.branch > 0 ? styles.again : ''].join(' ')} style={{ insetInlineStart: `${stretch.from}%`, inlineSize: `${stretch.width}%` }}>
            {stretch.width > 7 ? stretch.state : ''}
          </span>
        ))}
        {thread.takes.map((take, index) => <span key={`${take.at} ${String(index)}`} title={take.words} className={take.isGood ? styles.takeGood : styles.takeBad} style={{ insetInlineStart: `${take.at}%` }} />)}
        <span className={styles.nowMark} style={{ insetInlineStart: `${now}%` }} />
      </div>
      {thread.disagreements.map((words) => <p key={words} className={styles.disagreement}>Two sources disagree. {words}</p>)}
      {thread.redos.map((words) => <p key={words}>{words}</p>)}
      <details>
        <summary>In words</summary>
        <ol className={styles.lines}>
          {thread.stretches.map((stretch) => <li key={`${stretch.from} ${stretch.state}`}>{stretch.words}</li>)}
          {thread.takes.map((take, index) => <li key={`${take.at} ${String(index)}`}>{take.words}</li>)}
        </ol>
      </details>
    </li>
  );
}

export default async function StatesPage({ params }: { readonly params: Promise<{ seriesId: string }> }) {
  const { seriesId } = await params;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const view = await viewStates(await openViewContext(), document);
  const isEmpty = view.assemblies.length === 0 && view.idle.length === 0;
  return (
    <PageBody isWide={!isEmpty}>
      <LogHead seriesId={seriesId} at="states" title="States of the parts" lead={`From ${view.from} to ${view.to}: what was done and seen, then what is planned.`} />
      {isEmpty ? (
        <EmptyState title="There is no part yet" actions={<LinkButton look="main" href={newRecordPath(seriesId, 'part')}>Add a part</LinkButton>}><p>Each part gets a thread with its states once it is recorded.</p></EmptyState>
      ) : (
        <>
          <ul className={styles.legend}>
            <li><span className={styles.stretch} /> done or seen</li><li><span className={`${styles.stretch} ${styles.planned}`} /> planned</li><li><span className={`${styles.stretch} ${styles.away}`} /> away</li>
            <li><span className={`${styles.stretch} ${styles.again}`} /> done again</li><li><span className={styles.takeGood} /> good take</li><li><span className={styles.takeBad} /> other take</li>
          </ul>
          <section className={styles.scroller} aria-label="State lines of all parts">
            <div className={styles.scale} aria-hidden>{view.marks.map((mark) => <span key={mark.label} style={{ insetInlineStart: `${mark.at}%` }}>{mark.label}</span>)}</div>
            {view.assemblies.map(({ name, threads }) => (
              <div key={name}>
                <h2 className={styles.assembly}>{name || 'Other parts'}</h2>
                <ol className={styles.threads}>{threads.map((thread) => <Thread key={thread.partId} thread={thread} now={view.now} />)}</ol>
              </div>
            ))}
          </section>
          {view.idle.length === 0 ? null : (
            <section className={styles.group} aria-labelledby="idle-title">
              <h2 id="idle-title">Nothing done, seen or planned yet</h2>
              <ul className={`${styles.lines} ${styles.idle}`}>{view.idle.map((words) => <li key={words}>{words}</li>)}</ul>
            </section>
          )}
        </>
      )}
    </PageBody>
  );
}

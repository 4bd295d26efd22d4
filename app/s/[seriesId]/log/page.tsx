import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { EmptyState, LinkButton, logPath, newRecordPath, PageBody, recordPath } from '@/app/_ui';
import { loadDocument, openViewContext, searchLog, viewLog } from '@/lib/views';
import { EntryItem, TakeImport } from './entry-item';
import { LogHead } from './log-head';
import styles from './log.module.css';
import { LogSearch } from './log-search';

export const metadata: Metadata = { title: 'Log' };

interface LogPageProps {
  readonly params: Promise<{ seriesId: string }>;
  readonly searchParams: Promise<{ day?: string | string[]; find?: string | string[] }>;
}

const one = (value: string | string[] | undefined): string | undefined => (typeof value === 'string' && value !== '' ? value : undefined);

export default async function LogPage({ params, searchParams }: LogPageProps) {
  const { seriesId } = await params;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const asked = await searchParams;
  const context = await openViewContext();
  const find = one(asked.find);
  const [log, found] = await Promise.all([viewLog(context, document, one(asked.day)), find === undefined ? null : searchLog(context, document, find)]);
  const isEmpty = log.count === 0 && found === null;
  const dayPath = (day: string) => `${logPath(seriesId)}?day=${day}`;
  return (
    <PageBody>
      <LogHead seriesId={seriesId} at="" title={found === null ? `Log of ${log.isToday ? 'today' : log.dayWord}` : `Found: ${find ?? ''}`} lead="What was filmed and seen. Entries are added, never changed." />
      {isEmpty ? null : <LogSearch seriesId={seriesId} text={find ?? ''} />}
      {found === null ? (
        <>
          {isEmpty ? null : <nav aria-label="Days" className={styles.days}>
            <Link href={dayPath(log.before)}>Day before</Link>
            {log.after === null ? null : <Link href={dayPath(log.after)}>Day after</Link>}
            {log.isToday ? null : <Link href={logPath(seriesId)}>Today</Link>}
            {log.lastDay === null || log.lastDay === log.day ? null : <Link href={dayPath(log.lastDay)}>Last entries</Link>}
          </nav>}
          {log.entries.length === 0 ? (
            <EmptyState title={isEmpty ? 'Nothing has been logged yet' : 'Nothing was logged on this day'} actions={<LinkButton look="main" href={`${logPath(seriesId)}/take`} prefetch={false}>Log a take</LinkButton>}>
              <p>Open “Log a take” on the phone beside the camera. It works without network once it has been opened there.</p>
            </EmptyState>
          ) : <ol className={styles.entries}>{log.entries.map((entry) => <EntryItem key={entry.id} seriesId={seriesId} entry={entry} />)}</ol>}
        </>
      ) : found.entries.length === 0 ? <p>No entry holds all of these words.</p> : (
        <>
          <ol className={styles.entries}>{found.entries.map((entry) => <EntryItem key={entry.id} seriesId={seriesId} entry={entry} day={entry.day} />)}</ol>
          {found.hasMore ? <p>There are more. Type another word to narrow it down.</p> : null}
        </>
      )}
      <section className={styles.files} aria-labelledby="cameras-title">
        <h2 id="cameras-title">Clocks of the cameras</h2>
        {log.cameras.length === 0 ? <p>No camera is recorded yet, so takes are logged without timecode. <LinkButton href={newRecordPath(seriesId, 'camera')}>Add a camera</LinkButton></p> : (
          <ul>{log.cameras.map(({ id, name, clock }) => <li key={id}><Link href={recordPath(seriesId, 'camera', id) ?? ''}>{name}</Link>: {clock}</li>)}</ul>
        )}
      </section>
      <section className={styles.files} aria-labelledby="files-title">
        <h2 id="files-title">Files</h2>
        {isEmpty ? null : <ul>
          <li><a href={`${logPath(seriesId)}/export/csv`} download>Takes as a table (CSV)</a></li>
          <li><a href={`${logPath(seriesId)}/export/otio`} download>Takes as a timeline (OpenTimelineIO)</a></li>
          <li><a href={`${logPath(seriesId)}/export/vtt`} download>Notes as timed text (WebVTT)</a></li>
        </ul>}
        <TakeImport seriesId={seriesId} author={log.people[0] ?? ''} />
      </section>
    </PageBody>
  );
}

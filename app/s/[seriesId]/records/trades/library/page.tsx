import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { EmptyState, kindPath, LinkButton, newRecordPath, PageBody, PageHead, recordPath, tradeLibraryPath } from '@/app/_ui';
import { loadDocument, openViewContext, viewTradeLibrary, type TradeEntry, type TradeLibraryView } from '@/lib/views';
import sheets from '../../../_sheets/sheets.module.css';
import styles from './page.module.css';

interface Props {
  readonly params: Promise<{ seriesId: string }>;
  readonly searchParams: Promise<{ days?: string; by?: string; confidence?: string }>;
}

export const metadata: Metadata = { title: 'Trades and their habits' };

export default async function TradeLibraryPage({ params, searchParams }: Props) {
  const [{ seriesId }, { days, by, confidence }] = await Promise.all([params, searchParams]);
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const view = await viewTradeLibrary(await openViewContext(), document, { days: days ?? null, by: by ?? null, confidence: confidence ?? null });
  return (
    <PageBody>
      <PageHead
        title="Trades and their habits" lead="When each is open, how its past jobs kept to the quote, and when to drop off for a wanted day."
        above={<Link href={kindPath(seriesId, 'trade')}>Outside trades</Link>} actions={<LinkButton href={newRecordPath(seriesId, 'trade')}>Add a trade</LinkButton>}
      />
      {view.trades.length === 0 ? (
        <EmptyState title="No outside trade yet" actions={<LinkButton look="main" href={newRecordPath(seriesId, 'trade')}>Add a trade</LinkButton>}>
          <p>Add the first one with its opening hours. Its habits are learned from the jobs it brings back.</p>
        </EmptyState>
      ) : <Trades view={view} />}
    </PageBody>
  );
}

function Trades({ view }: { readonly view: TradeLibraryView }) {
  const { question, seriesId } = view;
  return (
    <>
      <form method="get" action={tradeLibraryPath(seriesId)} className={sheets.chooser}>
        <label>Quoted working days<input type="number" name="days" min={1} max={100} defaultValue={question.days} /></label>
        <label>Back by<input type="date" name="by" defaultValue={question.by} /></label>
        <label>How sure, %<input type="number" name="confidence" min={50} max={99} defaultValue={question.confidence} /></label>
        <button type="submit">Work it out</button>
      </form>
      <p className={sheets.soft}>What few jobs of its own say is pulled towards the mean of the craft and of all jobs: one bad month is no habit.</p>
      <ol className={`plain ${sheets.entries}`}>
        {view.trades.map((trade) => <li key={trade.id} className={`${sheets.entry} ${sheets.more}`}><Entry trade={trade} seriesId={seriesId} /></li>)}
      </ol>
    </>
  );
}

function Entry({ trade, seriesId }: { readonly trade: TradeEntry; readonly seriesId: string }) {
  return (
    <>
      <h2>{trade.name} <span className={sheets.soft}>{trade.craft}</span></h2>
      <p className={styles.links}>
        <Link href={recordPath(seriesId, 'trade', trade.id) ?? '#'}>Change<span className="visually-hidden"> {trade.name}</span></Link>
        <Link href={`${newRecordPath(seriesId, 'trade')}?like=${encodeURIComponent(trade.id)}`}>Copy<span className="visually-hidden"> {trade.name}</span></Link>
      </p>
      <ul className={styles.answers}>{trade.answers.map((line) => <li key={line}>{line}</li>)}</ul>
      <ul className={styles.answers}>{trade.learned.map((line) => <li key={line}>{line}</li>)}</ul>
      <details>
        <summary>Days, terms, holidays and past jobs<span className="visually-hidden">: {trade.name}</span></summary>
        <dl className={sheets.facts}>
          {trade.contact === '' ? null : <div><dt>Contact</dt><dd>{trade.contact}</dd></div>}
          {trade.facts.map(({ label, value }) => <div key={label}><dt>{label}</dt><dd>{value}</dd></div>)}
          <div>
            <dt>{trade.holidaysOf}</dt>
            {trade.holidays.map(({ day, name }) => <dd key={`${day} ${name}`}>{day}: {name}</dd>)}
          </div>
          <div>
            <dt>Past jobs</dt>
            {trade.past.length === 0 ? <dd>None yet.</dd> : trade.past.map((job) => (
              <dd key={job.id}><Link href={recordPath(seriesId, 'outsideJob', job.id) ?? '#'}>{job.name}</Link>: quoted {job.quoted}, took {job.actual} working days, {job.ratio}</dd>
            ))}
          </div>
        </dl>
      </details>
    </>
  );
}

import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { TriangleAlert } from 'lucide-react';
import { EmptyState, episodesPath, estimatesPath, IssueList, kindPath, LinkButton, newRecordPath, PageBody, PageHead, recordPath } from '@/app/_ui';
import { loadDocument, openViewContext, viewEpisodes, type BankView, type EpisodesView, type ProposalView } from '@/lib/views';
import { ArrangeButton } from './action-button';
import styles from './episodes.module.css';
import { FactsTable } from './facts-table';
import { Shelf } from './shelf';

interface Props {
  readonly params: Promise<{ seriesId: string }>;
  readonly searchParams: Promise<{ every?: string | string[] }>;
}

export const metadata: Metadata = { title: 'Episodes' };

/** The days of a what-if in the address; null: none that makes sense. */
function readCadence(every: string | string[] | undefined): number | null {
  const days = typeof every === 'string' && /^\d{1,3}$/.test(every) ? Number(every) : 0;
  return days >= 1 && days <= 365 ? days : null;
}

export default async function EpisodesPage({ params, searchParams }: Props) {
  const { seriesId } = await params;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const view = await viewEpisodes(await openViewContext(), document, readCadence((await searchParams).every));
  const head = (
    <PageHead
      title="Episodes"
      lead="What goes into each, whether there is time to record it, and how many are in hand."
      actions={<><LinkButton href={estimatesPath(seriesId)}>Estimates</LinkButton><LinkButton href={newRecordPath(seriesId, 'segment')}>Add a segment</LinkButton></>}
    />
  );
  if (view.reels.length === 0) {
    return (
      <PageBody>
        {head}
        <EmptyState title="There is no episode yet" actions={<LinkButton href={newRecordPath(seriesId, 'episode')} look="main">Add an episode</LinkButton>}>
          <p>An episode has a release. From it follows when its recording must be complete, and whether your sessions hold that much work.</p>
        </EmptyState>
      </PageBody>
    );
  }
  return (
    <PageBody>
      {head}
      <Shelf seriesId={view.seriesId} reels={view.reels} loose={view.looseRows} titles={view.titles} />
      <Bank bank={view.bank} seriesId={seriesId} />
      <Proposals view={view} />
      {view.sponsorIssues.length > 0 ? (
        <section className={styles.section} aria-labelledby="sponsors-head">
          <h2 id="sponsors-head">Owed to sponsors</h2>
          <IssueList issues={view.sponsorIssues} seriesId={seriesId} />
        </section>
      ) : null}
      {view.orderIssues.length > 0 ? (
        <section className={styles.section} aria-labelledby="order-head">
          <h2 id="order-head">Parts that go back in time on screen</h2>
          <IssueList issues={view.orderIssues} seriesId={seriesId} />
        </section>
      ) : null}
    </PageBody>
  );
}

function Bank({ bank, seriesId }: { readonly bank: BankView; readonly seriesId: string }) {
  return (
    <section className={styles.section} aria-labelledby="bank-head">
      <h2 id="bank-head">Finished episodes in hand</h2>
      <p className={bank.isAlarm ? styles.alarm : undefined}>
        {bank.isAlarm ? <TriangleAlert size={18} aria-hidden /> : null} {bank.summary}
      </p>
      <nav aria-label="Cadence" className={styles.choices}>
        {bank.choices.map(({ days, label, isCurrent }, index) => (
          <Link key={days} href={index === 0 ? episodesPath(seriesId) : `${episodesPath(seriesId)}?every=${days}`} scroll={false} aria-current={isCurrent ? 'true' : undefined}>{label}</Link>
        ))}
      </nav>
      <IssueList issues={bank.issues} seriesId={seriesId} />
      <FactsTable
        label="Episodes in hand by week"
        columns={['Week', 'In hand', 'What happens']}
        rows={bank.weeks.map((week) => ({
          key: week.week,
          cells: [
            <>{week.week} <span className={styles.soft}>{week.monday}</span></>,
            <>
              <span className={week.isBelow ? styles.warn : undefined}>{week.inHand}{week.isBelow ? `, fewer than ${bank.minimum}` : ''}</span>
              {week.evergreen > 0 ? <span className={styles.soft}> ({week.evergreen} for any week)</span> : null}
            </>,
            week.events.join('; '),
          ],
        }))}
      />
    </section>
  );
}

function Proposals({ view }: { readonly view: EpisodesView }) {
  return (
    <section className={styles.section} aria-labelledby="fit-head">
      <h2 id="fit-head">Which segments go together</h2>
      {view.loose.length > 0 ? (
        <p>
          In no episode yet: {view.loose.map(({ id, name, text }, index) => (
            <span key={id}>{index > 0 ? ', ' : ''}<Link href={recordPath(view.seriesId, 'segment', id) ?? kindPath(view.seriesId, 'segment')} prefetch={false}>{name}</Link> ({text})</span>
          ))}.
        </p>
      ) : null}
      {view.proposalIssues.length > 0 ? <IssueList issues={view.proposalIssues} seriesId={view.seriesId} /> : null}
      {view.proposals.length === 0 && view.proposalIssues.length === 0 ? <p className={styles.soft}>No better way to cut the story into episodes is known.</p> : null}
      <div className={styles.proposals}>
        {view.proposals.map((proposal) => <Proposal key={proposal.title} proposal={proposal} seriesId={view.seriesId} />)}
      </div>
    </section>
  );
}

function Proposal({ proposal, seriesId }: { readonly proposal: ProposalView; readonly seriesId: string }) {
  return (
    <article className={styles.proposal}>
      <h3>{proposal.title} <span className={styles.soft}>{proposal.moves} {proposal.moves === 1 ? 'segment moves' : 'segments move'}{proposal.gap === null ? '' : `, ${proposal.gap}`}</span></h3>
      <ol className={styles.cuts}>
        {proposal.episodes.map((episode) => (
          <li key={episode.name}>
            <strong>{episode.name}</strong> <span className={styles.soft}>{episode.reasons}</span>
            <ul className={styles.names}>
              {episode.segments.map((segment) => <li key={segment.name}>{segment.isNew ? <b>{segment.name} (moves here)</b> : segment.name}</li>)}
            </ul>
          </li>
        ))}
      </ol>
      {proposal.warnings.map((warning) => <p key={warning} className={styles.warn}><TriangleAlert size={15} aria-hidden /> {warning}</p>)}
      <ArrangeButton seriesId={seriesId} arrangement={proposal.arrangement}>Put them like this <span className="visually-hidden">({proposal.title.toLowerCase()})</span></ArrangeButton>
    </article>
  );
}

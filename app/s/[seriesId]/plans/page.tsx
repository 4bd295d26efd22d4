import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import type { ReactNode } from 'react';
import {
  ArrowDown, ArrowLeft, ArrowRight, ArrowUp, Check, Equal, MapPin, Minus, Plus, TriangleAlert, Users, type LucideIcon,
} from 'lucide-react';
import { EmptyState, estimatesPath, Fold, historyPath, LinkButton, newRecordPath, PageBody, PageHead, repeatSessionsPath, weekPath } from '@/app/_ui';
import { loadDocument, openViewContext, viewPlans, type ChangeLine, type DraftView, type EpisodeLine, type PlanFacts, type PlanRow, type PlansView } from '@/lib/views';
import { FindPlace } from '../week/find-place';
import { RecordLink } from '../week/record-link';
import { Decision } from './decision';
import { Goals } from './goals';
import { LoosePins } from './loose-pins';
import { Replan } from './replan';
import styles from './page.module.css';

interface Props {
  readonly params: Promise<{ seriesId: string }>;
}

export const metadata: Metadata = { title: 'Plans' };

/** Changes shown before the fold. */
const MOST_CHANGES = 12;

export default async function PlansPage({ params }: Props) {
  const { seriesId } = await params;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const view = await viewPlans(await openViewContext(), document);
  return (
    <PageBody>
      <PageHead
        title="Plans"
        lead="A new plan is a draft until you accept it. Until then the accepted one counts, and nothing moves."
        actions={view.accepted ? <LinkButton href={weekPath(seriesId, view.currentWeek)}>See this week</LinkButton> : null}
      />
      <Start view={view} />
      {view.openWork > 0 ? <p className={styles.soft}>{view.experience} <Link href={estimatesPath(seriesId)}>Estimates</Link></p> : null}
      {view.openWork > 0 ? <Goals view={view} /> : null}
      {view.draft ? <Draft draft={view.draft} view={view} /> : null}
      <LoosePins view={view} />
      {view.accepted ? <Accepted plan={view.accepted} seriesId={seriesId} /> : null}
      {view.history.length > 0 ? <History rows={view.history} /> : null}
    </PageBody>
  );
}

function Start({ view }: { readonly view: PlansView }) {
  if (view.openWork === 0) {
    return (
      <EmptyState title="There is nothing to plan yet" actions={<LinkButton href={newRecordPath(view.seriesId, 'task')} look="main">Add a task</LinkButton>}>
        <p>Describe the work as tasks: what is done, by how many people, where, and what it does to which part.</p>
      </EmptyState>
    );
  }
  if (view.sessionsAhead === 0) {
    return (
      <EmptyState title="There is no session ahead" actions={<LinkButton href={repeatSessionsPath(view.seriesId)} look="main">Add sessions</LinkButton>}>
        <p>Work is planned into sessions only: the evenings and days that somebody is in the workshop.</p>
      </EmptyState>
    );
  }
  return <Replan seriesId={view.seriesId} hasPlan={view.history.length > 0} />;
}

function Facts({ plan }: { readonly plan: PlanFacts }) {
  return (
    <dl className={styles.facts}>
      <div><dt>Work</dt><dd>{plan.work}</dd></div>
      <div className={plan.isLate ? styles.bad : undefined}><dt>Episodes</dt><dd>{plan.isLate ? <TriangleAlert size={16} aria-hidden /> : null} {plan.late}</dd></div>
      <div className={plan.unplaced > 0 ? styles.bad : undefined}><dt>Without a place</dt><dd>{plan.unplaced === 0 ? 'nothing' : plan.unplaced}</dd></div>
      <div><dt>Ends</dt><dd>{plan.finish}</dd></div>
      {plan.bank === null ? null : <div><dt>In hand</dt><dd>{plan.bank}</dd></div>}
      {plan.heating === null ? null : <div><dt>Heating</dt><dd>{plan.heating}</dd></div>}
      <div className={styles.wideFact}><dt>Search</dt><dd>{plan.search}. {plan.proof}</dd></div>
    </dl>
  );
}

function Draft({ draft, view }: { readonly draft: DraftView; readonly view: PlansView }) {
  const [first, rest] = [draft.changes.slice(0, MOST_CHANGES), draft.changes.slice(MOST_CHANGES)];
  return (
    <section className={styles.draft} aria-labelledby="draft-head">
      <h2 id="draft-head">
        Plan {draft.number} <span className={styles.soft}>draft, made {draft.madeAt}</span>
      </h2>
      <p className={styles.summary}>{draft.summary}</p>
      {draft.staleness ? (
        <p className={styles.stale}>
          <TriangleAlert size={18} aria-hidden /> {draft.staleness} Re-plan before you accept.
        </p>
      ) : null}
      <Decision seriesId={view.seriesId} number={draft.number} isStale={draft.staleness !== null} people={view.people} pinCount={view.loosePins.length} />
      <Facts plan={draft} />
      {draft.episodes.length > 0 ? (
        <Fold id="draft-episodes" level="h3" title="Episodes" className={styles.section}>
          <EpisodeList lines={draft.episodes.filter((line) => line.kind !== 'same' || line.isLate)} seriesId={view.seriesId} />
          <Folded count={draft.episodes.filter((line) => line.kind === 'same' && !line.isLate).length} words="as before">
            <EpisodeList lines={draft.episodes.filter((line) => line.kind === 'same' && !line.isLate)} seriesId={view.seriesId} />
          </Folded>
        </Fold>
      ) : null}
      {draft.without.length > 0 ? (
        <>
          <h3 className={styles.bad}>Without a place</h3>
          <ul className={`plain ${styles.without}`}>
            {draft.without.map((work) => (
              <li key={`${work.subject.id}:${work.title}`}>
                <RecordLink seriesId={view.seriesId} to={work.subject}>{work.title}</RecordLink>
                <span>{work.reasons.map((reason) => [reason.text, reason.change].filter(Boolean).join(' ')).join(' ')}</span>
                <FindPlace plan="draft" seriesId={view.seriesId} subject={work.subject} title={work.title} />
              </li>
            ))}
          </ul>
        </>
      ) : null}
      {draft.changes.length > 0 ? (
        <Fold id="draft-changes" level="h3" title={`What moves against plan ${view.accepted?.number ?? ''}`} className={styles.section}>
          <ChangeList changes={first} />
          <Folded count={rest.length} words="more">
            <ChangeList changes={rest} />
          </Folded>
        </Fold>
      ) : null}
    </section>
  );
}

function Folded({ count, words, children }: { readonly count: number; readonly words: string; readonly children: ReactNode }) {
  if (count === 0) return null;
  return (
    <details>
      <summary className={styles.more}>
        {count} {words}
      </summary>
      {children}
    </details>
  );
}

function EpisodeList({ lines, seriesId }: { readonly lines: readonly EpisodeLine[]; readonly seriesId: string }) {
  return (
    <ul className={`plain ${styles.lines}`}>
      {lines.map((line) => (
        <Episode key={line.episode.id} line={line} seriesId={seriesId} />
      ))}
    </ul>
  );
}

const EPISODE_SIGNS: Record<EpisodeLine['kind'], { readonly icon: LucideIcon; readonly word: string }> = {
  better: { icon: ArrowUp, word: 'Better' },
  worse: { icon: ArrowDown, word: 'Worse' },
  same: { icon: Equal, word: 'Same' },
  first: { icon: Plus, word: 'First' },
};

function Episode({ line, seriesId }: { readonly line: EpisodeLine; readonly seriesId: string }) {
  const { icon: Icon, word } = EPISODE_SIGNS[line.kind];
  const tone = line.kind === 'worse' ? styles.bad : line.kind === 'better' ? styles.good : styles.soft;
  return (
    <li>
      <span className={`${styles.sign} ${tone}`}>
        <Icon size={16} aria-hidden /> {word}
      </span>
      <span>
        <RecordLink seriesId={seriesId} to={line.episode}>{line.episode.name}</RecordLink> <span className={styles.soft}>{line.text}</span>
      </span>
      <span className={line.isLate ? styles.bad : styles.soft}>
        {line.isLate ? <TriangleAlert size={15} aria-hidden /> : null} {line.outlook}
      </span>
    </li>
  );
}

const CHANGE_SIGNS: Record<ChangeLine['kind'], LucideIcon> = {
  added: Plus, removed: Minus, earlier: ArrowLeft, later: ArrowRight, crew: Users, place: MapPin,
};

function ChangeList({ changes }: { readonly changes: readonly ChangeLine[] }) {
  return (
    <ul className={`plain ${styles.lines}`}>
      {changes.map((change) => {
        const Icon = CHANGE_SIGNS[change.kind];
        return (
          <li key={change.key}>
            <span className={`${styles.sign} ${styles[change.kind] ?? ''}`}>
              <Icon size={16} aria-hidden /> {change.kindWord}
            </span>
            <span className={styles.changed}>{change.title}</span>
            <span className={styles.soft}>{change.text}</span>
          </li>
        );
      })}
    </ul>
  );
}

function Accepted({ plan, seriesId }: { readonly plan: NonNullable<PlansView['accepted']>; readonly seriesId: string }) {
  return (
    <section className={styles.section} aria-labelledby="accepted-head">
      <h2 id="accepted-head">
        <Check size={22} aria-hidden className={styles.good} /> Plan {plan.number} <span className={styles.soft}>accepted, made {plan.madeAt}</span>
      </h2>
      {plan.stamp.staleness ? (
        <p className={styles.stale}>
          <TriangleAlert size={18} aria-hidden /> {plan.stamp.staleness} <Link href={historyPath(seriesId)}>See the changes</Link>
        </p>
      ) : null}
      <Facts plan={plan} />
    </section>
  );
}

function History({ rows }: { readonly rows: readonly PlanRow[] }) {
  return (
    <Fold id="history-head" title="All plans" className={styles.section}>
      <ol className={`plain ${styles.history}`}>
        {rows.map((row) => (
          <li key={row.number} className={row.status === 'accepted' ? styles.counts : undefined}>
            <span className={styles.number}>{row.number}</span>
            <span className={styles.status}>{row.statusWord}</span>
            <span>made {row.madeAt}{row.acceptedAt ? `, accepted ${row.acceptedAt}` : ''}{row.acceptedWords ? ` ${row.acceptedWords}` : ''}</span>
            <span className={styles.soft}>
              {row.size}, {row.unplaced === 0 ? 'everything placed' : `${row.unplaced} without a place`}, ends {row.finish}; from change {row.basedOnChange}
            </span>
          </li>
        ))}
      </ol>
    </Fold>
  );
}

import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Suspense } from 'react';
import { ChevronLeft, ChevronRight, Flag, Route } from 'lucide-react';
import { EmptyState, IssueList, LinkButton, PageBody, PageHead, plansPath, repeatSessionsPath, weekPath } from '@/app/_ui';
import { parseIsoWeek } from '@/lib/calendar';
import { loadDocument, openViewContext, viewWeek, type WaitingWork, type WeekView } from '@/lib/views';
import { BlockSheet } from '../block-sheet';
import { DayList } from '../day-list';
import { FindPlace } from '../find-place';
import { Legend } from '../legend';
import type { MovedBlock } from '../held';
import { isMovable } from '../movable';
import { MoveStrip } from '../move-strip';
import { MoverHost } from '../mover';
import { PlanBanner } from '../plan-banner';
import { RecordLink } from '../record-link';
import { RepairOffer } from '../repair-offer';
import { SessionCard } from '../session-card';
import { Strip } from '../strip';
import type { ScaledSpan } from '../strip-time';
import { WhatIfPanel } from '../what-if-panel';
import styles from './page.module.css';

interface Props {
  readonly params: Promise<{ seriesId: string; week: string }>;
  /** `if`: what may happen, for the what-if panel. */
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

export async function generateMetadata({ params }: Pick<Props, 'params'>): Promise<Metadata> {
  return { title: `Week ${decodeURIComponent((await params).week)}` };
}

export default async function WeekPage({ params, searchParams }: Props) {
  const [{ seriesId, week }, query] = await Promise.all([params, searchParams]);
  const parsed = parseIsoWeek(decodeURIComponent(week));
  const document = await loadDocument(seriesId);
  if (!parsed.ok || document === null) notFound();
  const view = await viewWeek(await openViewContext(), document, parsed.value);
  return (
    <MoverHost seriesId={seriesId} blocks={listMovable(view)} spans={spansOf(view)} sessions={view.moveTo}>
      <PageBody isWide paper="strip">
        <PageHead
          above={<WeekLinks view={view} />}
          title={view.label}
          actions={
            <>
              {view.plan === null ? null : <LinkButton href="#what-if">What if…</LinkButton>}
              <LinkButton href={plansPath(seriesId)} look={view.plan === null || view.plan.staleness ? 'main' : 'plain'}>
                <Route size={18} aria-hidden /> {view.plan === null ? 'Make a plan' : 'Re-plan'}
              </LinkButton>
            </>
          }
        />
        {view.plan === null && view.sessions.length === 0 ? null : <PlanBanner plan={view.plan} seriesId={seriesId} strayCount={view.strayCount} />}
        {view.plan === null ? null : <Suspense fallback={null}><RepairOffer seriesId={seriesId} /></Suspense>}
        <h2 className="visually-hidden">The week</h2>
        <WeekBody view={view} />
        <Conflicts view={view} />
        <Sessions view={view} />
        <div className={styles.pair}>
          {view.sessions.length > 0 ? <Fallback view={view} /> : null}
          <Deadlines view={view} />
        </div>
        {view.plan === null ? null : <WhatIfPanel seriesId={seriesId} week={view.week} happened={[query.if ?? []].flat()} />}
        <Waiting view={view} />
        {Object.values(view.blocks).map((block) => (
          <BlockSheet key={block.id} block={block} seriesId={seriesId} />
        ))}
      </PageBody>
    </MoverHost>
  );
}

function spansOf(view: WeekView): ScaledSpan[] {
  return view.days.flatMap(({ windows }) => windows.map(({ end, left, start, width }) => ({ start, end, left, width })));
}

function listMovable(view: WeekView): MovedBlock[] {
  return Object.values(view.blocks).flatMap((block) => (isMovable(block) && block.taskId !== null
    ? [{ id: block.id, taskId: block.taskId, revision: block.revision, title: block.label, start: block.start, when: block.when }]
    : []));
}

function WeekLinks({ view }: { readonly view: WeekView }) {
  return (
    <span className={styles.links}>
      <span className={styles.steps}>
        <Link href={weekPath(view.seriesId, view.previousWeek)} aria-label={`Week before, ${view.previousWeek}`}>
          <ChevronLeft size={20} aria-hidden />
        </Link>
        <Link href={weekPath(view.seriesId, view.nextWeek)} aria-label={`Week after, ${view.nextWeek}`}>
          <ChevronRight size={20} aria-hidden />
        </Link>
        {view.week === view.currentWeek ? null : <Link href={weekPath(view.seriesId, view.currentWeek)}>This week</Link>}
      </span>
      <span>
        Week {view.week}
        {view.plan ? ` · plan ${view.plan.number}, made ${view.plan.madeAt}` : ''}
      </span>
    </span>
  );
}

function WeekBody({ view }: { readonly view: WeekView }) {
  if (view.sessions.length === 0 && view.rows.length === 0) {
    return (
      <div className={styles.section}>
        <EmptyState title="No session and nothing under way this week" actions={<LinkButton href={repeatSessionsPath(view.seriesId)}>Add sessions</LinkButton>}>
          <p>Work is planned into sessions only. Add the evenings and days that the workshop is open, then re-plan.</p>
        </EmptyState>
      </div>
    );
  }
  return (
    <>
      <div className={styles.desk}>
        <MoveStrip spans={spansOf(view)} zone={view.zone}>
          <Strip view={view} />
        </MoveStrip>
        <Legend />
        {view.closedPlaces.length > 0 ? <p className={styles.closed}>Closed all week: {view.closedPlaces.join(', ')}.</p> : null}
      </div>
      <DayList view={view} />
    </>
  );
}

const MOST_CONFLICTS = 4;

function Conflicts({ view }: { readonly view: WeekView }) {
  if (view.conflicts.length === 0) return null;
  const more = view.conflicts.length - MOST_CONFLICTS;
  return (
    <section className={styles.section} aria-labelledby="conflicts-head">
      <h2 id="conflicts-head">Heat and solvent in the same air</h2>
      <IssueList issues={view.conflicts.slice(0, MOST_CONFLICTS)} seriesId={view.seriesId} />
      {more > 0 ? <p>And {more} more this week.</p> : null}
    </section>
  );
}

function Sessions({ view }: { readonly view: WeekView }) {
  if (view.sessions.length === 0) return null;
  return (
    <section className={styles.section}>
      <h2>Sessions and what must be ready</h2>
      <div className={styles.cards}>
        {view.sessions.map((card) => (
          <SessionCard key={card.id} card={card} view={view} />
        ))}
      </div>
    </section>
  );
}

function Fallback({ view }: { readonly view: WeekView }) {
  return (
    <section className={styles.section}>
      <h2>If a session falls through</h2>
      {view.fallback.length === 0 ? (
        <p className={styles.soft}>No open task can be done alone, without an outside part, warmth or daylight, that is not in this week already.</p>
      ) : (
        <>
          <p className={styles.soft}>Work for one person that needs no weather, no helper and no part from outside, and is not in this week already.</p>
          <ul className={`plain ${styles.lines}`}>
            {view.fallback.map((item) => (
              <li key={item.taskId}>
                <RecordLink seriesId={view.seriesId} to={{ kind: 'task', id: item.taskId }}>{item.title}</RecordLink>
                <span className={styles.soft}>
                  {item.length}
                  {item.place ? ` · ${item.place}` : ''}
                  {item.isFilmed ? ' · to be filmed' : ''}
                </span>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

function Deadlines({ view }: { readonly view: WeekView }) {
  const deadlines = view.days.flatMap((day) => day.deadlines.map((deadline) => ({ ...deadline, day: day.label })));
  if (deadlines.length === 0) return null;
  return (
    <section className={styles.section}>
      <h2>Due this week</h2>
      <ul className={`plain ${styles.lines}`}>
        {deadlines.map((deadline) => (
          <li key={`${deadline.kind}:${deadline.episode.id}`}>
            <span className={styles.due}>
              <Flag size={18} aria-hidden />
              <strong>{deadline.day}</strong> <RecordLink seriesId={view.seriesId} to={deadline.episode}>{deadline.text}</RecordLink>
            </span>
            <span className={deadline.isLate ? styles.late : styles.soft}>{deadline.outlook}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Waiting({ view }: { readonly view: WeekView }) {
  if (view.unplaced.length + view.later.length === 0) return null;
  return (
    <section className={styles.section}>
      <h2>Not this week, and why</h2>
      {view.unplaced.length > 0 ? (
        <>
          <h3 className={styles.late}>No place in the plan at all</h3>
          <WaitingList works={view.unplaced} seriesId={view.seriesId} />
        </>
      ) : null}
      {view.later.length > 0 ? (
        <>
          <h3>Later{view.laterCount > view.later.length ? `: the next ${view.later.length} of ${view.laterCount} tasks` : ''}</h3>
          <WaitingList works={view.later} seriesId={view.seriesId} />
        </>
      ) : null}
    </section>
  );
}

function WaitingList({ works, seriesId }: { readonly works: readonly WaitingWork[]; readonly seriesId: string }) {
  return (
    <ul className={`plain ${styles.waiting}`}>
      {works.map((work) => (
        <li key={`${work.subject.kind}:${work.subject.id}:${work.title}`}>
          <span className={styles.waitingTitle}><RecordLink seriesId={seriesId} to={work.subject}>{work.title}</RecordLink></span>
          <span className={styles.waitingWhen}>{work.when ?? 'no date'}</span>
          <span className={styles.waitingWhy}>
            {work.reasons.length === 0 ? 'Other work comes first.' : work.reasons.map((reason) => reason.text).join(' ')}
            {work.when === null ? work.reasons.flatMap((reason) => reason.change ?? []).map((change) => ` ${change}`).join('') : ''}
          </span>
          {work.when === null ? <div className={styles.waitingPlace}><FindPlace plan="accepted" seriesId={seriesId} subject={work.subject} title={work.title} /></div> : null}
        </li>
      ))}
    </ul>
  );
}

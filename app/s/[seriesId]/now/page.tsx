import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Suspense } from 'react';
import {
  Ban, Camera, CircleHelp, Clapperboard, Hand, OctagonAlert, PackageCheck, PaintRoller, Truck, Undo2, Wind, type LucideIcon,
} from 'lucide-react';
import { EmptyState, LinkButton, PageBody, plansPath, repeatSessionsPath, weekPath } from '@/app/_ui';
import { loadDocument, openViewContext, viewNow, type NowView, type NowWork, type Reminder } from '@/lib/views';
import { pickActed } from '../week/acted-block';
import { BlockActions } from '../week/block-actions';
import { BlockSheet } from '../week/block-sheet';
import { BlockSign, sheetId } from '../week/block-sign';
import { PlanBanner } from '../week/plan-banner';
import { RepairOffer } from '../week/repair-offer';
import { RecordLink } from '../week/record-link';
import { ClockButtons } from './clock-buttons';
import { Refresh } from './refresh';
import styles from './page.module.css';

interface Props {
  readonly params: Promise<{ seriesId: string }>;
}

export const metadata: Metadata = { title: 'Now' };

export default async function NowPage({ params }: Props) {
  const { seriesId } = await params;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const view = await viewNow(await openViewContext(), document);
  const blocks = new Map([...view.now, ...view.next].map((work) => [work.block.id, work.block]));
  return (
    <PageBody>
      <Refresh />
      {view.plan === null ? null : <PlanBanner plan={view.plan} seriesId={seriesId} />}
      {view.plan === null ? null : <Suspense fallback={null}><RepairOffer seriesId={seriesId} /></Suspense>}
      <SessionLine view={view} />
      <div className={styles.columns}>
        <div>
          <OtherClocks view={view} />
          <NowPart view={view} />
          <NextPart view={view} />
        </div>
        <DontForget view={view} />
      </div>
      {[...blocks.values()].map((block) => (
        <BlockSheet key={block.id} block={block} seriesId={seriesId} />
      ))}
    </PageBody>
  );
}

function SessionLine({ view }: { readonly view: NowView }) {
  const { session } = view;
  return (
    <header className={styles.head}>
      <p className={styles.clock}>{view.clock}</p>
      <h1 className={styles.state}>
        {view.phase === 'running' ? 'In session' : view.phase === 'between' ? 'Next session' : 'No session ahead'}
        {view.distance ? <span className={styles.distance}> {view.distance}</span> : null}
      </h1>
      {session ? (
        <p className={styles.session}>
          <Link href={`${weekPath(view.seriesId, view.currentWeek)}#session-${session.id}`}>{session.when}</Link> · {session.crew.join(', ') || 'nobody is in'}
        </p>
      ) : null}
      {view.filming ? (
        <p className={styles.filming}>
          <Camera size={22} aria-hidden /> {view.filming}
        </p>
      ) : null}
    </header>
  );
}

/** Clocks of work that is not shown large below. */
function OtherClocks({ view }: { readonly view: NowView }) {
  const first = view.phase === 'between' ? view.next.slice(0, 1) : [];
  const shown = new Set([...view.now, ...first].map(({ block }) => block.taskId));
  return view.clocks.filter((clock) => !shown.has(clock.taskId)).map((clock) => (
    <section key={clock.id} aria-label={`Clock of ${clock.title}`}>
      <strong>{clock.title}</strong>
      <ClockButtons seriesId={view.seriesId} taskId={null} title={clock.title} clocks={[clock]} />
    </section>
  ));
}

function NowPart({ view }: { readonly view: NowView }) {
  if (view.phase === 'over') {
    return (
      <EmptyState title="No session ahead" actions={<LinkButton href={repeatSessionsPath(view.seriesId)}>Add sessions</LinkButton>}>
        <p>Add the evenings and days that the workshop is open, then re-plan.</p>
      </EmptyState>
    );
  }
  if (view.plan === null) {
    return (
      <EmptyState title="Nothing is planned yet" actions={<LinkButton href={plansPath(view.seriesId)} look="main">Make a plan</LinkButton>}>
        <p>Once a plan is accepted, this page says what to do, what comes next and what not to forget.</p>
      </EmptyState>
    );
  }
  if (view.phase === 'between' && view.now.length === 0) return null;
  return (
    <section className={styles.part} aria-labelledby="now-head">
      <h2 id="now-head">Now</h2>
      {view.now.length === 0 ? <p className={styles.idle}>Nothing is planned for this minute.</p> : null}
      {view.now.map((work) => (
        <BigWork key={work.block.id} work={work} clocks={view.clocks} seriesId={view.seriesId} />
      ))}
    </section>
  );
}

function NextPart({ view }: { readonly view: NowView }) {
  if (view.next.length === 0) {
    return view.plan !== null && view.session ? <p className={styles.idle}>Nothing else is planned in this session. The week shows a fallback.</p> : null;
  }
  const [first, ...others] = view.next;
  const isFirstBig = view.phase === 'between';
  return (
    <section className={styles.part} aria-labelledby="next-head">
      <h2 id="next-head">{isFirstBig ? 'First' : 'Next'}</h2>
      {first && isFirstBig ? <BigWork work={first} clocks={view.clocks} seriesId={view.seriesId} /> : null}
      {isFirstBig && others.length > 0 ? <h2>Then</h2> : null}
      <ul className={`plain ${styles.next}`}>
        {(isFirstBig ? others : view.next).map((work) => (
          <li key={work.block.id}>
            <button type="button" className={styles.nextWork} popoverTarget={sheetId(work.block.id)}>
              <span className={styles.nextTime}>{work.time}</span>
              <span className={styles.nextTitle}>{work.block.title}</span>
              <span className={styles.small}>{describeCrew(work)}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

const describeCrew = ({ block }: NowWork): string => [block.crew.join(' and '), block.place].filter(Boolean).join(' · ');

function BigWork({ work, clocks, seriesId }: { readonly work: NowWork; readonly clocks: NowView['clocks']; readonly seriesId: string }) {
  const { block } = work;
  const taskId = block.kind === 'task' || block.kind === 'before-shot' ? block.taskId : null;
  const look = block.kind === 'before-shot' ? styles.film : block.kind === 'task' ? '' : styles.errand;
  return (
    <article className={`${styles.big} ${look}`}>
      <p className={styles.kind}>
        <BlockSign kind={block.kind} size={24} /> {block.kindWord} <span className={styles.time}>{work.time}</span>
        {work.phase === 'open' ? <span className={styles.open}>time is over, not ticked</span> : null}
      </p>
      <h3 className={styles.title}>{block.title}</h3>
      <p className={styles.crew}>{describeCrew(work)}</p>
      {block.isIrreversible && block.kind === 'task' ? (
        <p className={styles.once}>
          <OctagonAlert size={24} aria-hidden /> Once only
        </p>
      ) : null}
      {block.cautions.length > 0 ? (
        <ul className={`plain ${styles.cautions}`}>
          {block.cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      ) : null}
      {block.shots.length > 0 ? (
        <p className={styles.shots}>
          <Camera size={22} aria-hidden /> <span>Film: {block.shots.map((shot) => shot.name).join('; ')}</span>
        </p>
      ) : null}
      {taskId === null ? null : <ClockButtons seriesId={seriesId} taskId={taskId} title={block.title} clocks={clocks.filter((clock) => clock.taskId === taskId)} />}
      <div className={styles.actions}>
        <BlockActions block={pickActed(block)} seriesId={seriesId} isLarge />
        <button type="button" className={styles.more} popoverTarget={sheetId(block.id)}>
          Why, parts, lay-out<span className="visually-hidden">: {block.title}</span>
        </button>
      </div>
    </article>
  );
}

const REMINDERS: Record<Reminder['kind'], { readonly icon: LucideIcon; readonly word: string }> = {
  'stay out': { icon: Wind, word: 'Stay out' },
  'hands off': { icon: Ban, word: 'Hands off' },
  recoat: { icon: PaintRoller, word: 'Recoat' },
  'film first': { icon: Clapperboard, word: 'Film first' },
  deliver: { icon: Truck, word: 'Drop off' },
  collect: { icon: Undo2, word: 'Collect' },
  'not ticked': { icon: CircleHelp, word: 'Not ticked' },
  ready: { icon: PackageCheck, word: 'Have ready' },
};

function DontForget({ view }: { readonly view: NowView }) {
  return (
    <section className={styles.forget} aria-labelledby="forget-head">
      <h2 id="forget-head">Don’t forget</h2>
      {view.dontForget.length === 0 ? <p className={styles.idle}>Nothing to remember before the next session.</p> : null}
      <ul className={`plain ${styles.reminders}`}>
        {view.dontForget.map((reminder) => {
          const { icon: Icon, word } = reminder.readyKind === 'lay out' ? { icon: Hand, word: 'Lay out' } : REMINDERS[reminder.kind];
          return (
            <li key={reminder.key} className={`${reminder.isUrgent ? styles.urgent : ''} ${reminder.kind === 'hands off' ? styles.hands : ''}`}>
              <Icon size={22} aria-hidden />
              <span>
                <span className={styles.word}>{word}</span>
                {reminder.moment ? <span className={styles.moment}> {reminder.moment}</span> : null}
                <span className={styles.text}><RecordLink seriesId={view.seriesId} to={reminder.subject}>{reminder.text}</RecordLink></span>
              </span>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

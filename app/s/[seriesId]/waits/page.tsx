import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Check, OctagonX, TriangleAlert } from 'lucide-react';
import { climatePath, EmptyState, IssueList, LinkButton, newRecordPath, PageBody, PageHead, recordPath, ScrollRegion, tradeLibraryPath, waitsPath } from '@/app/_ui';
import { loadDocument, openViewContext, viewWaits, type AwayJob, type CuringCoat, type GoView, type HeatingView, type HeldWork, type WaitsView } from '@/lib/views';
import { CoatBar } from './coat-bar';
import { HeatingCurve } from './heating-curve';
import { JobEvents } from './job-events';
import { PlanHeating } from './plan-heating';
import { PlanLateWork } from './plan-late-work';
import sheets from '../_sheets/sheets.module.css';
import styles from './page.module.css';

interface Props {
  readonly params: Promise<{ seriesId: string }>;
  readonly searchParams: Promise<{ what?: string; by?: string; confidence?: string }>;
}

export const metadata: Metadata = { title: 'Waits' };

export default async function WaitsPage({ params, searchParams }: Props) {
  const [{ seriesId }, { what, by, confidence }] = await Promise.all([params, searchParams]);
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const view = await viewWaits(await openViewContext(), document, { heating: { what: what ?? null, by: by ?? null }, confidence: Number(confidence ?? 80) });
  return (
    <PageBody>
      <PageHead title="Waits" lead={`What is drying and what is away, ${view.clock}. ${view.temperature}`} actions={<><LinkButton href={climatePath(seriesId)}>Climate</LinkButton><LinkButton href={tradeLibraryPath(seriesId)}>Trades and their habits</LinkButton></>} />
      <Curing view={view} />
      {view.heating ? <Heating heating={view.heating} seriesId={seriesId} /> : null}
      <Go go={view.go} seriesId={seriesId} />
      <Jobs view={view} />
    </PageBody>
  );
}

function Held({ holds, seriesId }: { readonly holds: readonly HeldWork[]; readonly seriesId: string }) {
  if (holds.length === 0) return <p className={sheets.soft}>Holds nothing up.</p>;
  return (
    <div>
      <p>Holds up:</p>
      <ul className={styles.holds}>
        {holds.map((work) => (
          <li key={work.id}>
            <Link href={recordPath(seriesId, work.kind, work.id) ?? '#'}>{work.name}</Link>, {work.planned === null ? 'not planned' : `planned ${work.planned}`}
          </li>
        ))}
      </ul>
    </div>
  );
}

function Curing({ view }: { readonly view: WaitsView }) {
  return (
    <section className={`${sheets.section} ${styles.section}`} aria-labelledby="curing-head">
      <h2 id="curing-head">Drying now</h2>
      {view.curing.length === 0 ? (
        <EmptyState title="No coat is drying">
          <p>When a task that lays a coat is ticked as done, it stands here with the moment it becomes touchable and everything that waits for it.</p>
        </EmptyState>
      ) : view.curing.map((coat) => <Coat key={coat.key} coat={coat} seriesId={view.seriesId} />)}
    </section>
  );
}

function Coat({ coat, seriesId }: { readonly coat: CuringCoat; readonly seriesId: string }) {
  return (
    <article className={styles.coat}>
      <h3>
        {coat.title}: <Link href={recordPath(seriesId, 'material', coat.materialId) ?? '#'}>{coat.material}</Link>
      </h3>
      <p className={styles.touch}>
        {coat.isTouchable ? <>Touchable since <strong>{coat.touchable}</strong></> : <>Hands off until <strong>{coat.touchable}</strong></>}
        <span className={sheets.soft}>, laid {coat.laid}</span>
      </p>
      <CoatBar coat={coat} />
      {coat.alarms.length > 0 ? <IssueList issues={coat.alarms} seriesId={seriesId} /> : null}
      {coat.late ? <PlanLateWork seriesId={seriesId} late={coat.late} /> : null}
      <Held holds={coat.holds} seriesId={seriesId} />
    </article>
  );
}

function Go({ go, seriesId }: { readonly go: GoView | null; readonly seriesId: string }) {
  return (
    <section className={`${sheets.section} ${styles.section}`} aria-labelledby="go-head">
      <h2 id="go-head">Next coating session</h2>
      {go === null ? <p className={sheets.soft}>No coat is ahead, or no session opens its place.</p> : (
        <>
          <p>
            <Link href={recordPath(seriesId, 'task', go.taskId) ?? '#'}>{go.title}</Link> with {go.material}, {go.at}
          </p>
          <p className={`${styles.verdict} ${go.isGo ? styles.go : styles.noGo}`}>
            {go.isGo ? <Check size={28} aria-hidden /> : <OctagonX size={28} aria-hidden />} {go.isGo ? 'Go' : 'No go'}
          </p>
          <ul className={`plain ${styles.checks}`}>
            {go.checks.map((check) => (
              <li key={check.message} className={check.isMet ? styles.met : check.isStop ? styles.unmet : styles.doubt}>
                {check.isMet ? <Check size={18} aria-hidden /> : check.isStop ? <OctagonX size={18} aria-hidden /> : <TriangleAlert size={18} aria-hidden />}
                <span>{check.message}</span>
              </li>
            ))}
          </ul>
          <p>{go.earliest === null ? 'No session ahead is a go. Heat the session, or choose another material.' : `Earliest go in a session: ${go.earliest}.`}</p>
          {go.potLife ? <p>{go.potLife}</p> : null}
          <ul className={sheets.cautions} aria-label="Cautions of the material">
            {go.cautions.map((caution) => <li key={caution}>{caution}</li>)}
          </ul>
        </>
      )}
    </section>
  );
}

function Heating({ heating, seriesId }: { readonly heating: HeatingView; readonly seriesId: string }) {
  return (
    <section className={`${sheets.section} ${styles.section}`} aria-labelledby="heating-head">
      <h2 id="heating-head">What heating would buy</h2>
      <form method="get" action={waitsPath(seriesId)} className={sheets.chooser}>
        <label>
          Warm
          <select name="what" defaultValue={heating.chosen}>{heating.choices.map(({ value, label }) => <option key={value} value={value}>{label}</option>)}</select>
        </label>
        <label>
          Ready to handle by the shoot of
          <select name="by" defaultValue={heating.by}>{heating.byChoices.map(({ value, label }) => <option key={value} value={value}>{label}</option>)}</select>
        </label>
        <button type="submit">Work it out</button>
      </form>
      <p className={styles.touch}><strong>{heating.verdict}</strong></p>
      {heating.hazards.length > 0 ? <IssueList issues={heating.hazards} /> : null}
      {heating.moreHazards > 0 ? <p className={styles.unmet}>And {heating.moreHazards} more such hours in the next days.</p> : null}
      {heating.run ? <PlanHeating seriesId={seriesId} run={heating.run} /> : null}
      <div className={styles.pair}>
        <HeatingCurve points={heating.points} />
        <ScrollRegion className={sheets.scroll} label="Ways to heat">
          <table className={sheets.table}>
            <caption>Ways to heat from now, on top of what is planned</caption>
            <thead><tr>{['Heating', 'Hours on', 'Heat', 'Cost', 'Ready to handle'].map((word) => <th key={word} scope="col">{word}</th>)}</tr></thead>
            <tbody>
              {heating.points.map((point) => (
                <tr key={point.name} className={point.isCheapest ? styles.best : undefined}>
                  <th scope="row">{point.name}{point.isCheapest ? ' (cheapest in time)' : ''}</th>
                  <td>{point.hours} h</td><td>{point.kwh} kWh</td><td>{point.cost}</td><td>{point.ready}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollRegion>
      </div>
      <ul className={sheets.cautions} aria-label="Cautions of the heater">
        {heating.cautions.map((caution) => <li key={caution}>{caution}</li>)}
      </ul>
    </section>
  );
}

function Jobs({ view }: { readonly view: WaitsView }) {
  return (
    <>
      <section className={`${sheets.section} ${styles.section}`} aria-labelledby="away-head">
        <h2 id="away-head">Away now</h2>
        {view.away.length === 0 ? <p className={sheets.soft}>Nothing is at an outside trade.</p> : view.away.map((job) => <Job key={job.id} job={job} seriesId={view.seriesId} />)}
      </section>
      <section className={`${sheets.section} ${styles.section}`} aria-labelledby="ahead-head">
        <h2 id="ahead-head">To be dropped off</h2>
        {view.ahead.length === 0 ? (
          <p className={sheets.soft}>No outside job is ahead. <Link href={newRecordPath(view.seriesId, 'outsideJob')}>Add one</Link></p>
        ) : (
          <>
            <form method="get" action={waitsPath(view.seriesId)} className={sheets.chooser}>
              <label>
                How sure the return must be
                <select name="confidence" defaultValue={String(view.confidence)}>
                  {[...new Set([50, 80, 90, 95, view.confidence])].toSorted((a, b) => a - b).map((share) => <option key={share} value={share}>{share} %</option>)}
                </select>
              </label>
              <button type="submit">Work out the drop-offs</button>
            </form>
            {view.ahead.map((job) => <Job key={job.id} job={job} seriesId={view.seriesId} />)}
          </>
        )}
      </section>
    </>
  );
}

function Job({ job, seriesId }: { readonly job: AwayJob; readonly seriesId: string }) {
  return (
    <article className={styles.job}>
      <h3>
        <Link href={recordPath(seriesId, 'outsideJob', job.id) ?? '#'}>{job.name}</Link> <span className={sheets.soft}>{job.trade}, {job.since}</span>
      </h3>
      <p>{job.parts}{job.isAway ? '. Cannot be worked or filmed until it is back.' : ''}</p>
      {job.dropOff ? <p><strong>{job.dropOff}</strong></p> : null}
      {job.alarms.length > 0 ? <IssueList issues={job.alarms} seriesId={seriesId} /> : null}
      {job.isAway ? <JobInside job={job} seriesId={seriesId} /> : (
        <details className={sheets.more}>
          <summary>Chances, what it holds up, what happened<span className="visually-hidden">: {job.name}</span></summary>
          <JobInside job={job} seriesId={seriesId} />
        </details>
      )}
    </article>
  );
}

function JobInside({ job, seriesId }: { readonly job: AwayJob; readonly seriesId: string }) {
  return (
    <div className={styles.inside}>
      {job.chances.length > 0 ? (
        <p className={styles.chances}>
          <span>Back by:</span>
          {job.chances.map(({ percent, day }) => <span key={percent}><strong>{day}</strong> with {percent} %</span>)}
        </p>
      ) : null}
      <p className={sheets.soft}>{job.learned}</p>
      {job.needed ? <p>{job.needed}</p> : null}
      <Held holds={job.holds} seriesId={seriesId} />
      <JobEvents key={`${job.id} ${job.revision}`} seriesId={seriesId} job={{ id: job.id, revision: job.revision, name: job.name, isAway: job.isAway, promisedFor: job.promisedFor }} />
    </div>
  );
}

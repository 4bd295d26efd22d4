import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { OctagonX, TriangleAlert } from 'lucide-react';
import { episodeSafetyPath, episodesPath, IssueList, LinkButton, logPath, newRecordPath, PageBody, PageHead, recordPath } from '@/app/_ui';
import { loadDocument, openViewContext, viewEpisode, type EpisodePageView } from '@/lib/views';
import { RecordLink } from '../../week/record-link';
import styles from '../episodes.module.css';
import { ArrangeButton } from '../action-button';
import { FactsTable } from '../facts-table';
import { StandingSign } from '../standing-sign';
import { SegmentReel } from './segment-reel';

interface Props {
  readonly params: Promise<{ seriesId: string; episodeId: string }>;
}

async function load({ params }: Props): Promise<EpisodePageView> {
  const { seriesId, episodeId } = await params;
  const document = await loadDocument(seriesId);
  const view = document === null ? null : await viewEpisode(await openViewContext(), document, decodeURIComponent(episodeId));
  if (view === null) notFound();
  return view;
}

export async function generateMetadata(props: Props): Promise<Metadata> {
  return { title: (await load(props)).name };
}

export default async function EpisodePage(props: Props) {
  const view = await load(props);
  const { seriesId } = view;
  return (
    <PageBody>
      <PageHead
        title={view.name}
        above={<><Link href={episodesPath(seriesId)}>Episodes</Link> · {view.above}</>}
        lead={view.lead}
        actions={<LinkButton href={recordPath(seriesId, 'episode', view.id) ?? episodesPath(seriesId)}>Release and stage</LinkButton>}
      />
      <Budget view={view} />
      <section className={styles.section} aria-labelledby="segments-head">
        <h2 id="segments-head">Segments</h2>
        <SegmentReel seriesId={seriesId} episodeId={view.id} rows={view.segments} loose={view.loose} runtime={view.runtime} titles={view.titles} due={view.due} otherEpisodes={view.otherEpisodes} />
        <RuntimeOffers view={view} />
        <p className={styles.soft}>{view.results === 0 ? 'Nothing finished is shown in it.' : `${view.results} of them ${view.results === 1 ? 'shows' : 'show'} something finished.`} Titles take {view.titles} min.</p>
        {view.warnings.length > 0 ? <IssueList issues={view.warnings} seriesId={seriesId} /> : null}
        <p><LinkButton href={newRecordPath(seriesId, 'segment')}>Add a segment</LinkButton></p>
      </section>
      <Shots view={view} />
      <Sponsors view={view} />
      <Safety view={view} />
      <Continuity view={view} />
    </PageBody>
  );
}

function Budget({ view }: { readonly view: EpisodePageView }) {
  return (
    <section className={styles.section} aria-labelledby="time-head">
      <h2 id="time-head">Workshop time</h2>
      <StandingSign standing={view.standing} />
      <p>{view.standing.text}{view.owedElsewhere === null ? '' : ` ${view.owedElsewhere}`}</p>
      {view.balances.length > 0 ? (
        <FactsTable
          label="Crew time needed and free"
          columns={['Crew time', 'Needs', 'P80', 'In sessions before', 'Taken by earlier ones', 'Left', 'Left at P80']}
          rows={view.balances.map(({ what, need, p80, available, earlier, left, leftAtP80, isShort }) => ({
            key: what, cells: [what, need, p80, available, earlier, <span key="left" className={isShort ? styles.bad : undefined}>{left}</span>, leftAtP80],
          }))}
        />
      ) : null}
      {view.relief.length > 0 ? (
        <>
          <h3>What would make it fit</h3>
          <ul className={styles.relief}>
            {view.relief.map(({ frees, isEnough, changes }) => (
              <li key={changes.map(({ words }) => words).join()}>
                {changes.map(({ words, task }, index) => (
                  <span key={words}>{index > 0 ? '; ' : ''}<RecordLink seriesId={view.seriesId} to={task}>{words}</RecordLink></span>
                ))}
                <span className={styles.soft}> frees {frees}{isEnough ? '' : ', still not enough'}</span>
              </li>
            ))}
          </ul>
        </>
      ) : null}
    </section>
  );
}

/** Segments that mend the runtime, each with the button that moves them. */
function RuntimeOffers({ view }: { readonly view: EpisodePageView }) {
  if (view.runtimeOffers.length === 0) return null;
  return (
    <>
      <h3>What would make it fit its runtime</h3>
      <ul className={styles.relief}>
        {view.runtimeOffers.map(({ words, arrangement }) => (
          <li key={words}>{words} <ArrangeButton seriesId={view.seriesId} arrangement={arrangement}>Do this<span className="visually-hidden">: {words}</span></ArrangeButton></li>
        ))}
      </ul>
    </>
  );
}

function Shots({ view }: { readonly view: EpisodePageView }) {
  return (
    <section className={styles.section} aria-labelledby="shots-head">
      <h2 id="shots-head">Shots and camera</h2>
      {[...view.shotWords, ...view.camera].map((words) => <p key={words}>{words}</p>)}
      {view.shots.length > 0 ? (
        <FactsTable
          label="Shots"
          columns={['Shot', 'Purpose', 'Work', 'State']}
          rows={view.shots.map((shot) => ({
            key: shot.key,
            cells: [
              <>
                {shot.name}{shot.isMustHave ? <span className={styles.soft}> must have</span> : null}
                {shot.parts === '' ? null : <span className={styles.small}><br />{shot.parts}</span>}
                {shot.risk === null ? null : <span className={styles.small}><br /><TriangleAlert size={14} aria-hidden /> {shot.risk}</span>}
              </>,
              shot.purpose, <RecordLink key="task" seriesId={view.seriesId} to={shot.task}>{shot.task.name}</RecordLink>, shot.state,
            ],
          }))}
        />
      ) : null}
    </section>
  );
}

function Sponsors({ view }: { readonly view: EpisodePageView }) {
  return (
    <section className={styles.section} aria-labelledby="owed-head">
      <h2 id="owed-head">Sponsors</h2>
      {view.sponsors.length === 0 ? <p className={styles.soft}>Nothing is owed to a sponsor in this episode.</p> : null}
      {view.sponsors.map((one) => (
        <article key={one.id} className={styles.owed}>
          <h3><RecordLink seriesId={view.seriesId} to={{ kind: 'sponsorship', id: one.id }}>{one.name}</RecordLink></h3>
          <p className={styles.soft}>{one.text}</p>
          {one.issues.length === 0 ? <p>All of it is met.</p> : <IssueList issues={one.issues} seriesId={view.seriesId} except={one.id} />}
        </article>
      ))}
    </section>
  );
}

function Safety({ view: { seriesId, id, safety } }: { readonly view: EpisodePageView }) {
  return (
    <section className={styles.section} aria-labelledby="safety-head">
      <h2 id="safety-head">Safety</h2>
      <p className={`${styles.standing} ${safety.isOpen ? styles.bad : ''}`}>{safety.isOpen ? <OctagonX size={18} aria-hidden /> : null} {safety.words}</p>
      {safety.hazards.length > 0 ? <p>Shown in it: {safety.hazards.join('; ')}.</p> : <p className={styles.soft}>Its filmed work shows no known hazard.</p>}
      {safety.first.length > 0 ? (
        <ul className={styles.relief}>
          {safety.first.map(({ message, fix }) => <li key={message}>{message}<br /><span className={styles.soft}>{fix}</span></li>)}
          {safety.more > 0 ? <li>{safety.more} more on the checklist.</li> : null}
        </ul>
      ) : null}
      <p><LinkButton href={episodeSafetyPath(seriesId, id)}>Open the checklist</LinkButton></p>
    </section>
  );
}

function Continuity({ view: { seriesId, continuity } }: { readonly view: EpisodePageView }) {
  const { stops, words, first, more, promises, pickups } = continuity;
  return (
    <section className={styles.section} aria-labelledby="continuity-head">
      <h2 id="continuity-head">Does it cut together</h2>
      <p className={`${styles.standing} ${stops > 0 ? styles.bad : ''}`}>{stops > 0 ? <OctagonX size={18} aria-hidden /> : null} {words}</p>
      {first.length > 0 ? <IssueList issues={first} seriesId={seriesId} /> : null}
      {more > 0 ? <p className={styles.soft}>{more} more in the checks of the log.</p> : null}
      {promises.length > 0 ? (
        <>
          <h3>Promised on camera</h3>
          <ul className={styles.relief}>
            {promises.map((promise) => <li key={promise.id}><RecordLink seriesId={seriesId} to={{ kind: 'promise', id: promise.id }}>{promise.words}</RecordLink> <span className={styles.soft}>{promise.standing}</span></li>)}
          </ul>
        </>
      ) : null}
      {pickups.length > 0 ? (
        <>
          <h3>To be filmed once more</h3>
          <ul className={styles.relief}>{pickups.map((pickup) => <li key={pickup.key}>{pickup.words}</li>)}</ul>
        </>
      ) : null}
      <p className={styles.actions}>
        <LinkButton href={`${logPath(seriesId)}/checks`}>Open the checks</LinkButton>
        {pickups.length > 0 ? <LinkButton href={`${logPath(seriesId)}/pickups`}>Plan a pickup</LinkButton> : null}
      </p>
    </section>
  );
}

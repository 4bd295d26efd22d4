import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { LinkButton, PageBody, PageHead, progressPath } from '@/app/_ui';
import { loadDocument, openViewContext, viewProgress, type ProgressView } from '@/lib/views';
import { Answers } from '../answers';
import { NoPlan } from '../no-plan';
import { Timelines } from '../timelines';
import styles from '../progress.module.css';

interface Props {
  readonly params: Promise<{ seriesId: string }>;
}

export const metadata: Metadata = { title: 'Weekly review' };

function Lines({ id, title, lines, nothing }: { readonly id: string; readonly title: string; readonly lines: readonly string[]; readonly nothing: string }) {
  return (
    <section className={styles.section} aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {lines.length === 0 ? <p>{nothing}</p> : <ul>{lines.map((line) => <li key={line}>{line}</li>)}</ul>}
    </section>
  );
}

export default async function ReviewPage({ params }: Props) {
  const { seriesId } = await params;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const view = await viewProgress(await openViewContext(), document);
  return (
    <PageBody>
      <PageHead title={`Review of week ${view.week}`} lead={`${view.seriesName}, ${view.today}. Prints on paper as it stands.`} actions={<LinkButton href={progressPath(seriesId)}>Progress</LinkButton>} />
      {view.planNumber === null ? <NoPlan view={view} /> : <Review view={view} />}
    </PageBody>
  );
}

function Review({ view }: { readonly view: ProgressView }) {
  const { forecast, parts, review, seriesId } = view;
  return (
    <>
      <Answers answers={view.answers} seriesId={seriesId} />
      {view.timelines === null ? null : <Timelines timelines={view.timelines} />}
      <div className={styles.flow}>
        <Lines id="done-head" title="Done last week and this week" lines={review.done} nothing="Nothing was marked done." />
        <Lines id="late-head" title="Planned and not done" lines={review.late} nothing="Nothing is behind the plan." />
        <section className={styles.section} aria-labelledby="state-head">
          <h2 id="state-head">Where things stand</h2>
          <ul>
            <li>{view.earned.words}</li>
            <li>{parts.done.length} of {parts.total} parts done; away: {parts.away.join(', ') || 'none'}; drying: {parts.drying.join(', ') || 'none'}.</li>
            {forecast === null ? <li>No forecast yet.</li> : <li>Done by {forecast.finish.p50} with 50 %, by {forecast.finish.p80} with 80 %. {forecast.beyond}</li>}
            {forecast?.episodes.filter((row) => row.tone !== 'good').slice(0, 5).map((row) => <li key={row.episode.id}>{row.episode.name}: {row.chance} for its release on {row.release}.</li>)}
          </ul>
        </section>
        <Lines id="next-head" title="To the end of next week" lines={review.next} nothing="Nothing is planned." />
      </div>
    </>
  );
}

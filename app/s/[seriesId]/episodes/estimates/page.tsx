import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { EmptyState, episodesPath, kindPath, LinkButton, newRecordPath, PageBody, PageHead, recordPath } from '@/app/_ui';
import { loadDocument, viewEstimates, type EstimatesView, type FactorRow } from '@/lib/views';
import { ExperienceSwitch } from '../action-button';
import styles from '../episodes.module.css';
import { FactsTable } from '../facts-table';

interface Props {
  readonly params: Promise<{ seriesId: string }>;
}

export const metadata: Metadata = { title: 'Estimates' };

export default async function EstimatesPage({ params }: Props) {
  const { seriesId } = await params;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const view = viewEstimates(document);
  return (
    <PageBody>
      <PageHead
        title="Estimates"
        above={<Link href={episodesPath(seriesId)}>Episodes</Link>}
        lead="What finished work took against what was thought, and what that says about the rest."
        actions={<LinkButton href={kindPath(seriesId, 'timeLog')}>Time logs</LinkButton>}
      />
      <section className={styles.section} aria-labelledby="switch-head">
        <h2 id="switch-head">{view.usesExperience ? 'The plan goes by experience' : 'The plan goes by the typed times'}</h2>
        <p>{view.effect}</p>
        <p className={styles.soft}>{view.note}</p>
        <ExperienceSwitch seriesId={seriesId} revision={view.revision} isOn={view.usesExperience} />
      </section>
      {view.points.length === 0 ? (
        <EmptyState title="No finished task has a time log yet" actions={<LinkButton href={newRecordPath(seriesId, 'timeLog')} look="main">Add a time log</LinkButton>}>
          <p>Start the clock of a task on the Now page, or type what it took. Hands-on time and filming count apart.</p>
        </EmptyState>
      ) : (
        <>
          <Plot view={view} />
          <Factors title="Hands-on time" rows={view.handsOn} />
          <Factors title="Filming" rows={view.filming} />
          <OpenTasks view={view} />
        </>
      )}
    </PageBody>
  );
}

const SIZE = 320;
const EDGE = 40;

/** Each finished task: as thought across, as it was upwards. On the line they are the same. */
function Plot({ view }: { readonly view: EstimatesView }) {
  const at = (minutes: number): number => (SIZE * minutes) / view.reach;
  const ticks = [0, 0.5, 1].map((share) => Math.round(view.reach * share));
  return (
    <section className={styles.section} aria-labelledby="plot-head">
      <h2 id="plot-head">Thought and taken</h2>
      <figure className={styles.plot}>
        <svg viewBox={`0 0 ${SIZE + EDGE + 10} ${SIZE + EDGE + 10}`} role="img" aria-label="Estimate against actual time; the table below has the same values.">
          <g transform={`translate(${EDGE} 10)`}>
            <line x1="0" y1={SIZE} x2={SIZE} y2="0" className={styles.even} />
            <path d={`M0 0 V${SIZE} H${SIZE}`} className={styles.axis} />
            {ticks.map((minutes) => (
              <g key={minutes} className={styles.tick}>
                <text x={at(minutes)} y={SIZE + 18} textAnchor="middle">{minutes}</text>
                <text x="-6" y={SIZE - at(minutes) + 5} textAnchor="end">{minutes}</text>
              </g>
            ))}
            {view.points.map((point) => {
              const look = `${point.kind === 'filming' ? styles.filmPoint : styles.workPoint} ${point.wasInterrupted ? styles.hollow : ''}`;
              const [x, y] = [at(point.estimate), SIZE - at(point.actual)];
              return point.kind === 'filming'
                ? <rect key={point.key} x={x - 5} y={y - 5} width="10" height="10" className={look} />
                : <circle key={point.key} cx={x} cy={y} r="6" className={look} />;
            })}
          </g>
        </svg>
        <figcaption className={styles.soft}>Minutes as thought across, minutes taken upwards. Round: hands-on. Square: filming. Hollow: interrupted. Above the line it took longer.</figcaption>
      </figure>
      <FactsTable
        label="Finished tasks"
        columns={['Task', 'What', 'Thought', 'Taken']}
        rows={view.points.map((point) => ({
          key: point.key,
          cells: [point.name, `${point.kind}, ${point.category}${point.wasInterrupted ? ', interrupted' : ''}`, `${Math.round(point.estimate)} min`, `${Math.round(point.actual)} min`],
        }))}
      />
    </section>
  );
}

/** What the factors and their spread make of the work ahead. */
function OpenTasks({ view }: { readonly view: EstimatesView }) {
  return (
    <section className={styles.section} aria-labelledby="ahead-head">
      <h2 id="ahead-head">Work ahead</h2>
      <p className={styles.soft}>The open tasks that experience changes most. Eight of ten such tasks keep to the P80: it counts the scatter of finished work and how sure its factor is.</p>
      <FactsTable
        label="Open tasks, as typed and by experience"
        columns={['Task', 'Typed', 'Typed, P80', 'By experience', 'By experience, P80', 'From']}
        rows={view.open.map((row) => ({
          key: row.id, cells: [<Link key="task" href={recordPath(view.seriesId, 'task', row.id) ?? kindPath(view.seriesId, 'task')} prefetch={false}>{row.name}</Link>, row.typed, row.typedP80, row.experienced, row.experiencedP80, row.from],
        }))}
      />
    </section>
  );
}

function Factors({ title, rows }: { readonly title: string; readonly rows: readonly FactorRow[] }) {
  if (rows.length === 0) return null;
  return (
    <section className={styles.section}>
      <h2>{title}</h2>
      <p className={styles.soft}>The fewer of a sort there are, the more its factor borrows from the others. Eight of ten such factors lie in the range.</p>
      <FactsTable
        label={`${title}: factors`}
        columns={['Sort', 'Finished', 'Takes', 'Range', 'Its own mean', 'Borrowed']}
        rows={rows.map((row) => ({ key: row.what, cells: [row.what, row.n, row.factor, row.interval, row.own, row.borrowed] }))}
      />
    </section>
  );
}

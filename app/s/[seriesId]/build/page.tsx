import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Hourglass, PackageOpen, TriangleAlert } from 'lucide-react';
import { buildPath, EmptyState, LinkButton, newRecordPath, PageBody, PageHead, plansPath } from '@/app/_ui';
import { loadDocument, openViewContext, viewBuild, type Assembly, type Bead, type BuildView, type PartThread } from '@/lib/views';
import { RecordLink } from '../week/record-link';
import { Graph, GraphList } from './graph';
import styles from './page.module.css';

interface Props {
  readonly params: Promise<{ seriesId: string }>;
  readonly searchParams: Promise<{ assembly?: string | string[]; all?: string | string[] }>;
}

export const metadata: Metadata = { title: 'Build' };

export default async function BuildPage({ params, searchParams }: Props) {
  const { seriesId } = await params;
  const asked = await searchParams;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const assembly = typeof asked.assembly === 'string' ? asked.assembly : null;
  const view = await viewBuild(await openViewContext(), document, assembly, asked.all !== undefined);
  return (
    <PageBody isWide>
      <PageHead
        title="Build"
        lead={
          view.hasPlan
            ? `Every part as a thread of its states, and the work in its order. Dates are those of plan ${view.planNumber}.`
            : 'Every part as a thread of its states, and the work in its order. There are no dates before the first plan.'
        }
        actions={view.hasPlan || view.graph.nodes.length === 0 ? null : <LinkButton href={plansPath(seriesId)} look="main">Make a plan</LinkButton>}
      />
      {view.staleness ? (
        <p className={styles.stale}>
          <TriangleAlert size={20} aria-hidden /> {view.staleness} <Link href={plansPath(seriesId)}>Re-plan</Link>.
        </p>
      ) : null}
      {view.assemblies.length === 0 ? (
        <EmptyState title="No parts yet" actions={<LinkButton href={newRecordPath(seriesId, 'part')} look="main">Add a part</LinkButton>}>
          <p>A part has states in the order they come: as bought, stripped, primed, painted. Tasks take it from one to the next.</p>
        </EmptyState>
      ) : (
        <>
          <Choices view={view} />
          <Parts view={view} />
        </>
      )}
      {view.assemblies.length + view.graph.nodes.length > 0 ? <Work view={view} /> : null}
    </PageBody>
  );
}

function Legend() {
  return (
    <ul className={`plain ${styles.legend}`} aria-label="Signs">
      <li><span className={`${styles.knob} ${styles.reached}`} /> reached</li>
      <li><span className={`${styles.knob} ${styles.current}`} /> is in it now</li>
      <li><span className={`${styles.knob} ${styles.planned}`} /> planned</li>
      <li><span className={`${styles.knob} ${styles.open}`} /> no date yet</li>
      <li><span className={`${styles.sample} ${styles.away}`} /> away at a trade</li>
      <li><span className={`${styles.sample} ${styles.drying}`} /> dries afterwards</li>
    </ul>
  );
}

/** Which assembly the page is about. */
function Choices({ view }: { readonly view: BuildView }) {
  const base = buildPath(view.seriesId);
  return (
    <nav aria-label="Assemblies" className={styles.choices}>
      {view.assemblies.map((one) => (
        <Link key={one.name} href={`${base}?assembly=${encodeURIComponent(one.name)}`} aria-current={view.chosen === one.name ? 'true' : undefined} prefetch={false}>
          {one.name}
          <span className={styles.count}>
            {one.reached}/{one.total}
            <span className="visually-hidden"> states reached</span>
          </span>
        </Link>
      ))}
      <Link href={`${base}?all`} aria-current={view.chosen === null ? 'true' : undefined} prefetch={false}>
        Everything
      </Link>
    </nav>
  );
}

function Parts({ view }: { readonly view: BuildView }) {
  const shown = view.assemblies.filter((one) => view.chosen === null || one.name === view.chosen);
  return (
    <section className={styles.section}>
      <h2>Parts and their states</h2>
      <Legend />
      {shown.map((one) => (
        <AssemblyPart key={one.name} assembly={one} seriesId={view.seriesId} />
      ))}
    </section>
  );
}

function AssemblyPart({ assembly, seriesId }: { readonly assembly: Assembly; readonly seriesId: string }) {
  return (
    <section className={styles.assembly} aria-label={`Assembly ${assembly.name}`}>
      <h3>
        {assembly.name}{' '}
        <span className={styles.soft}>
          {assembly.parts.length === 1 ? '1 part' : `${assembly.parts.length} parts`}, {assembly.reached} of {assembly.total} states reached
        </span>
      </h3>
      <div className={styles.threads}>
        {assembly.parts.map((thread) => (
          <Thread key={thread.part.id} thread={thread} seriesId={seriesId} />
        ))}
      </div>
      <details className={styles.tableFold}>
        <summary>{assembly.name} as a table</summary>
        <ThreadTable assembly={assembly} />
      </details>
    </section>
  );
}

function Thread({ thread, seriesId }: { readonly thread: PartThread; readonly seriesId: string }) {
  return (
    <section className={styles.thread} aria-label={thread.part.name}>
      <div className={styles.partName}>
        <h4><RecordLink seriesId={seriesId} to={thread.part}>{thread.part.name}</RecordLink></h4>
        <p className={thread.isAway ? styles.isAway : styles.soft}>
          {thread.isAway ? <PackageOpen size={15} aria-hidden /> : null} {thread.whereabouts}
        </p>
      </div>
      <ol className={`plain ${styles.beads}`}>
        {thread.beads.map((bead) => (
          <BeadItem key={bead.stateId} bead={bead} seriesId={seriesId} />
        ))}
      </ol>
    </section>
  );
}

const STATUS_WORDS: Record<Bead['status'], string> = { reached: 'reached', current: 'now', planned: 'planned', open: 'no date yet' };

function describeStatus(bead: Bead): string {
  if (bead.status === 'open') return bead.by ? 'no date yet' : 'nothing makes it';
  if (bead.when === null) return STATUS_WORDS[bead.status];
  return bead.status === 'current' ? `now, since ${bead.when}` : bead.when;
}

function BeadItem({ bead, seriesId }: { readonly bead: Bead; readonly seriesId: string }) {
  return (
    <li className={`${styles.bead} ${styles[bead.way]} ${styles[`is-${bead.status}`]}`}>
      <span className={`${styles.knob} ${styles[bead.status]}`} aria-hidden />
      <RecordLink seriesId={seriesId} to={bead.by} className={styles.state}>{bead.name}</RecordLink>
      <span className={styles.when}>{describeStatus(bead)}</span>
      {bead.wait && bead.status !== 'reached' ? (
        <span className={bead.way === 'away' ? styles.awayWait : styles.dryWait}>
          {bead.way === 'away' ? <PackageOpen size={13} aria-hidden /> : <Hourglass size={13} aria-hidden />} {bead.wait}
        </span>
      ) : null}
    </li>
  );
}

function ThreadTable({ assembly }: { readonly assembly: Assembly }) {
  return (
    <div className={styles.tableScroll}>
      <table className={styles.table}>
        <caption className="visually-hidden">{assembly.name}: states of its parts</caption>
        <thead>
          <tr>
            <th scope="col">Part</th>
            <th scope="col">State</th>
            <th scope="col">Status</th>
            <th scope="col">Date</th>
            <th scope="col">Made by</th>
            <th scope="col">Wait</th>
          </tr>
        </thead>
        <tbody>
          {assembly.parts.flatMap((thread) =>
            thread.beads.map((bead, index) => (
              <tr key={`${thread.part.id}:${bead.stateId}`}>
                {index === 0 ? <th scope="rowgroup" rowSpan={thread.beads.length}>{thread.part.name}</th> : null}
                <td>{bead.name}</td>
                <td>{STATUS_WORDS[bead.status]}</td>
                <td>{bead.when ?? 'none'}</td>
                <td>{bead.by?.name ?? (index === 0 ? 'comes so' : 'nothing')}</td>
                <td>{bead.wait ?? 'none'}</td>
              </tr>
            )),
          )}
        </tbody>
      </table>
    </div>
  );
}

function Work({ view }: { readonly view: BuildView }) {
  return (
    <section className={styles.section}>
      <h2>Work in its order{view.chosen === null ? '' : `: ${view.chosen}`}</h2>
      {view.graph.ring.length > 0 ? (
        <p className={styles.ring} role="alert">
          <TriangleAlert size={20} aria-hidden /> The order contradicts itself: {view.graph.ring.join(', then ')}, and back to the first. Remove one of these orders.
        </p>
      ) : null}
      {view.graph.nodes.length === 0 ? (
        <EmptyState title="No work here yet" actions={<LinkButton href={newRecordPath(view.seriesId, 'task')}>Add a task</LinkButton>}>
          <p>A task takes parts from one state to the next; the order follows from that.</p>
        </EmptyState>
      ) : (
        <>
          <Graph graph={view.graph} seriesId={view.seriesId} name={view.chosen ?? 'everything'} />
          <GraphList graph={view.graph} seriesId={view.seriesId} />
        </>
      )}
    </section>
  );
}

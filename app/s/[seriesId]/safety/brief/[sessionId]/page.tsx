import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { OctagonX } from 'lucide-react';
import { IssueList, PageBody, PageHead, plansPath, safetyPath } from '@/app/_ui';
import { loadDocument, openViewContext, viewBrief, type BriefView } from '@/lib/views';
import { ExposureTable, VapourList } from '../../exposures';
import { PrintButton } from '../../print-button';
import styles from '../../safety.module.css';

interface Props {
  readonly params: Promise<{ seriesId: string; sessionId: string }>;
}

export const metadata: Metadata = { title: 'Session brief' };

export default async function BriefPage({ params }: Props) {
  const { seriesId, sessionId } = await params;
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const view = await viewBrief(await openViewContext(), document, sessionId);
  if (view === null) notFound();
  return (
    <PageBody paper="brief">
      <PageHead title={`Brief: ${view.name}`} above={<Link href={safetyPath(seriesId)}>Safety</Link>} lead={`${view.when}. In: ${view.crew}. ${view.standing}`} actions={<PrintButton />} />
      {view.order.length === 0 ? (
        <p className={`${styles.soft} ${styles.nothing}`}>
          {view.hasPlan ? 'The accepted plan has no work in this session.' : 'Nothing is planned yet.'} <Link href={plansPath(seriesId)}>Plans</Link>
        </p>
      ) : null}
      <IssueList issues={view.combinations} seriesId={seriesId} />
      <div className={styles.brief}>
        <Order view={view} />
        <NotAlone view={view} />
        <Listing id="hand" title="At hand before the start" lines={view.atHand.map(({ code, meaning }) => `${meaning} (${code})`)} isRun />
        <Listing id="lay" title="Lay out" lines={view.layOut} isLong isRun />
        <Listing id="wear" title="Wear" lines={view.worn} isRun />
        <Listing id="air" title="Ventilation" lines={view.ventilation} />
        <Listing id="cautions" title="Cautions of the tasks" lines={view.cautions} isLong />
        <Hazards view={view} />
        {view.unstated === '' ? null : (
          <section aria-labelledby="brief-unstated">
            <h2 id="brief-unstated">Nothing stated</h2>
            <p>No fact that is a hazard has been stated for: {view.unstated}. That does not mean that there is none.</p>
          </section>
        )}
        <Listing id="stop" title="Stop rules" lines={view.stopRules} />
        {view.exposures.length + view.vapours.length === 0 ? null : (
          <section aria-labelledby="brief-exposure">
            <h2 id="brief-exposure">Noise, vibration, vapour</h2>
            <ExposureTable rows={view.exposures} />
            <VapourList rows={view.vapours} seriesId={seriesId} />
          </section>
        )}
      </div>
    </PageBody>
  );
}

interface ListingProps {
  readonly id: string;
  readonly title: string;
  readonly lines: readonly string[];
  readonly isLong?: boolean;
  /** On paper one after the other, to keep to one sheet. */
  readonly isRun?: boolean;
}

function Listing({ id, title, lines, isLong = false, isRun = false }: ListingProps) {
  if (lines.length === 0) return null;
  return (
    <section aria-labelledby={`brief-${id}`} className={isLong ? styles.long : undefined}>
      <h2 id={`brief-${id}`}>{title}</h2>
      <ul className={isRun ? styles.run : undefined}>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
}

function Order({ view }: { readonly view: BriefView }) {
  if (view.order.length === 0) return null;
  return (
    <section aria-labelledby="brief-order">
      <h2 id="brief-order">Order: dusty before clean</h2>
      <ol>
        {view.order.map(({ id, name, place, when, who, why }) => (
          <li key={id}>
            {name} <span className={styles.soft}>{[when, who, place, why].filter(Boolean).join(', ')}</span>
          </li>
        ))}
      </ol>
    </section>
  );
}

function NotAlone({ view }: { readonly view: BriefView }) {
  if (view.notAlone.length === 0) return null;
  return (
    <section aria-labelledby="brief-alone">
      <h2 id="brief-alone">Not alone</h2>
      <ul>
        {view.notAlone.map(({ text, isCovered }) => (
          <li key={text} className={isCovered ? undefined : styles.stop}>
            {isCovered ? null : <OctagonX size={16} aria-hidden />} {text}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Hazards({ view }: { readonly view: BriefView }) {
  if (view.hazards.length === 0) return null;
  return (
    <section aria-labelledby="brief-hazards" className={styles.long}>
      <h2 id="brief-hazards">Hazards of this session</h2>
      {view.hazards.map((hazard) => (
        <article key={hazard.id} className={styles.briefHazard}>
          <h3>
            {hazard.name} <span className={styles.soft}>severity {hazard.severity}</span>
          </h3>
          <p className={styles.soft}>{hazard.tasks}</p>
          {hazard.deferral === null ? null : <p className={styles.stop}>Leave it: {hazard.deferral}</p>}
          <p>“{hazard.spoken}”</p>
          <ul>
            {hazard.controls.map((control) => (
              <li key={control}>{control}</li>
            ))}
          </ul>
        </article>
      ))}
    </section>
  );
}

import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Droplets, Flame, TriangleAlert } from 'lucide-react';
import { climatePath, EmptyState, IssueList, kindPath, LinkButton, newRecordPath, PageBody, PageHead, recordPath, ScrollRegion, seriesSettingsPath, waitsPath } from '@/app/_ui';
import { loadDocument, openViewContext, viewClimate, type ClimateView } from '@/lib/views';
import { Curve } from './curve';
import { FitButton } from './fit-button';
import { ImportForm } from './import-form';
import sheets from '../_sheets/sheets.module.css';
import styles from './page.module.css';

interface Props {
  readonly params: Promise<{ seriesId: string }>;
  readonly searchParams: Promise<{ air?: string; from?: string }>;
}

export const metadata: Metadata = { title: 'Climate' };

export default async function ClimatePage({ params, searchParams }: Props) {
  const [{ seriesId }, { air, from }] = await Promise.all([params, searchParams]);
  const document = await loadDocument(seriesId);
  if (document === null) notFound();
  const view = await viewClimate(await openViewContext(), document, { airZone: air ?? null, from: from ?? null });
  return (
    <PageBody isWide>
      <PageHead
        title="Climate"
        lead={`The air of the workshop by the hour, ${view.span}.`}
        actions={<LinkButton href={waitsPath(seriesId)}>What waits for it</LinkButton>}
      />
      {view.airZones.length > 0 ? <Chooser view={view} /> : null}
      {view.curve === null ? <NoWeather seriesId={seriesId} /> : <Drawn view={view} />}
      <section className={`${sheets.section} ${styles.section}`} aria-labelledby="room-head">
        <h2 id="room-head">Room and heater</h2>
        <p>{view.room} <Link href={seriesSettingsPath(seriesId)}>Change it</Link></p>
        {view.freshAir ? <p>{view.freshAir}</p> : null}
        <Cautions view={view} />
      </section>
      <section className={`${sheets.section} ${styles.section}`} aria-labelledby="readings-head">
        <h2 id="readings-head">Readings of loggers</h2>
        <Readings view={view} />
        <ImportForm seriesId={seriesId} airZone={view.airZone} airZones={view.airZones} zone={view.zone} zones={view.zones} />
      </section>
    </PageBody>
  );
}

/** Air and dates, chosen without a script. */
function Chooser({ view }: { readonly view: ClimateView }) {
  const path = climatePath(view.seriesId);
  const to = (from: string) => `${path}?air=${encodeURIComponent(view.airZone)}&from=${from}`;
  return (
    <form method="get" action={path} className={sheets.chooser}>
      <label>
        Air
        <select name="air" defaultValue={view.airZone}>
          {view.airZones.map(({ value, label }) => <option key={value} value={value}>{label}</option>)}
        </select>
      </label>
      <label>
        From
        <input type="date" name="from" defaultValue={view.from} />
      </label>
      <button type="submit">Show</button>
      <span className={styles.steps}>
        <Link href={to(view.before)}>Week before</Link>
        <Link href={to(view.after)}>Week after</Link>
      </span>
    </form>
  );
}

function NoWeather({ seriesId }: { readonly seriesId: string }) {
  return (
    <EmptyState title="No weather yet" actions={<LinkButton href={newRecordPath(seriesId, 'weather')} look="main">Add a weather table</LinkButton>}>
      <p>Give the lows and highs of some days: a day a month is enough for a rough climate. Until then every coat is counted at the one temperature of the workshop.</p>
    </EmptyState>
  );
}

function Drawn({ view }: { readonly view: ClimateView }) {
  if (view.curve === null) return null;
  return (
    <>
      {view.filled ? <p className={styles.note}><TriangleAlert size={18} aria-hidden /> {view.filled}</p> : null}
      <div className={styles.pair}>
        <Curve curve={view.curve} />
        <DayTable view={view} />
      </div>
      <details className={`${sheets.more} ${styles.hours}`}>
        <summary>Every hour as a table</summary>
        <HourTable view={view} />
      </details>
    </>
  );
}

function DayTable({ view }: { readonly view: ClimateView }) {
  return (
    <ScrollRegion className={sheets.scroll} label="Days in numbers">
      <table className={sheets.table}>
        <caption>Days in numbers: {view.airZone}</caption>
        <thead>
          <tr>{['Day', 'Air', 'Surface', 'Least dew margin', 'Humidity', 'Heat', 'From'].map((word) => <th key={word} scope="col">{word}</th>)}</tr>
        </thead>
        <tbody>
          {view.days.map((day) => (
            <tr key={day.date}>
              <th scope="row">{day.label}</th>
              <td>{day.air}</td>
              <td>{day.surface}</td>
              <td className={day.isDamp ? styles.damp : undefined}>{day.margin}{day.isDamp ? <> <Droplets size={16} aria-hidden /> under 3 K</> : null}</td>
              <td>{day.humidity}</td>
              <td>{day.heat}</td>
              <td>{day.measured}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  );
}

function HourTable({ view }: { readonly view: ClimateView }) {
  return (
    <ScrollRegion className={`${sheets.scroll} ${styles.tall}`} label="Hours in numbers">
      <table className={sheets.table}>
        <caption>°C and %, each hour’s mean; the hour named is its beginning</caption>
        <thead>
          <tr>{['Hour', 'Air', 'Surface', 'Dew point', 'Dew margin, K', 'Humidity', 'From'].map((word) => <th key={word} scope="col">{word}</th>)}</tr>
        </thead>
        <tbody>
          {view.hours.map((hour, index) => (
            <tr key={`${hour.label} ${index}`}>
              <th scope="row">{hour.label}</th>
              <td>{hour.air}</td><td>{hour.surface}</td><td>{hour.dewPoint}</td><td>{hour.margin}</td><td>{hour.humidity}</td>
              <td>{hour.isMeasured ? 'measured' : 'model'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  );
}

function Cautions({ view }: { readonly view: ClimateView }) {
  if (view.cautions.length === 0) return null;
  return (
    <ul className={`plain ${sheets.cautions}`}>
      {view.cautions.map((caution) => <li key={caution}><Flame size={18} aria-hidden /> {caution}</li>)}
    </ul>
  );
}

function Readings({ view }: { readonly view: ClimateView }) {
  return (
    <>
      {view.readings.length === 0 ? <p>No readings of this air yet. What a logger measured overrules the model, hour by hour.</p> : (
        <ul>
          {view.readings.map((set) => (
            <li key={set.id}><Link href={recordPath(view.seriesId, 'readings', set.id) ?? '#'}>{set.name}</Link>, {set.facts}</li>
          ))}
        </ul>
      )}
      {view.readings.length > 0 ? <p><Link href={kindPath(view.seriesId, 'readings')}>All sets of readings</Link></p> : null}
      {view.fit ? (
        <div className={styles.fit}>
          <p>{view.fit.text}</p>
          {view.fit.isInUse ? <p>The room uses these values.</p> : <FitButton airZone={view.airZone} seriesId={view.seriesId} revision={view.revision} timeConstant={view.fit.timeConstant} offset={view.fit.offset} />}
        </div>
      ) : null}
      {view.fitIssues.length > 0 ? <IssueList issues={view.fitIssues} seriesId={view.seriesId} /> : null}
    </>
  );
}

import { ScrollRegion } from '@/app/_ui';
import type { ClimateCurve } from '@/lib/views';
import plot from '../_sheets/plot.module.css';
import styles from './curve.module.css';

/** Drawing units: an hour is 6 wide, a degree 9 high in the upper part, a kelvin of dew margin 7 in the lower. */
const HOUR = 6;
const DEGREE = 9;
const KELVIN = 7;
const LEFT = 44;
const TOP = 30;
const GAP = 44;
const MOST_MARGIN = 12;
const FLOOR = 3;

interface Frame {
  readonly width: number;
  readonly low: number;
  readonly high: number;
  readonly bottom: number;
  readonly marginTop: number;
  readonly height: number;
  readonly x: (hour: number) => number;
  readonly y: (degrees: number) => number;
  readonly yMargin: (kelvins: number) => number;
}

function frameOf({ hours, air, surface, outside, dewPoint, floors }: ClimateCurve): Frame {
  const all = [...air, ...surface, ...outside, ...dewPoint, ...floors.map(({ at }) => at)];
  const low = Math.floor(Math.min(...all) / 5) * 5;
  const high = Math.max(low + 10, Math.ceil(Math.max(...all) / 5) * 5);
  const bottom = TOP + (high - low) * DEGREE;
  const marginTop = bottom + GAP;
  return {
    width: LEFT + hours * HOUR + 8, low, high, bottom, marginTop, height: marginTop + MOST_MARGIN * KELVIN + 26,
    x: (hour) => LEFT + hour * HOUR,
    y: (degrees) => TOP + (high - degrees) * DEGREE,
    yMargin: (kelvins) => marginTop + (MOST_MARGIN - Math.min(MOST_MARGIN, Math.max(0, kelvins))) * KELVIN,
  };
}

/** A value stands for its hour: the line goes through the middle of each. */
const line = (values: readonly number[], x: Frame['x'], y: (value: number) => number): string =>
  values.map((value, hour) => `${hour === 0 ? 'M' : 'L'}${x(hour + 0.5).toFixed(1)} ${y(value).toFixed(1)}`).join('');

/** Air, surface, outside and dew point above; the dew margin below; sessions, heating and wet coats behind them. */
export function Curve({ curve }: { readonly curve: ClimateCurve }) {
  const frame = frameOf(curve);
  return (
    <figure className={styles.figure}>
      <ScrollRegion className={plot.scroll} label="Curve of the climate, the numbers are in the table">
        <svg viewBox={`0 0 ${frame.width} ${frame.height}`} width={frame.width} height={frame.height} role="img" aria-label="Temperatures and dew margin by the hour">
          <Behind curve={curve} frame={frame} />
          <Axes curve={curve} frame={frame} />
          <path className={`${plot.line} ${styles.outside}`} d={line(curve.outside, frame.x, frame.y)} />
          <path className={`${plot.line} ${styles.dew}`} d={line(curve.dewPoint, frame.x, frame.y)} />
          <path className={`${plot.line} ${styles.air}`} d={line(curve.air, frame.x, frame.y)} />
          <path className={`${plot.line} ${styles.surface}`} d={line(curve.surface, frame.x, frame.y)} />
          <path className={`${plot.line} ${styles.margin}`} d={line(curve.margin, frame.x, frame.yMargin)} />
          <Floors curve={curve} frame={frame} />
          {curve.now === null ? null : (
            <g className={styles.now}>
              <line x1={frame.x(curve.now)} x2={frame.x(curve.now)} y1={TOP} y2={frame.height - 26} />
              <text x={frame.x(curve.now) + 4} y={TOP - 4}>now</text>
            </g>
          )}
        </svg>
      </ScrollRegion>
      <Legend curve={curve} />
    </figure>
  );
}

function Behind({ curve, frame }: { readonly curve: ClimateCurve; readonly frame: Frame }) {
  const { x, bottom } = frame;
  return (
    <>
      {curve.sessions.map((session) => (
        <rect key={session.label} className={styles.session} x={x(session.from)} width={(session.to - session.from) * HOUR} y={TOP} height={bottom - TOP}>
          <title>{session.label}</title>
        </rect>
      ))}
      {curve.heating.map((run) => (
        <g key={run.from} className={styles.heating}>
          <rect x={x(run.from)} width={(run.to - run.from) * HOUR} y={TOP - 14} height={10} />
          <text x={x(run.from)} y={TOP - 16}>{run.label}</text>
        </g>
      ))}
    </>
  );
}

function Axes({ curve, frame }: { readonly curve: ClimateCurve; readonly frame: Frame }) {
  const { x, y, yMargin, low, high, bottom, marginTop, width, height } = frame;
  const degrees = Array.from({ length: (high - low) / 5 + 1 }, (_, index) => low + index * 5);
  const end = marginTop + MOST_MARGIN * KELVIN;
  return (
    <g className={plot.axes}>
      {degrees.map((degree) => (
        <g key={degree}>
          <line x1={LEFT} x2={width} y1={y(degree)} y2={y(degree)} />
          <text x={LEFT - 6} y={y(degree) + 4} textAnchor="end">{degree} °C</text>
        </g>
      ))}
      {[0, FLOOR, 6, 12].map((kelvins) => (
        <g key={kelvins} className={kelvins === FLOOR ? styles.limit : undefined}>
          <line x1={LEFT} x2={width} y1={yMargin(kelvins)} y2={yMargin(kelvins)} />
          <text x={LEFT - 6} y={yMargin(kelvins) + 4} textAnchor="end">{kelvins} K</text>
        </g>
      ))}
      <text x={LEFT} y={marginTop - 8}>Surface above the dew point; under 3 K a coat may sweat</text>
      {curve.days.map(({ hour, label }) => (
        <g key={label}>
          <line className={styles.midnight} x1={x(hour)} x2={x(hour)} y1={TOP} y2={bottom} />
          <line className={styles.midnight} x1={x(hour)} x2={x(hour)} y1={marginTop} y2={end} />
          <text x={x(hour) + 4} y={height - 8}>{label}</text>
        </g>
      ))}
    </g>
  );
}

function Floors({ curve, frame }: { readonly curve: ClimateCurve; readonly frame: Frame }) {
  return (
    <>
      {curve.floors.map((floor) => (
        <g key={`${floor.label} ${floor.from}`} className={styles.floor}>
          <line x1={frame.x(floor.from)} x2={frame.x(floor.to)} y1={frame.y(floor.at)} y2={frame.y(floor.at)} />
          <text x={frame.x(floor.from)} y={frame.y(floor.at) - 5}>{floor.label}: {floor.at} °C</text>
        </g>
      ))}
    </>
  );
}

function Legend({ curve }: { readonly curve: ClimateCurve }) {
  const lines = [
    [styles.keyAir, 'air, whole line'], [styles.keySurface, 'surface of the work, dashed'], [styles.keyOutside, 'outside, thin'], [styles.keyDew, 'dew point, dotted'],
    [styles.keySession, 'session, tinted'], [styles.keyHeating, 'heating, bar on top'],
    ...(curve.floors.length > 0 ? [[styles.keyFloor, 'coldest that a wet coat bears']] : []),
  ];
  return (
    <figcaption className={styles.legend}>
      {lines.map(([look, word]) => <span key={word}><span className={`${styles.key} ${look}`} aria-hidden /> {word}</span>)}
      {curve.isMeasured.some(Boolean) ? <span>{curve.isMeasured.filter(Boolean).length} h are measured</span> : null}
    </figcaption>
  );
}

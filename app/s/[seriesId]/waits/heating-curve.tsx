import { ScrollRegion } from '@/app/_ui';
import type { HeatingView } from '@/lib/views';
import plot from '../_sheets/plot.module.css';
import styles from './heating-curve.module.css';

const WIDTH = 620;
const HEIGHT = 250;
const LEFT = 66;
const BOTTOM = 40;

/** Hours from now until ready, against the heat it takes. Each point is a way to heat; the line joins those worth having. */
export function HeatingCurve({ points }: { readonly points: HeatingView['points'] }) {
  const known = points.filter(({ readyIn }) => readyIn !== null);
  if (known.length < 2) return null;
  const most = Math.max(1, ...known.map(({ kwh }) => kwh));
  const longest = Math.max(1, ...known.map(({ readyIn }) => readyIn ?? 0));
  const x = (kwh: number): number => LEFT + (kwh / most) * (WIDTH - LEFT - 20);
  const y = (hours: number): number => HEIGHT - BOTTOM - (hours / longest) * (HEIGHT - BOTTOM - 20);
  const curve = known.filter(({ isOnCurve }) => isOnCurve);
  return (
    <ScrollRegion className={plot.scroll} label="Curve of heating, the numbers are in the table">
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} width={WIDTH} height={HEIGHT} role="img" aria-label="Hours until ready against kWh of heat">
        <g className={plot.axes}>
          <line x1={LEFT} x2={WIDTH - 10} y1={HEIGHT - BOTTOM} y2={HEIGHT - BOTTOM} />
          <line x1={LEFT} x2={LEFT} y1={14} y2={HEIGHT - BOTTOM} />
          {[0, 0.5, 1].map((share) => (
            <g key={share}>
              <text x={x(most * share)} y={HEIGHT - BOTTOM + 18} textAnchor="middle">{Math.round(most * share)} kWh</text>
              <text x={LEFT - 8} y={y(longest * share) + 4} textAnchor="end">{Math.round(longest * share)} h</text>
            </g>
          ))}
        </g>
        <path className={`${plot.line} ${styles.curve}`} d={curve.map((point, index) => `${index === 0 ? 'M' : 'L'}${x(point.kwh).toFixed(1)} ${y(point.readyIn ?? 0).toFixed(1)}`).join('')} />
        {known.map((point) => (
          <circle key={point.name} className={point.isCheapest ? styles.best : point.isOnCurve ? styles.on : styles.off} cx={x(point.kwh)} cy={y(point.readyIn ?? 0)} r={point.isCheapest ? 8 : 5}>
            <title>{`${point.name}: ${point.kwh} kWh, ready ${point.ready}`}</title>
          </circle>
        ))}
      </svg>
    </ScrollRegion>
  );
}

import type { ForecastView } from '@/lib/views';
import styles from './progress.module.css';

const WIDTH = 440;
const HEIGHT = 200;
const PAD = 40;

const x = (at: number): number => PAD + at * (WIDTH - 2 * PAD);
const y = (share: number): number => HEIGHT - PAD - share * (HEIGHT - 2 * PAD);

/** Share of runs in which the build is done by a date. The table beside it says the same. */
export function FinishPlot({ forecast }: { readonly forecast: ForecastView }) {
  const line = forecast.curve.map((point, k) => `${k === 0 ? 'M' : 'L'}${x(point.at).toFixed(1)} ${y(point.share).toFixed(1)}`).join(' ');
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} className={styles.plot} role="img" aria-label={`Done by a date: 50 % ${forecast.finish.p50}, 80 % ${forecast.finish.p80}`}>
      {[0, 0.5, 0.8, 1].map((share) => (
        <g key={share}>
          <line x1={PAD} x2={WIDTH - PAD} y1={y(share)} y2={y(share)} className={share === 0.8 ? styles.strongLine : styles.gridLine} />
          <text x={PAD - 4} y={y(share) + 4} textAnchor="end" className={styles.plotText}>{100 * share} %</text>
        </g>
      ))}
      <text x={4} y={14} className={styles.plotText}>runs in which the build is done</text>
      <path d={line} className={styles.curve} />
      <text x={PAD} y={HEIGHT - 8} className={styles.plotText}>{forecast.axis.from}</text>
      <text x={WIDTH - PAD} y={HEIGHT - 8} textAnchor="end" className={styles.plotText}>{forecast.axis.to}</text>
    </svg>
  );
}

/** The bank by week: the middle line, with 10 % to 90 % around it. */
export function BankPlot({ forecast }: { readonly forecast: ForecastView }) {
  const { bank } = forecast;
  const most = Math.max(1, ...bank.map((week) => week.p90));
  const place = (k: number) => x(bank.length < 2 ? 0 : k / (bank.length - 1));
  const points = (of: (week: ForecastView['bank'][number]) => number) => bank.map((week, k) => `${place(k).toFixed(1)} ${y(of(week) / most).toFixed(1)}`);
  const fan = `M${points((week) => week.p90).join(' L')} L${points((week) => week.p10).toReversed().join(' L')} Z`;
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} className={styles.plot} role="img" aria-label="Episodes in the bank by week, 10 % to 90 %">
      {Array.from({ length: most + 1 }, (_, count) => count).map((count) => (
        <g key={count}>
          <line x1={PAD} x2={WIDTH - PAD} y1={y(count / most)} y2={y(count / most)} className={styles.gridLine} />
          <text x={PAD - 4} y={y(count / most) + 4} textAnchor="end" className={styles.plotText}>{count}</text>
        </g>
      ))}
      <text x={4} y={14} className={styles.plotText}>episodes in the bank</text>
      <path d={fan} className={styles.fan} />
      <path d={`M${points((week) => week.p50).join(' L')}`} className={styles.curve} />
      <text x={PAD} y={HEIGHT - 8} className={styles.plotText}>{bank[0]?.week}</text>
      <text x={WIDTH - PAD} y={HEIGHT - 8} textAnchor="end" className={styles.plotText}>{bank.at(-1)?.week}</text>
    </svg>
  );
}

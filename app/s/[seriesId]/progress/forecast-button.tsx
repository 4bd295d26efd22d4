'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Dices, Square } from 'lucide-react';
import { Button, Refused, UntilReady, useNotices } from '@/app/_ui';
import { issue, type Issue } from '@/lib/result';
import { runForecast, type ForecastLine } from './forecast-line';
import styles from './progress.module.css';

interface ForecastButtonProps {
  readonly seriesId: string;
  readonly hasForecast: boolean;
}

/** Starts a forecast, tells how far it is, and can stop it. */
export function ForecastButton({ seriesId, hasForecast }: ForecastButtonProps) {
  const router = useRouter();
  const { say } = useNotices();
  const [share, setShare] = useState(0);
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [running, setRunning] = useState<AbortController | null>(null);
  const hear = (line: ForecastLine) => {
    if (line.kind === 'progress') setShare(line.share);
    if (line.kind === 'issues') setIssues(line.issues);
    if (line.kind === 'forecast') say(`Forecast ${line.number} is saved.`);
  };
  const run = async () => {
    const controller = new AbortController();
    setIssues([]);
    setShare(0);
    setRunning(controller);
    try {
      await runForecast(seriesId, controller.signal, hear);
      router.refresh();
    } catch (error) {
      if (controller.signal.aborted) say('The forecast was stopped. Nothing was saved.');
      else setIssues([issue('forecast-broke-off', error instanceof Error ? error.message : 'The forecast failed.', 'Check that Benchtake is still running, then try again.')]);
    }
    setRunning(null);
  };
  const isRunning = running !== null;
  return (
    <div className={styles.run}>
      <UntilReady className={styles.row}>
        <Button look={isRunning || hasForecast ? 'plain' : 'main'} onClick={() => (running === null ? void run() : running.abort())}>
          {isRunning ? <Square size={16} aria-hidden /> : <Dices size={18} aria-hidden />}
          {isRunning ? 'Stop' : hasForecast ? 'Forecast again' : 'Run a forecast'}
        </Button>
        {isRunning ? <progress value={share} max={1} aria-label="Share of the runs done" /> : null}
      </UntilReady>
      <output className="visually-hidden">{isRunning ? `Forecasting, ${25 * Math.floor(4 * share)} %` : ''}</output>
      <Refused issues={issues} seriesId={seriesId} />
    </div>
  );
}

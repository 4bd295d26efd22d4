'use client';

import { useEffect, useRef, useState } from 'react';
import { Camera, Check, CircleDot, HelpCircle, X } from 'lucide-react';
import { UntilReady } from '@/app/_ui';
import type { PhoneView } from '@/lib/views';
import { deviceName, keepPage, knock, newId, recall, remember, stayAwake } from './device';
import { OtherEntry } from './other-entry';
import { PhoneSelect, PhoneText } from './phone-fields';
import { useOutbox } from './use-outbox';
import styles from './recorder.module.css';

const NO_DETAILS = { size: '', media: '', start: '', end: '', text: '', reenactmentLabel: '', isReenacted: false, isFailedAttempt: false };
const VERDICTS = [
  { verdict: 'good', word: 'Good take', icon: Check }, { verdict: 'no good', word: 'No good', icon: X }, { verdict: 'unsure', word: 'Not sure', icon: HelpCircle },
] as const;

/** A clock that counts the seconds since a moment. */
function Seconds({ since }: { readonly since: number }) {
  const [now, setNow] = useState(since);
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), 500);
    return () => clearInterval(timer);
  }, []);
  const seconds = Math.max(0, Math.floor((now - since) / 1000));
  return <span className="figures">{`${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`}</span>;
}

/** A choice that this device makes again next time. */
const choose = (key: string, set: (value: string) => void) => (value: string) => {
  set(value);
  remember(key, value);
};

/** The page in the hand: one tap says the camera runs, one says how the take was. Works without network. */
export function Recorder({ view }: { readonly view: PhoneView }) {
  const { seriesId } = view;
  const outbox = useOutbox(seriesId);
  const [author, setAuthor] = useState('');
  const [taskId, setTaskId] = useState('');
  const [shotId, setShotId] = useState('');
  const [cameraId, setCameraId] = useState('');
  const [details, setDetails] = useState(NO_DETAILS);
  const [since, setSince] = useState<number | null>(null);
  const [lastEntry, setLastEntry] = useState<{ readonly id: string; readonly words: string } | null>(null);
  const [opensOffline, setOpensOffline] = useState<boolean | null>(null);
  const awake = useRef<WakeLockSentinel | null>(null);

  useEffect(() => {
    const known = (list: readonly { readonly id: string }[], id: string, otherwise: string) => (list.some((one) => one.id === id) ? id : otherwise);
    // What this device chose last is known only once the page runs.
    queueMicrotask(() => {
      setAuthor(recall('author') || (view.people[0] ?? ''));
      setTaskId(known(view.tasks, recall(`task-${seriesId}`), view.tasks[0]?.id ?? ''));
      setCameraId(known(view.cameras, recall(`camera-${seriesId}`), view.cameras[0]?.id ?? ''));
    });
    void keepPage().then(setOpensOffline);
  }, [view, seriesId]);

  const task = view.tasks.find(({ id }) => id === taskId);
  const about = task === undefined ? 'no task' : task.name;
  const common = () => ({ id: newId(), deviceAt: Date.now(), device: deviceName(), author, taskId: taskId || null, shotId: shotId || null });

  const roll = () => {
    setSince(Date.now());
    knock(40);
    void stayAwake().then((lock) => {
      awake.current = lock;
    });
  };

  const logTake = async (verdict: string) => {
    void awake.current?.release();
    awake.current = null;
    const { text, ...take } = details;
    const entry = { ...common(), kind: 'take', text, take: { ...take, size: details.size || null, cameraId: cameraId || null, verdict } };
    const words = `${verdict} take of ${about}`;
    setSince(null);
    if (!(await outbox.keep({ what: { kind: 'entry', entry }, words }))) return;
    setLastEntry({ id: entry.id, words });
    setDetails({ ...NO_DETAILS, size: details.size, media: details.media });
  };

  const logOther = async (kind: string, fields: Readonly<Record<string, unknown>>, words: string) => {
    const entry = { ...common(), ...fields, kind };
    const isKept = await outbox.keep({ what: { kind: 'entry', entry }, words });
    if (isKept) setLastEntry({ id: entry.id, words });
    return isKept;
  };

  const addPhoto = async (files: FileList | null) => {
    const target = lastEntry;
    if (target === null) return;
    // The list empties itself when the field is cleared for the next photo.
    const chosen = [...(files ?? [])];
    for (const photo of chosen) await outbox.keep({ what: { kind: 'photo', id: newId(), entryId: target.id, photo }, words: `photo of ${target.words}` });
  };

  return (
    <UntilReady className={styles.phone}>
      <PhoneSelect label="Task" value={taskId} onChange={(id) => { choose(`task-${seriesId}`, setTaskId)(id); setShotId(''); }} options={view.tasks} none="No task" />
      {task !== undefined && task.shots.length > 0 ? <PhoneSelect label="Shot" value={shotId} onChange={setShotId} options={task.shots} none="Any shot" /> : null}
      <div className={styles.main}>
        {since === null ? (
          <button type="button" className={`${styles.big} ${styles.roll}`} onClick={roll}><CircleDot size={34} aria-hidden />Camera runs</button>
        ) : (
          <p className={styles.running}><CircleDot size={30} aria-hidden />Recording <Seconds since={since} /></p>
        )}
        {VERDICTS.map(({ verdict, word, icon: Icon }) => (
          <button key={verdict} type="button" className={`${styles.big} ${verdict === 'good' ? styles.good : verdict === 'no good' ? styles.bad : styles.unsure}`} onClick={() => void logTake(verdict)}>
            <Icon size={34} aria-hidden />{word}
          </button>
        ))}
      </div>
      <output key={outbox.kept} className={outbox.told === '' ? styles.quiet : styles.told}>{outbox.told === '' ? 'Nothing logged on this page yet.' : outbox.told}</output>
      <label className={lastEntry === null ? `${styles.photo} ${styles.photoOff}` : styles.photo}>
        <Camera size={26} aria-hidden />
        {lastEntry === null ? 'Photo: log something first' : `Photo of the ${lastEntry.words}`}
        <input type="file" accept="image/*" capture="environment" multiple disabled={lastEntry === null} onChange={(event) => { void addPhoto(event.target.files); event.target.value = ''; }} />
      </label>
      <details className={styles.more}>
        <summary>Details of the next take</summary>
        <div className={styles.fields}>
          <PhoneSelect label="Camera" value={cameraId} onChange={choose(`camera-${seriesId}`, setCameraId)} options={view.cameras} none="No camera" />
          <PhoneSelect label="Picture" value={details.size} onChange={(size) => setDetails({ ...details, size })} options={['wide', 'medium', 'close'].map((id) => ({ id, name: id }))} none="Not said" />
          <PhoneText label="Card and clip" value={details.media} onChange={(media) => setDetails({ ...details, media })} />
          <PhoneText label="Timecode at the start" value={details.start} onChange={(start) => setDetails({ ...details, start })} />
          <PhoneText label="Timecode at the end" value={details.end} onChange={(end) => setDetails({ ...details, end })} />
          <PhoneText label="Note" value={details.text} onChange={(text) => setDetails({ ...details, text })} isLong />
          <label className={styles.check}><input type="checkbox" checked={details.isReenacted} onChange={(event) => setDetails({ ...details, isReenacted: event.target.checked })} />Re-enacted for the camera</label>
          {details.isReenacted ? <PhoneText label="Label shown on screen" value={details.reenactmentLabel} onChange={(reenactmentLabel) => setDetails({ ...details, reenactmentLabel })} /> : null}
          <label className={styles.check}><input type="checkbox" checked={details.isFailedAttempt} onChange={(event) => setDetails({ ...details, isFailedAttempt: event.target.checked })} />A failed attempt that may be shown</label>
        </div>
      </details>
      <OtherEntry view={view} log={logOther} />
      <PhoneSelect label="Logged by" value={author} onChange={choose('author', setAuthor)} options={view.people.map((name) => ({ id: name, name }))} none="Nobody named" />
      <Queue outbox={outbox} opensOffline={opensOffline} />
    </UntilReady>
  );
}

/** What waits on this device, and what was refused with the reason. */
function Queue({ outbox, opensOffline }: { readonly outbox: ReturnType<typeof useOutbox>; readonly opensOffline: boolean | null }) {
  const { waiting } = outbox;
  const unsent = waiting?.filter(({ refusal }) => refusal === null) ?? [];
  const refused = waiting?.filter(({ refusal }) => refusal !== null) ?? [];
  return (
    <section className={styles.queue} aria-labelledby="queue-title">
      <h2 id="queue-title">On this device</h2>
      <p>{waiting === null ? 'Reading what waits.' : unsent.length === 0 ? 'Everything has been sent.' : `${unsent.length} ${unsent.length === 1 ? 'entry waits' : 'entries wait'} to be sent, in order${outbox.isOffline ? '; there is no network' : ''}.`}</p>
      {unsent.length > 0 ? <ol>{unsent.map(({ key, words }) => <li key={key}>{words}</li>)}</ol> : null}
      {unsent.length > 0 ? <button type="button" className={styles.small} onClick={outbox.send}>Send now</button> : null}
      {refused.length > 0 ? (
        <>
          <p>Refused, and kept here:</p>
          <ul>{refused.map(({ key, words, refusal }) => <li key={key}><strong>{words}</strong>: {refusal} <button type="button" className={styles.small} onClick={() => outbox.forget(key)}>Take it off this device</button></li>)}</ul>
        </>
      ) : null}
      <p className={styles.hint}>
        {opensOffline === null ? 'Keeping this page for later.' : opensOffline ? 'This page opens without network on this device.' : 'On this address the page cannot open without network; leave it open. What is logged stays on the device all the same.'}
      </p>
    </section>
  );
}

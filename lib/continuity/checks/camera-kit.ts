import { cameraNeed, filmingMinutes, timesOf } from '@/lib/episodes';
import { minutesBetween } from '@/lib/units';
import { overlaps, sayAt } from '../facts';
import { makeCheck } from './check';

/** 29: cards and batteries last through each session to come. A camera that is not moved runs all the while, any other as long as it is needed. */
export const cameraKit = makeCheck(29, 'stop', 'Cards and batteries last through each session', (facts) => {
  const { sessions, series } = facts.document;
  const timeOf = timesOf(facts.document);
  const filmed = facts.blocks.flatMap((block) => {
    const task = block.kind === 'task' || block.kind === 'before-shot' ? facts.tasks.get(block.subject.id) : undefined;
    if (task === undefined || task.doneAt !== null || (block.kind === 'task' && (task.coverage === 'time-lapse' || (task.coverage === 'none' && task.shots.length === 0)))) return [];
    const whole = block.pieces.reduce((sum, piece) => sum + minutesBetween(piece.start, piece.end), 0);
    const share = block.kind === 'before-shot' || task.coverage === 'locked-off' ? 1 : Math.min(1, filmingMinutes(timeOf(task)) / Math.max(1, whole));
    return block.pieces.map((piece) => ({ ...piece, minutes: minutesBetween(piece.start, piece.end) * share }));
  });
  return sessions.filter(({ isRecording, end }) => isRecording && end > facts.now).flatMap((session) => {
    const minutes = filmed.filter((piece) => overlaps(piece, session)).reduce((sum, piece) => sum + piece.minutes, 0);
    return minutes === 0 ? [] : cameraNeed(series.camera, minutes).issues.map(({ code, message, fix, severity }) => ({
      key: `${session.id}/${code}`, about: [session], severity, message: `“${session.name}” on ${sayAt(facts, session.start)}: ${message}`, fix,
    }));
  });
});

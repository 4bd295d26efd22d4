/** What the demo's crew has rehearsed, filmed and signed: pistons pushed out of a scrap caliper, and the fit check of a mask. All of it is invented. */
import { addDays, instantOf } from '@/lib/calendar';
import { createRecords, type CivilDate, type Evidence, type SeriesDocument, type Statement } from '@/lib/build';
import { logEntry, type CommandContext } from '@/lib/commands';
import { gatherFootage, buildChecklist, readTakeEvidence, signStatement, takesEvidence, type ChecklistItem, type Footage } from '@/lib/safety';
import { fail, ok, type Issue, type Result } from '@/lib/result';

const LABEL = 'Rehearsal on a scrap caliper';

/** Takes of the Saturday before, by a short key. */
const TAKES = {
  gauge: { task: 'task-caliper-pistons', shot: 'shot-caliper-pistons-4', from: '14:05:00:00', to: '14:05:42:00', text: 'Regulator at zero, then up to 1 bar; blow gun with chip guard, tip blocked at 1.8 bar' },
  pad: { task: 'task-caliper-pistons', shot: 'shot-caliper-pistons-5', from: '14:12:10:00', to: '14:12:55:00', text: 'Hardwood pad in the bridge, rag over it' },
  air: { task: 'task-caliper-pistons', shot: 'shot-caliper-pistons-6', from: '14:20:30:00', to: '14:22:04:00', text: 'One short breath at 1.5 bar, piston meets the wood; hands clear, camera on its stand' },
  words: { task: 'task-caliper-pistons', shot: 'shot-caliper-pistons-7', from: '14:31:00:00', to: '14:33:48:00', text: 'All cautions spoken; manual value, our value, reason and warning said in one breath' },
  bench: { task: 'task-caliper-clean', shot: null, from: '15:02:00:00', to: '15:04:20:00', text: 'Label read aloud, door open and fan on, heater unplugged on the bench, gloves and eyes' },
  mask: { task: 'task-rims-prime', shot: 'shot-rims-prime-1', from: '16:10:00:00', to: '16:12:36:00', text: 'Filter label and date to the camera, shaved seal, fit check by both hands, fan running behind' },
} as const;

type Key = keyof typeof TAKES;
const KEYS: readonly Key[] = ['gauge', 'pad', 'air', 'words', 'bench', 'mask'];

/** How a line is answered: a take, the rough cut, or an exception with its reason. */
type Answer = { readonly take: Key } | { readonly cut: string } | { readonly because: string };

const cut = (timecode: string): Answer => ({ cut: timecode });

/** Lines of the caliper by their id. The caution of the piston itself is not on screen yet: one line stays open. */
const PISTONS: Readonly<Record<string, Answer>> = {
  'deferral:caliper-rebuild': { because: 'The brake shop on Mill Lane checks the caliper and signs before it sees a road' },
  'control:piston-ejection:control-2': { take: 'gauge' }, 'control:piston-ejection:control-3': { take: 'pad' }, 'control:piston-ejection:control-4': { take: 'air' },
  'control:air-cleaning:control-2': { take: 'gauge' }, 'control:air-cleaning:control-3': { take: 'air' },
  'control:caliper-rebuild:control-2': { take: 'words' },
  'control:caliper-rebuild:control-3': { because: 'No bolt is touched; the pressure test is filmed with the bleeding, in “Two weeks for a tyre”' },
  'control:spray-ignition:control-1': { take: 'bench' }, 'control:degreaser:control-2': { take: 'bench' }, 'control:degreaser:control-3': { take: 'bench' },
  'spoken:spray-ignition': { take: 'bench' }, 'spoken:degreaser': { take: 'bench' },
  'spoken:piston-ejection': { take: 'words' }, 'spoken:air-cleaning': { take: 'words' }, 'spoken:caliper-rebuild': { take: 'words' }, 'spoken:noise': { take: 'words' },
  'departure:task-caliper-pistons': { take: 'words' },
  'worn:Eye protection': { take: 'air' }, 'worn:Face shield over eye protection': { take: 'air' }, 'worn:Ear protection': { take: 'air' }, 'worn:Gloves against cuts and knocks': { take: 'air' },
  'worn:Gloves for the chemical in hand': { take: 'bench' }, 'worn:Anti-static clothing': { take: 'bench' },
  'caption:caliper-rebuild': cut('00:00:48:00'), 'caption:air-cleaning': cut('00:06:12:10'), 'caption:spray-ignition': cut('00:09:30:00'), 'caption:degreaser': cut('00:09:36:00'), 'caption:noise': cut('00:05:20:00'),
  disclosure: { because: 'Nothing in this episode was paid for, gifted or lent' }, captions: cut('00:00:00:00'),
  consents: { because: 'Nobody but the crew is in frame; the papers of the crew are in the blue folder' },
};

/** Lines of the mask: seen and said; on screen it comes with the cut, so that line is open. */
const RIMS: Readonly<Record<string, Answer>> = {
  'control:respirator:control-3': { take: 'mask' }, 'control:respirator:control-4': { take: 'mask' }, 'spoken:respirator': { take: 'mask' },
  'worn:Half mask with A2P3 filters (vapour and mist)': { take: 'mask' }, 'control:solvent-spray:control-3': { take: 'mask' },
};

const SIGNED = [['ep-stuck-pistons', PISTONS], ['ep-three-rims', RIMS]] as const;

function sentTake(key: Key, number: number) {
  const { from, to, shot, text } = TAKES[key];
  const isScrap = key !== 'mask';
  return {
    kind: 'take', shotId: shot, text,
    take: {
      cameraId: 'camera-bench', start: from, end: to, number, size: 'medium', verdict: 'good', media: `R1 / ${String(number).padStart(4, '0')}`, isReenacted: isScrap, reenactmentLabel: isScrap ? LABEL : '',
    },
  };
}

async function logTakes(context: CommandContext, document: SeriesDocument, saturday: CivilDate): Promise<Result<null>> {
  for (const [index, key] of KEYS.entries()) {
    const { task, from } = TAKES[key];
    const deviceAt = instantOf(saturday, from.slice(0, 5), document.series.zone);
    const sent = { id: `demo-rehearsal-${key}`, deviceAt, sentAt: context.now(), device: 'workshop phone', author: 'Dilip', taskId: task, ...sentTake(key, index + 1) };
    const logged = await logEntry(context, document.series.id, sent);
    if (!logged.ok) return logged;
  }
  return ok(null);
}

function evidenceOf(document: SeriesDocument, footage: Footage, item: ChecklistItem, answer: Answer): Result<Evidence> {
  if ('because' in answer) return ok({ kind: 'exception' });
  if ('cut' in answer) return ok({ kind: 'take', take: 'rough cut 1', timecode: answer.cut });
  return takesEvidence(item.kind) ? readTakeEvidence(document, footage, item, { entryId: `demo-rehearsal-${answer.take}`, timecode: '' }) : ok({ kind: 'exception' });
}

/** Statements of the lines that have an answer, in the order of the checklist. */
function signAll(context: CommandContext, document: SeriesDocument, footage: Footage): Result<readonly Statement[]> {
  const issues: Issue[] = [];
  const statements = SIGNED.flatMap(([episodeId, answers]) => buildChecklist(document, episodeId, { footage }).items.flatMap((item): readonly Statement[] => {
    const answer = answers[item.id];
    if (answer === undefined) return [];
    const evidence = evidenceOf(document, footage, item, answer);
    const statement = evidence.ok ? signStatement(document, {
      id: context.newId(), name: `Signed: ${item.text}`.slice(0, 190), personId: 'person-marta', at: context.now(), reason: 'because' in answer ? answer.because : '',
      about: { sort: 'evidence', episodeId, itemId: item.id, fingerprint: item.fingerprint, evidence: evidence.value },
    }) : evidence;
    if (statement.ok) return [statement.value];
    issues.push(...statement.error);
    return [];
  }));
  return issues.length > 0 ? fail(issues) : ok(statements);
}

/**
 * Logs the rehearsal of the Saturday before and signs for it: one change. Answers how many lines are signed.
 * Issues: those of the commands and of the signatures.
 */
export async function loadDemoSafety(context: CommandContext, seriesId: string, monday: CivilDate): Promise<Result<number>> {
  const document = await context.storage.loadSeries(seriesId);
  if (document === null) throw new Error('The demo has just been loaded');
  const logged = await logTakes(context, document, addDays(monday, -2));
  if (!logged.ok) return logged;
  const footage = gatherFootage(await context.storage.listLogEntries(seriesId, {}));
  const statements = signAll(context, document, footage);
  if (!statements.ok) return statements;
  const edited = createRecords(document, statements.value.map((statement, order) => ({ ...statement, order })), `Signed ${statements.value.length} lines of safety checklists`);
  if (!edited.ok) return edited;
  const saved = await context.storage.applyChange(seriesId, edited.value.change, context.now());
  return saved.ok ? ok(statements.value.length) : saved;
}

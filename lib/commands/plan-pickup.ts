import { NO_TASK_HAZARDS, createRecord, type SeriesDocument, type Task } from '@/lib/build';
import { findPickups, gatherFacts, pickupName, runChecks, type Pickup } from '@/lib/continuity';
import { fail, issue, type Result } from '@/lib/result';
import { minutes } from '@/lib/units';
import type { CommandContext } from './context';
import { loadDocument, saveEdited, type Saved } from './save-edited';

/** Crew minutes of a pickup: put it in place, light it, three takes (common practice). */
const TIME = { low: minutes(15), likely: minutes(25), high: minutes(45) };

function taskOf(context: CommandContext, document: SeriesDocument, pickup: Pickup): Task {
  const { task } = pickup;
  return {
    kind: 'task', id: context.newId(), revision: 1, order: 0, name: pickupName(pickup), category: 'filming', episodeId: task.episodeId, placeId: task.placeId,
    parts: pickup.parts.map(({ partId, stateId }) => ({ partId, from: stateId, to: null })), effort: TIME, inOneGo: true, irreversible: false,
    crew: [{ skill: document.people.some(({ skills }) => skills.includes('camera')) ? 'camera' : null, count: 1 }], equipmentIds: [], coats: [], coverage: 'inserts and teaching',
    shots: [{ id: context.newId(), name: pickup.what, purpose: 'pickup', time: minutes(0), mustHave: false, filmedAt: null }],
    conditions: { minimumTemperature: null, needsDaylight: false }, isDusty: false, isNoisy: false, layOut: [], cautions: [], manualReference: '', pinnedStart: null, doneAt: null,
    hazards: NO_TASK_HAZARDS,
  };
}

/**
 * Makes a pickup a task with its shot, so that the next plan gives it a time.
 * Fails with `no-such-pickup` when it has been filmed or planned meanwhile, `pickup-without-session`, and with the stops that the task would bring.
 */
export async function planPickup(context: CommandContext, seriesId: string, key: string): Promise<Result<Saved>> {
  const loaded = await loadDocument(context, seriesId);
  if (!loaded.ok) return loaded;
  const document = loaded.value;
  const [entries, plan] = await Promise.all([context.storage.listLogEntries(seriesId, {}), context.storage.acceptedPlan(seriesId)]);
  const facts = gatherFacts({ document, entries, blocks: plan?.result.blocks ?? [], now: context.now() });
  const pickup = findPickups(facts, runChecks(facts)).find((one) => one.key === key);
  if (pickup === undefined) return fail([issue('no-such-pickup', 'This pickup is not needed any more, or is planned already.', 'Load the page again.')]);
  if (pickup.sessions.length === 0) return fail([issue('pickup-without-session', `${pickupName(pickup)} has no session. ${pickup.whyNone}`, 'Choose another way to tell it.')]);
  return saveEdited(context, document, createRecord(document, taskOf(context, document, pickup)));
}

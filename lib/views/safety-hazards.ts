/** The library of hazards, and the hazards of one task. */
import { factWords, findRecord, type HazardFact, type SeriesDocument } from '@/lib/build';
import { datedWork } from '@/lib/plan';
import { captionSeconds, factsOfTask, findCombinations, findHazards, latestReading, listHazards, spokenSeconds, STANDING_WORDS, type Hazard } from '@/lib/safety';
import type { HazardCard, TaskHazardsView } from './safety-model';
import { chooseFrom, saySignature, saySigns, saySource, sayVapour, SEVERITY_WORDS, type SafetyContext } from './safety-words';

const LEVELS = { eliminate: 'Take it away', substitute: 'Replace it', engineer: 'Guard or extract', administer: 'Rules' } as const;
const sayGroup = (group: readonly HazardFact[]): string => group.map(factWords).join(' + ');

/** What the import takes: the hazard without its id and origin, standing in for the one it came from. */
function writeHazard({ id, origin, ...fields }: Hazard): string {
  return JSON.stringify({ ...fields, replaces: origin === 'library' ? id : fields.replaces }, null, 2);
}

function viewHazard(document: SeriesDocument, hazard: Hazard): HazardCard {
  const { caution } = hazard;
  const record = document.hazards.findLast(({ id, replaces }) => hazard.origin === 'own' && (replaces ?? id) === hazard.id);
  return {
    id: hazard.id, name: hazard.name, severity: SEVERITY_WORDS[hazard.severity], isOwn: hazard.origin === 'own', setOffBy: hazard.trigger.map(sayGroup),
    controls: hazard.controls.map(({ level, text, isShown }) => ({ level: LEVELS[level], text, isShown })),
    equipment: hazard.equipment.map(({ text, sign, standard, standardStatus }) => ({
      text, sign: sign ?? '', standard: standard === '' ? '' : `${standard}${standardStatus === 'memory' ? ' (unverified)' : ''}`,
    })),
    signs: saySigns([...hazard.signs, ...hazard.equipment.flatMap(({ sign }) => sign ?? [])]),
    screen: caution.screen, spoken: caution.spoken, show: hazard.show,
    reading: `${captionSeconds(caution.screen).toFixed(1)} s on screen, ${spokenSeconds(caution.spoken).toFixed(0)} s spoken`,
    deferral: hazard.deferral === null ? null : hazard.deferral.text,
    sources: hazard.sources.map((source) => saySource(source, latestReading(document, source.text))), asText: writeHazard(hazard),
    own: record === undefined ? null : { id: record.id, revision: record.revision },
  };
}

/** Every hazard that counts in the series. */
export function viewHazards(document: SeriesDocument): readonly HazardCard[] {
  return listHazards(document).map((hazard) => viewHazard(document, hazard));
}

/** The hazards of a task with what set each off; null when there is no such task. */
export async function viewTaskHazards({ storage }: Pick<SafetyContext, 'storage'>, document: SeriesDocument, taskId: string): Promise<TaskHazardsView | null> {
  const task = findRecord(document, 'task', taskId);
  if (task === undefined) return null;
  const { id: seriesId, zone } = document.series;
  const hazards = listHazards(document);
  const { found, removed } = findHazards(document, task, hazards);
  const plan = await storage.acceptedPlan(seriesId);
  const { row, gaps } = sayVapour(document, task);
  return {
    seriesId, task: { value: task.id, label: task.name }, standing: STANDING_WORDS,
    facts: factsOfTask(document, task).map(({ because }) => because),
    found: found.map(({ hazard, because, added, isDeferred }) => ({
      id: hazard.id, name: hazard.name, severity: SEVERITY_WORDS[hazard.severity],
      because: because.length > 0 ? because.map((fact) => fact.because).join('; ') : `added by ${added === null ? 'somebody' : saySignature(added, zone)}`,
      deferral: isDeferred ? hazard.deferral?.text ?? null : null,
    })),
    removed: removed.map(({ hazard, statement }) => ({ id: hazard.id, name: hazard.name, ruling: saySignature(statement, zone) })),
    others: chooseFrom(hazards.filter(({ id }) => !found.some(({ hazard }) => hazard.id === id))), people: chooseFrom(document.people),
    vapour: row, gaps,
    combinations: findCombinations(document, datedWork(plan?.result ?? null)).filter(({ subjects }) => subjects.some(({ kind, id }) => kind === 'task' && id === taskId)),
  };
}

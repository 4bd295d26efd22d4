import type { Category, Coat, PartUse, Task } from '@/lib/build';
import { celsius, minutes } from '@/lib/units';
import type { Db } from '../connection';
import type { TaskModel } from '../generated/models';
import { oneOf, readJson, readOptionalInstant, readValue, writeOptionalInstant } from '../column';
import { groupRows, tableWithChildren } from '../table';
import type { ChildrenOf, RowFilter } from '../table';
import { readTaskHazards } from './hazard-values';
import { coverages, shots, skillNeeds, texts } from './values';

const categories = oneOf<Category>({
  strip: true, clean: true, repair: true, machining: true, welding: true, filler: true, paint: true, electrics: true, assembly: true,
  'setting up': true, filming: true, other: true,
});

interface Children {
  readonly parts: readonly PartUse[];
  readonly equipmentIds: readonly string[];
  readonly coats: readonly Coat[];
}

export const tasks = tableWithChildren<Task, TaskModel, Children>({
  kind: 'task',
  model: (db) => db.task,
  toRow: (task, common) => ({
    ...common,
    category: task.category,
    episodeId: task.episodeId,
    placeId: task.placeId,
    effortLow: task.effort.low,
    effortLikely: task.effort.likely,
    effortHigh: task.effort.high,
    inOneGo: task.inOneGo,
    irreversible: task.irreversible,
    crewJson: JSON.stringify(task.crew),
    coverage: task.coverage,
    shotsJson: JSON.stringify(task.shots),
    minimumTemperature: task.conditions.minimumTemperature,
    needsDaylight: task.conditions.needsDaylight,
    isDusty: task.isDusty,
    isNoisy: task.isNoisy,
    layOutJson: JSON.stringify(task.layOut),
    cautionsJson: JSON.stringify(task.cautions),
    hazardsJson: JSON.stringify(task.hazards),
    manualReference: task.manualReference,
    pinnedStart: writeOptionalInstant(task.pinnedStart),
    doneAt: writeOptionalInstant(task.doneAt),
  }),
  fromRow: readTask,
  loadChildren: loadTaskChildren,
  insertChildren: insertTaskChildren,
  removeChildren: async (db, seriesId, taskId) => {
    const where = { seriesId, taskId };
    await db.taskPart.deleteMany({ where });
    await db.taskEquipment.deleteMany({ where });
    await db.coat.deleteMany({ where });
  },
});

function readTask(row: TaskModel, children: Children): Task {
  const cell = (column: string) => ({ table: 'Task', row: row.id, column });
  return {
    kind: 'task',
    id: row.id,
    revision: row.revision,
    order: row.position,
    name: row.name,
    category: readValue(categories, row.category, cell('category')),
    episodeId: row.episodeId,
    placeId: row.placeId,
    parts: children.parts,
    effort: { low: minutes(row.effortLow), likely: minutes(row.effortLikely), high: minutes(row.effortHigh) },
    inOneGo: row.inOneGo,
    irreversible: row.irreversible,
    crew: readJson(skillNeeds, row.crewJson, cell('crewJson')),
    equipmentIds: children.equipmentIds,
    coats: children.coats,
    coverage: readValue(coverages, row.coverage, cell('coverage')),
    shots: readJson(shots, row.shotsJson, cell('shotsJson')),
    conditions: {
      minimumTemperature: row.minimumTemperature === null ? null : celsius(row.minimumTemperature),
      needsDaylight: row.needsDaylight,
    },
    isDusty: row.isDusty,
    isNoisy: row.isNoisy,
    layOut: readJson(texts, row.layOutJson, cell('layOutJson')),
    cautions: readJson(texts, row.cautionsJson, cell('cautionsJson')),
    hazards: readTaskHazards(row.hazardsJson, cell('hazardsJson')),
    manualReference: row.manualReference,
    pinnedStart: readOptionalInstant(row.pinnedStart),
    doneAt: readOptionalInstant(row.doneAt),
  };
}

const owner = (row: { readonly taskId: string }) => row.taskId;

async function loadTaskChildren(db: Db, { seriesId, id }: RowFilter): Promise<ChildrenOf<Children>> {
  const query = { where: id ? { seriesId, taskId: id } : { seriesId }, orderBy: { position: 'asc' } } as const;
  const parts = groupRows(await db.taskPart.findMany(query), owner, ({ partId, fromState: from, toState: to }) => ({ partId, from, to }));
  const equipmentIds = groupRows(await db.taskEquipment.findMany(query), owner, (row) => row.equipmentId);
  const coats = groupRows(await db.coat.findMany(query), owner, ({ id: coatId, materialId }) => ({ id: coatId, materialId }));
  return (taskId) => ({ parts: parts(taskId), equipmentIds: equipmentIds(taskId), coats: coats(taskId) });
}

async function insertTaskChildren(db: Db, seriesId: string, records: readonly Task[]): Promise<void> {
  const parts = records.flatMap((task) =>
    task.parts.map(({ partId, from, to }, position) => ({ seriesId, taskId: task.id, position, partId, fromState: from, toState: to })),
  );
  const equipment = records.flatMap((task) => task.equipmentIds.map((equipmentId, position) => ({ seriesId, taskId: task.id, position, equipmentId })));
  const coats = records.flatMap((task) => task.coats.map(({ id, materialId }, position) => ({ seriesId, taskId: task.id, position, id, materialId })));
  if (parts.length > 0) await db.taskPart.createMany({ data: parts });
  if (equipment.length > 0) await db.taskEquipment.createMany({ data: equipment });
  if (coats.length > 0) await db.coat.createMany({ data: coats });
}

import type { Series } from '@/lib/build';
import { celsius } from '@/lib/units';
import type { Db } from '../connection';
import type { SeriesModel } from '../generated/models';
import { readJson } from '../column';
import type { Table } from '../table';
import { cameraKit, filmingPractice, goalOrder } from './values';
import { workshopShape } from './cure-values';
import { sourceReadings } from './hazard-values';

/** The columns of a series that a person sets; the rest is bookkeeping of storage. */
export function seriesRow(series: Series) {
  return {
    id: series.id,
    revision: series.revision,
    position: series.order,
    name: series.name,
    zone: series.zone,
    cadenceDays: series.cadenceDays,
    leadDays: series.leadDays,
    fillLimit: series.fillLimit,
    workshopTemperature: series.workshopTemperature,
    runtimeTarget: series.runtime.target,
    runtimeMin: series.runtime.min,
    runtimeMax: series.runtime.max,
    frameRateNumerator: series.frameRate.numerator,
    frameRateDenominator: series.frameRate.denominator,
    titles: series.titles,
    bankMinimum: series.bankMinimum,
    usesExperience: series.usesExperience,
    filmingJson: JSON.stringify(series.filming),
    cameraJson: JSON.stringify(series.camera),
    frozenDays: series.frozenDays,
    goalsJson: series.goals === undefined ? null : JSON.stringify(series.goals),
    workshopJson: series.workshop === undefined ? null : JSON.stringify(series.workshop),
    sourceReadingsJson: series.sourceReadings === undefined ? null : JSON.stringify(series.sourceReadings),
  };
}

export function readSeries(row: SeriesModel): Series {
  return {
    kind: 'series',
    id: row.id,
    revision: row.revision,
    order: row.position,
    name: row.name,
    zone: row.zone,
    cadenceDays: row.cadenceDays,
    leadDays: row.leadDays,
    fillLimit: row.fillLimit,
    workshopTemperature: celsius(row.workshopTemperature),
    runtime: { target: row.runtimeTarget, min: row.runtimeMin, max: row.runtimeMax },
    frameRate: { numerator: row.frameRateNumerator, denominator: row.frameRateDenominator },
    titles: row.titles,
    bankMinimum: row.bankMinimum,
    usesExperience: row.usesExperience,
    filming: readJson(filmingPractice, row.filmingJson, { table: 'Series', row: row.id, column: 'filmingJson' }),
    camera: readJson(cameraKit, row.cameraJson, { table: 'Series', row: row.id, column: 'cameraJson' }),
    frozenDays: row.frozenDays,
    ...(row.goalsJson === null ? {} : { goals: readJson(goalOrder, row.goalsJson, { table: 'Series', row: row.id, column: 'goalsJson' }) }),
    ...(row.workshopJson === null ? {} : { workshop: readJson(workshopShape, row.workshopJson, { table: 'Series', row: row.id, column: 'workshopJson' }) }),
    ...(row.sourceReadingsJson === null ? {} : { sourceReadings: readJson(sourceReadings, row.sourceReadingsJson, { table: 'Series', row: row.id, column: 'sourceReadingsJson' }) }),
  };
}

/** The series' own row as a table of one. A change may only change it: it is created and removed as a whole. */
export const seriesTable: Table<Series> = {
  kind: 'series',
  list: async (db: Db, seriesId, ids) => {
    if (ids && !ids.includes(seriesId)) return [];
    const row = await db.series.findUnique({ where: { id: seriesId } });
    return row ? [readSeries(row)] : [];
  },
  insert: () => Promise.reject(new Error('A change cannot create a series; createSeries does.')),
  update: async (db, seriesId, series) => {
    await db.series.update({ where: { id: seriesId }, data: seriesRow(series) });
  },
  remove: () => Promise.reject(new Error('A change cannot remove a series; removeSeries does.')),
};

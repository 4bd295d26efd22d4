/** Kept forecasts and variants: numbered within their series. */
import type { NewForecast, SavedForecast } from '@/lib/forecast';
import { readInstant, readJson, readValue, writeInstant } from './column';
import type { Db } from './connection';
import { forecastKinds, forecastResult, variantResult } from './forecast-result';
import type { ForecastModel } from './generated/models';
import { noSuchSeries, Refusal } from './refusal';

/** Saves the next forecast or variant. @throws Refusal when the series is gone */
export async function insertForecast(db: Db, seriesId: string, forecast: NewForecast): Promise<SavedForecast> {
  const series = await db.series.findUnique({ where: { id: seriesId }, select: { id: true } });
  if (!series) throw new Refusal([noSuchSeries(seriesId)]);
  const last = await db.forecast.findFirst({ where: { seriesId }, orderBy: { number: 'desc' }, select: { number: true } });
  const row = {
    seriesId, number: (last?.number ?? 0) + 1, kind: forecast.kind, name: forecast.name, planNumber: forecast.planNumber, madeAt: writeInstant(forecast.madeAt),
    resultJson: JSON.stringify(forecast.kind === 'forecast' ? forecast.result : forecast.variant),
  };
  await db.forecast.create({ data: row });
  return readForecast(row);
}

/** The latest of a kind, newest first. */
export async function listForecasts(db: Db, seriesId: string, kind: SavedForecast['kind'], most: number): Promise<readonly SavedForecast[]> {
  const rows = await db.forecast.findMany({ where: { seriesId, kind }, orderBy: { number: 'desc' }, take: most });
  return rows.map(readForecast);
}

/** Takes one out; false when there was none. */
export async function deleteForecast(db: Db, seriesId: string, number: number): Promise<boolean> {
  const { count } = await db.forecast.deleteMany({ where: { seriesId, number } });
  return count > 0;
}

function readForecast(row: ForecastModel): SavedForecast {
  const cell = { table: 'Forecast', row: String(row.number), column: 'kind' };
  const kind = readValue(forecastKinds, row.kind, cell);
  const head = { number: row.number, name: row.name, planNumber: row.planNumber, madeAt: readInstant(row.madeAt) };
  const json = { ...cell, column: 'resultJson' };
  return kind === 'forecast'
    ? { ...head, kind, result: readJson(forecastResult, row.resultJson, json) }
    : { ...head, kind, variant: readJson(variantResult, row.resultJson, json) };
}

import type { SeriesRecord } from '@/lib/build';
import { checkHolidayPlace } from '@/lib/exchange';
import { ok, type Result } from '@/lib/result';

/**
 * A trade with its country and region as codes, where they differ from what it had; other records unchanged. Fails with
 * `holiday-country` or `holiday-region`.
 */
export async function settleHolidays<T extends SeriesRecord>(record: T, before: T | null): Promise<Result<T>> {
  if (record.kind !== 'trade' || record.terms === undefined) return ok(record);
  const { country, region } = record.terms;
  const old = before?.kind === 'trade' ? before.terms : undefined;
  if (country === (old?.country ?? '') && region === (old?.region ?? '')) return ok(record);
  const place = await checkHolidayPlace(country, region);
  return place.ok ? ok({ ...record, terms: { ...record.terms, ...place.value } }) : place;
}

/** Which time zones there are, and what a mistyped one was meant to be. */
import { fail, issue, ok, type Result } from '@/lib/result';
import { quoteText } from './quoted-text';

const LONGEST_NAME = 64;
const MOST_SUGGESTIONS = 3;
/** Abbreviations are out: platforms take some of them for another place (BST for Dhaka). */
const SHAPE = /^(utc|gmt|[a-z_]+\/.+)$/i;

/** Present names that some time zone libraries still list under an older spelling only. */
const RENAMED = [
  'Africa/Asmara', 'America/Argentina/Buenos_Aires', 'America/Nuuk', 'Asia/Ho_Chi_Minh', 'Asia/Kathmandu',
  'Asia/Kolkata', 'Asia/Yangon', 'Atlantic/Faroe', 'Europe/Kyiv', 'Pacific/Chuuk', 'Pacific/Kanton', 'Pacific/Pohnpei', 'UTC',
];

/** Names already found to be real, of which there are few. */
const accepted = new Set<string>();
let names: readonly string[] | null = null;

function isAccepted(name: string): boolean {
  try {
    return new Intl.DateTimeFormat('en-US', { timeZone: name }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
}

/**
 * An IANA time zone name that can be computed with: area and city, UTC or GMT. An offset such as `+01:00` is none,
 * for it knows no summer time, nor is an abbreviation.
 * @example isZone('Europe/London') // true
 * @example isZone('BST') // false
 */
export function isZone(name: string): boolean {
  if (accepted.has(name)) return true;
  if (name.length > LONGEST_NAME || !SHAPE.test(name) || !isAccepted(name)) return false;
  accepted.add(name);
  return true;
}

/** All names, sorted: for a list to choose from. @example listZones().includes('Europe/London') // true */
export function listZones(): readonly string[] {
  names ??= [...new Set([...Intl.supportedValuesOf('timeZone'), ...RENAMED.filter(isAccepted)])].toSorted();
  return names;
}

/** Letters to insert, remove or replace to turn one text into the other. */
function editDistance(a: string, b: string): number {
  let above = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const replace = (above[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      row.push(Math.min(replace, (above[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1));
    }
    above = row;
  }
  return above[b.length] ?? 0;
}

const simplify = (text: string): string => text.trim().toLowerCase().replace(/[\s-]+/g, '_');
const cityOf = (simple: string): string => simple.slice(simple.lastIndexOf('/') + 1);

/** The nearest by spelling, several only when they are equally near. The city alone counts as nearly the whole name. */
function findNearZones(text: string): string[] {
  const wanted = simplify(text);
  if (wanted.length < 3 || wanted.length > LONGEST_NAME) return [];
  const limit = Math.max(1, Math.floor(wanted.length / 4));
  const measured = listZones().map((name) => {
    const simple = simplify(name);
    const city = cityOf(simple);
    const bySameCity = cityOf(wanted) === city ? 1 : Number.POSITIVE_INFINITY;
    return { name, distance: Math.min(editDistance(wanted, simple), editDistance(wanted, city), bySameCity) };
  });
  const best = measured.reduce((least, { distance }) => Math.min(least, distance), limit);
  return measured
    .filter(({ distance }) => distance === best)
    .slice(0, MOST_SUGGESTIONS)
    .map(({ name }) => name);
}

/**
 * Reads a zone name as typed; letter case and spaces around it are forgiven. Fails with `zone-unknown`, near names in its fix.
 * @example parseZone('europe/london') // { ok: true, value: 'Europe/London' }
 * @example parseZone('London').ok // false
 */
export function parseZone(text: string): Result<string> {
  const typed = text.trim();
  if (isZone(typed)) {
    return ok(listZones().find((name) => name.toLowerCase() === typed.toLowerCase()) ?? typed);
  }
  const near = findNearZones(typed);
  const message = typed === '' ? 'The time zone is empty.' : `There is no time zone ${quoteText(text)}.`;
  const fix = near.length > 0 ? `Write ${near.join(' or ')}.` : 'Write area and city, such as Europe/London.';
  return fail([issue('zone-unknown', message, fix)]);
}

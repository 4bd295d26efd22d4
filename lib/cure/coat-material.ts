/** What a coat, bond or filler needs to know about itself. Times in minutes at the reference temperature, temperatures °C. */
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';
import type { RateLaw } from './rate';

/** Touch dry is not recoatable, recoatable is not fit to handle, and none of them is cured. */
export interface CureStages {
  /** Solvent gone enough for the next wet pass. */
  readonly flashOff: number;
  readonly touchDry: number;
  readonly recoatFrom: number;
  /** null: no upper bound. */
  readonly recoatUntil: number | null;
  readonly handle: number;
  readonly fullCure: number;
}

export type CureStage = Exclude<keyof CureStages, 'recoatUntil'>;

export const CURE_STAGES: readonly CureStage[] = ['flashOff', 'touchDry', 'recoatFrom', 'handle', 'fullCure'];

/**
 * Below the minimum temperature a coat does one of three things: it waits and goes on in the warmth, its film never forms and it
 * must be stripped, or it cures with a fault on its surface that must be cleaned before the next coat.
 */
export type BelowMinimum = 'pauses' | 'never forms' | 'surface fault';

/** Recoat window by the hottest surface held for an hour between the coats. Hours. */
export interface RecoatRow {
  readonly from: number;
  readonly to: number;
  readonly min: number;
  readonly max: number;
}

export interface PotLife {
  /** Minutes after mixing at `at`. */
  readonly minutes: number;
  readonly at: number;
  /** Kelvins that halve it. */
  readonly halvesPer: number;
  /** Minutes to stand before use. */
  readonly induction: number;
  /** True: the pot life counts from mixing and holds the induction already. */
  readonly isInductionIncluded: boolean;
}

export type LateWork = 'none' | 'abrade' | 'clean and tack coat' | 'strip';

/** Where a value comes from. `none`: common practice, no source. `memory`: from memory. Never shown as verified unless `read`. */
export interface ValueSource {
  readonly kind: 'read' | 'memory' | 'none';
  /** Published place, or what practice it is. */
  readonly text: string;
}

export interface OvenBake {
  /** Metal, not air, °C. */
  readonly metalTemperature: number;
  /** Minutes at that metal temperature. */
  readonly hold: number;
}

export type MaterialSort =
  | 'primer' | 'paint' | 'filler' | 'sealer' | 'adhesive' | 'thread locker' | 'powder' | 'galvanizing wash' | 'release' | 'other';

export interface CoatMaterial {
  readonly id: string;
  readonly name: string;
  readonly sort: MaterialSort;
  readonly stages: CureStages;
  readonly referenceTemperature: number;
  readonly law: RateLaw;
  /** Coldest surface to lay it on. */
  readonly minimumTemperature: number;
  /** Coldest surface it bears until touch dry; not above `minimumTemperature`, the same where only one figure is known. */
  readonly minimumUntilDry: number;
  readonly belowMinimum: BelowMinimum;
  /** Warmest surface to lay it on. */
  readonly maximumTemperature: number;
  /** Percent, null: no limit. */
  readonly humidity: { readonly low: number | null; readonly high: number | null };
  /** Kelvins the surface must stay above the dew point until touch dry. */
  readonly dewMargin: number;
  readonly recoatRows: readonly RecoatRow[];
  readonly potLife: PotLife | null;
  /** Percent by volume, null: not thinned. */
  readonly thinner: { readonly low: number; readonly high: number } | null;
  /** What must be done before the next coat once the window has closed. */
  readonly lateWork: LateWork;
  readonly bake: OvenBake | null;
  /** Depth in mm cured after one day at the reference, for what cures with moisture from its face inwards. */
  readonly depthPerRootDay: number | null;
  /** Cures only between metal faces that shut out air. */
  readonly isConfinedOnly: boolean;
  readonly hasSolvent: boolean;
  readonly hasIsocyanate: boolean;
  readonly cautions: readonly string[];
  /** By field. A field that is not here has no source. */
  readonly sources: Readonly<Partial<Record<SourcedField, ValueSource>>>;
}

export type SourcedField =
  | 'stages' | 'law' | 'minimumTemperature' | 'belowMinimum' | 'maximumTemperature' | 'humidity' | 'dewMargin' | 'recoatRows'
  | 'potLife' | 'thinner' | 'lateWork' | 'bake' | 'depthPerRootDay';

const STAGE_WORDS: Readonly<Record<keyof CureStages, string>> = {
  flashOff: 'flash-off', touchDry: 'touch dry', recoatFrom: 'recoat from', recoatUntil: 'recoat until', handle: 'handle', fullCure: 'full cure',
};

/** Pairs that must not come the other way round. Recoating wet on wet may come before touch dry. */
const ORDER: readonly (readonly [keyof CureStages, keyof CureStages])[] = [
  ['flashOff', 'touchDry'], ['touchDry', 'handle'], ['handle', 'fullCure'], ['flashOff', 'recoatFrom'], ['recoatFrom', 'fullCure'],
  ['recoatFrom', 'recoatUntil'],
];

function checkStages(name: string, stages: CureStages): Issue[] {
  const issues: Issue[] = [];
  for (const [stage, minutes] of Object.entries(stages)) {
    if (minutes !== null && !(minutes >= 0)) {
      issues.push(issue('stage-negative', `${name}: a stage lasts ${minutes} minutes.`, 'Write minutes from application, 0 or more.', { path: ['stages', stage] }));
    }
  }
  for (const [early, late] of ORDER) {
    const [before, after] = [stages[early], stages[late]];
    if (before === null || after === null || before <= after) continue;
    const isWindow = late === 'recoatUntil';
    const message = isWindow
      ? `${name}: the recoat window closes after ${after} min, before it opens after ${before} min.`
      : `${name}: ${STAGE_WORDS[late]} (${after} min) comes before ${STAGE_WORDS[early]} (${before} min).`;
    const fix = isWindow ? 'Swap the two values, or leave the closing empty.' : 'Check both times on the data sheet.';
    issues.push(issue(isWindow ? 'window-closed' : 'stage-order', message, fix, { path: ['stages', late] }));
  }
  return issues;
}

function checkRows(name: string, rows: readonly RecoatRow[]): Issue[] {
  return rows.flatMap((row, index) => {
    const issues: Issue[] = [];
    const path = (field: string) => ({ path: ['recoatRows', index, field] });
    if (row.max < row.min) {
      issues.push(issue('row-window', `${name}: row ${index + 1} of the recoat table closes (${row.max} h) before it opens (${row.min} h).`, 'Swap the two values.', path('max')));
    }
    const before = rows[index - 1];
    if (row.to < row.from || (before !== undefined && row.from <= before.to)) {
      issues.push(issue('row-order', `${name}: row ${index + 1} of the recoat table (${row.from} to ${row.to} °C) does not follow the row before it.`, 'Write the rows from cold to warm, without overlap.', path('from')));
    }
    return issues;
  });
}

function checkLimits(material: CoatMaterial): Issue[] {
  const { name, humidity, potLife, thinner } = material;
  const issues: Issue[] = [];
  const add = (isWrong: boolean, code: string, message: string, fix: string, path: string): void => {
    if (isWrong) issues.push(issue(code, `${name}: ${message}`, fix, { path: [path] }));
  };
  const { minimumTemperature: low, maximumTemperature: high, referenceTemperature: reference } = material;
  add(high < low, 'temperature-limits', `the highest temperature (${high} °C) lies below the lowest (${low} °C).`, 'Swap the two values.', 'maximumTemperature');
  add(material.minimumUntilDry > low, 'dry-minimum', `it may be laid at ${low} °C but must stay at ${material.minimumUntilDry} °C until dry.`, 'Raise the lowest temperature to lay it at.', 'minimumUntilDry');
  add(high >= low && (reference < low || reference > high), 'reference-outside', `the reference of ${reference} °C lies outside ${low} to ${high} °C.`, 'Check the temperature the times are given for.', 'referenceTemperature');
  add((humidity.low ?? 0) > (humidity.high ?? 100), 'humidity-limits', 'the lowest humidity lies above the highest.', 'Swap the two values.', 'humidity');
  add(!(material.dewMargin >= 0), 'dew-margin', `the dew margin is ${material.dewMargin} K.`, 'Write 3 unless the data sheet says more.', 'dewMargin');
  add(potLife !== null && potLife.isInductionIncluded && potLife.induction >= potLife.minutes, 'pot-life-induction', 'the pot is used up before its induction is over.', 'Check whether the pot life starts at mixing.', 'potLife');
  add(thinner !== null && (thinner.high < thinner.low || thinner.low < 0), 'thinner-range', 'the range of thinner runs backwards.', 'Swap the two values.', 'thinner');
  const { law } = material;
  const isLawWrong = (law.kind === 'doubling' && law.per <= 0) || (law.kind === 'arrhenius' && law.activation < 0) || (law.kind === 'maturity' && law.datum >= reference) || (law.kind === 'moisture' && law.humidity <= 0);
  add(isLawWrong, 'law-value', 'the rate does not rise with the temperature.', 'Check the value of the law.', 'law');
  return issues;
}

/** Whether a material makes sense; all issues, with field and row as path. */
export function checkCoatMaterial(material: CoatMaterial): Result<CoatMaterial> {
  const issues = [...checkStages(material.name, material.stages), ...checkRows(material.name, material.recoatRows), ...checkLimits(material)];
  return issues.length > 0 ? fail(issues) : ok(material);
}

/** Fields with a value but no source: the pages say so beside each. */
export function unsourcedFields(material: CoatMaterial): SourcedField[] {
  const used: readonly (readonly [SourcedField, boolean])[] = [
    ['stages', true], ['law', true], ['minimumTemperature', true], ['belowMinimum', true], ['maximumTemperature', true],
    ['humidity', material.humidity.low !== null || material.humidity.high !== null], ['dewMargin', material.dewMargin > 0],
    ['recoatRows', material.recoatRows.length > 0], ['potLife', material.potLife !== null], ['thinner', material.thinner !== null],
    ['lateWork', material.lateWork !== 'none'], ['bake', material.bake !== null], ['depthPerRootDay', material.depthPerRootDay !== null],
  ];
  return used.filter(([field, isUsed]) => isUsed && (material.sources[field]?.kind ?? 'none') === 'none').map(([field]) => field);
}

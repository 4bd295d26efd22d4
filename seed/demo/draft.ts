/** The short form the demo is written in. `raise.ts` turns it into records; nothing here is computed. */
import type { Category, Coverage, DryingStage, Material, MaterialVapour, Shot } from '@/lib/build';

/** Days after the Monday the demo starts on; negative is the week before. */
export interface Moment {
  readonly day: number;
  readonly at: string;
}

/** [part, state needed, state left]. No state left: needed as it is. */
export type UseDraft = readonly [part: string, from: string, to: string | null];

/** [purpose, what is in frame, crew minutes]; `must`: the episode does not work without it; then parts with the states they must be in. */
export type ShotDraft = readonly [purpose: Shot['purpose'], name: string, time: number, must?: 'must', ...states: (readonly [part: string, state: string])[]];

/** [low, likely, high]. */
export type EstimateDraft = readonly [low: number, likely: number, high: number];

export interface TaskDraft {
  readonly id: string;
  readonly name: string;
  readonly category: Category;
  readonly episode: string | null;
  readonly place: string;
  readonly parts: readonly UseDraft[];
  /** Hands-on minutes. */
  readonly effort: EstimateDraft;
  readonly oneGo?: true;
  readonly irreversible?: true;
  /** One skill a head; `anybody` needs none. */
  readonly crew: readonly string[];
  readonly equipment?: readonly string[];
  /** Materials, one a coat. */
  readonly coats?: readonly string[];
  readonly coverage: Coverage;
  readonly shots?: readonly ShotDraft[];
  readonly minimumTemperature?: number;
  readonly needsDaylight?: true;
  readonly dusty?: true;
  readonly noisy?: true;
  readonly layOut: readonly string[];
  readonly cautions?: readonly string[];
  readonly manual?: string;
  readonly done?: Moment;
}

export interface PartDraft {
  readonly id: string;
  readonly name: string;
  readonly assembly: string;
  /** Short key and name of each state, in the order they come. */
  readonly states: readonly (readonly [key: string, name: string])[];
  /** A place or a trade; nothing: in store. */
  readonly at?: string;
}

export interface MaterialDraft {
  readonly id: string;
  readonly name: string;
  readonly sort: Material['sort'];
  /** Minutes at 20 °C: touch dry, recoat from, recoat until, handle, full cure. */
  readonly stages: readonly [touchDry: number, recoatFrom: number, recoatUntil: number | null, handle: number, fullCure: number];
  readonly minimumTemperature: number;
  readonly potLife?: number;
  readonly solvent?: true;
  readonly vapour?: MaterialVapour;
}

/** Weekday 1 = Monday, with opening and closing time. */
export type HoursDraft = readonly (readonly [weekday: 1 | 2 | 3 | 4 | 5 | 6 | 7, from: string, to: string])[];

export interface SpanDraft {
  readonly fromDay: number;
  readonly toDay: number;
  readonly why: string;
}

export interface TradeDraft {
  readonly id: string;
  readonly name: string;
  readonly craft: string;
  readonly hours: HoursDraft;
  /** Own closures besides the year-end holidays, which close every trade. */
  readonly closed: readonly SpanDraft[];
  readonly trip: number;
  readonly contact: string;
}

export interface JobDraft {
  readonly id: string;
  readonly name: string;
  readonly trade: string;
  readonly episode: string | null;
  readonly parts: readonly UseDraft[];
  /** Working days of the trade. */
  readonly quote: EstimateDraft;
  readonly crew: number;
  readonly droppedOff?: Moment;
  readonly promisedDay?: number;
}

export interface LinkDraft {
  readonly id: string;
  readonly name: string;
  readonly from: string;
  readonly to: string;
  readonly stage?: DryingStage;
  /** Minutes. */
  readonly minWait?: number;
  readonly maxWait?: number;
}

export interface PersonDraft {
  readonly id: string;
  readonly name: string;
  readonly skills: readonly string[];
  readonly hours: HoursDraft;
  readonly away: readonly SpanDraft[];
  /** Consent to be shown. */
  readonly consent: { readonly day: number; readonly where: string };
}

export interface EpisodeDraft {
  readonly id: string;
  readonly name: string;
  readonly releaseDay: number;
  readonly evergreen?: true;
  readonly status?: 'recorded';
  /** File of the captions of a rough cut, and the day they were read through. */
  readonly captions?: { readonly file: string; readonly day: number };
}

export const hours = (count: number): number => count * 60;
export const days = (count: number): number => count * 1440;

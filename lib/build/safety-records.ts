/** What a build knows about hazards: what a hazard is, facts of tasks and things, and what people have signed. */
import type { CivilDate } from '@/lib/calendar';
import type { Instant } from '@/lib/units';
import type { HazardFact } from './hazard-facts';

/** MIL-STD-882E severity: I catastrophic, II critical, III marginal, IV negligible. */
export type HazardSeverity = 'I' | 'II' | 'III' | 'IV';

/** How far a value can be relied on. */
export type SourceStatus =
  /** Read in the source or in a copy of it. */
  | 'read'
  /** From memory: shown as unverified. */
  | 'memory'
  | 'computed'
  | 'judgement'
  /** Common practice without a source. */
  | 'practice';

export interface Source {
  readonly text: string;
  readonly status: SourceStatus;
  /** Day somebody last read it; null: nobody has. */
  readonly reviewed: CivilDate | null;
}

/** Somebody has read a source again, and the values that rest on it still hold. */
export interface SourceReading {
  /** The source as the hazards name it. */
  readonly text: string;
  readonly on: CivilDate;
  /** As the person was called then. */
  readonly by: string;
}

/** From the best to the least. Equipment a person wears comes after all of them. */
export type ControlLevel = 'eliminate' | 'substitute' | 'engineer' | 'administer';

export interface Control {
  readonly id: string;
  readonly level: ControlLevel;
  readonly text: string;
  /** It should be seen in the footage. */
  readonly isShown: boolean;
}

/** Something a person wears. */
export interface ProtectiveEquipment {
  readonly id: string;
  readonly text: string;
  /** ISO 7010 code of its sign; null: there is none. */
  readonly sign: string | null;
  readonly standard: string;
  readonly standardStatus: SourceStatus;
}

/** Any of the groups, each with all of its facts. */
export type Trigger = readonly (readonly HazardFact[])[];

export interface Caution {
  /** For the screen: at most two lines of 37 characters. */
  readonly screen: string;
  /** To be spoken: at most 30 words. */
  readonly spoken: string;
}

/** When to leave it to somebody licensed or equipped for it. */
export interface Deferral {
  readonly text: string;
  /** Facts that make it so; empty: a person has to know. `always`: whatever the facts. */
  readonly when: Trigger | 'always';
}

/** What makes a hazard, without its id and name. */
export interface HazardFields {
  readonly severity: HazardSeverity;
  readonly trigger: Trigger;
  readonly controls: readonly Control[];
  readonly equipment: readonly ProtectiveEquipment[];
  /** ISO 7010 codes to hang up or to show. */
  readonly signs: readonly string[];
  readonly caution: Caution;
  /** What the footage should show, in words. */
  readonly show: string;
  readonly deferral: Deferral | null;
  /** Nobody does it with nobody else in the building. */
  readonly needsSecondPerson: boolean;
  readonly sources: readonly Source[];
  /** Hazard of the library that this one replaces; null: none. */
  readonly replaces: string | null;
}

/** A departure from the maker's manual, as it must be said. */
export interface Departure {
  readonly manualValue: string;
  readonly ownValue: string;
  readonly reason: string;
  readonly warning: string;
}

/** Hazard facts of a task. */
export interface TaskHazards {
  readonly facts: readonly HazardFact[];
  /** Share of the hands-on time that the tools run, 0 to 1. */
  readonly toolShare: number;
  /** Paint as sprayed, millilitres; null: not known. */
  readonly sprayed: number | null;
  /** null: it is done by the manual, or there is none. */
  readonly departure: Departure | null;
}

/** A task nobody has said anything about yet: the tools are taken to run all the time. */
export const NO_TASK_HAZARDS: TaskHazards = { facts: [], toolShare: 1, sprayed: null, departure: null };

/** What a tool does to the person who holds it. null: not known. */
export interface ToolExposure {
  /** At the ear of the person, dB(A). */
  readonly noise: number | null;
  /** Hand-arm vibration, m/s2. */
  readonly vibration: number | null;
  readonly source: string;
}

export const NO_TOOL_EXPOSURE: ToolExposure = { noise: null, vibration: null, source: '' };

/** The air of a place. null: not known. */
export interface RoomAir {
  /** Cubic metres. */
  readonly volume: number | null;
  /** Air changes an hour with the extraction running. */
  readonly airChanges: number | null;
  readonly source: string;
}

export const NO_ROOM_AIR: RoomAir = { volume: null, airChanges: null, source: '' };

/** What evaporates from a material. null: not known. */
export interface MaterialVapour {
  /** Of the solvent, kg/l. */
  readonly density: number | null;
  /** Of the solvent, g/mol. */
  readonly molarMass: number | null;
  /** Share of the paint as sprayed that evaporates, 0 to 1 by volume. */
  readonly solventShare: number | null;
  /** Exposure limit over eight hours, ppm. */
  readonly limit: number | null;
  readonly source: string;
}

export const NO_VAPOUR: MaterialVapour = { density: null, molarMass: null, solventShare: null, limit: null, source: '' };

/** Consent of somebody to be seen and heard in the series. */
export interface Consent {
  /** null: not given, or taken back. */
  readonly givenOn: CivilDate | null;
  /** Last release that it covers; null: for good. */
  readonly until: CivilDate | null;
  /** Where the paper is, and what it leaves out. */
  readonly where: string;
}

export const NO_CONSENT: Consent = { givenOn: null, until: null, where: '' };

/** What was checked in the finished cut of an episode. */
export interface CutChecks {
  readonly captions: {
    /** Name of the file. Empty: there is none. */
    readonly file: string;
    /** Day somebody read them through against the cut; null: nobody has. */
    readonly readOn: CivilDate | null;
  };
  readonly flashes: {
    /** Most flashes in any second of the cut, counted after whatever was done about them; null: not counted. */
    readonly perSecond: number | null;
    /** Filter, reframing, slower cuts. */
    readonly remedy: string;
    readonly countedOn: CivilDate | null;
  };
}

export const NO_CUT_CHECKS: CutChecks = { captions: { file: '', readOn: null }, flashes: { perSecond: null, remedy: '', countedOn: null } };

/** What a signed statement is about. */
export type StatementAbout =
  | { readonly sort: 'hazard-added' | 'hazard-removed'; readonly taskId: string; readonly hazardId: string }
  /** Evidence for an item of an episode's checklist; `fingerprint` is what the item stood on when it was signed. */
  | { readonly sort: 'evidence'; readonly episodeId: string; readonly itemId: string; readonly fingerprint: string; readonly evidence: Evidence }
  /** Cleared or released in spite of these blocks. */
  | { readonly sort: 'override'; readonly episodeId: string; readonly status: 'cleared' | 'released'; readonly blocks: readonly string[] };

export type Evidence =
  /** Seen or heard there. `entryId`: the entry of the log that is the take; left out where it was typed, or is the cut. */
  | { readonly kind: 'take'; readonly take: string; readonly timecode: string; readonly entryId?: string | undefined }
  /** Not needed here, reviewed; the reason is that of the statement. */
  | { readonly kind: 'exception' }
  /** An earlier signature is taken back. */
  | { readonly kind: 'withdrawn' };

/** Signed by a person at a time. Never changed and never removed; a later one about the same thing counts. */
export interface SignedFields {
  readonly about: StatementAbout;
  readonly personId: string;
  /** As the person was called then. */
  readonly signedBy: string;
  readonly at: Instant;
  readonly reason: string;
}

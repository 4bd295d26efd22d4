/** The series at a glance: which episode shows which hazard, and what is open. */
import type { Episode, SeriesDocument } from '@/lib/build';
import { buildChecklist, type ChecklistMore } from './checklist';
import { isAnswered } from './checklist-item';
import { findCombinations } from './combinations';
import { judgeGate } from './gate';
import { listHazards } from './library-in-force';
import type { Hazard } from './model';

export interface MatrixCell {
  readonly episodeId: string;
  /** Needed lines of this hazard, and how many of them are open. */
  readonly needed: number;
  readonly open: number;
}

export interface MatrixRow {
  readonly hazard: Hazard;
  /** One for each episode that shows it. */
  readonly cells: readonly MatrixCell[];
}

export interface MatrixColumn {
  readonly episode: Episode;
  /** Blocks nobody has set aside. */
  readonly open: number;
  readonly overrides: number;
}

export interface SafetyMatrix {
  readonly columns: readonly MatrixColumn[];
  /** Hazards that some episode shows. */
  readonly rows: readonly MatrixRow[];
}

/** The matrix of a series: hazards down, episodes across. */
export function buildMatrix(document: SeriesDocument, more: ChecklistMore = {}): SafetyMatrix {
  const combinations = findCombinations(document, more.work);
  const lists = document.episodes.map((episode) => ({ episode, checklist: buildChecklist(document, episode.id, { ...more, combinations }) }));
  const columns = lists.map(({ episode, checklist }): MatrixColumn => {
    const gate = judgeGate(document, checklist);
    return { episode, open: gate.open.length, overrides: gate.overrides.length };
  });
  const shown = new Map(lists.flatMap(({ checklist }) => checklist.hazards.map(({ hazard }) => [hazard.id, hazard] as const)));
  const rows = listHazards(document).filter(({ id }) => shown.has(id)).map((hazard): MatrixRow => ({
    hazard,
    cells: lists.filter(({ checklist }) => checklist.hazards.some((one) => one.hazard.id === hazard.id)).map(({ episode, checklist }): MatrixCell => {
      const needed = checklist.items.filter((item) => item.isNeeded && item.hazard?.id === hazard.id);
      return { episodeId: episode.id, needed: needed.length, open: needed.filter((item) => !isAnswered(item)).length };
    }),
  }));
  return { columns, rows };
}

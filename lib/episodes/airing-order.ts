/** Part states along the order in which segments are shown. */
import { issue, type Issue } from '@/lib/result';

export interface ShownPart {
  readonly partId: string;
  readonly partName: string;
  /** Place of the state among the part's states, 0 first. */
  readonly stateIndex: number;
  readonly stateName: string;
}

export interface ShownSegment {
  readonly id: string;
  readonly name: string;
  /** Where the story goes back in time on purpose. */
  readonly isFlashback: boolean;
  readonly parts: readonly ShownPart[];
}

/** A part that is shown in an earlier state than before, outside a flashback: `state-runs-backwards`, a warning. */
export function checkAiringOrder(segments: readonly ShownSegment[]): readonly Issue[] {
  const latest = new Map<string, { readonly part: ShownPart; readonly segment: ShownSegment }>();
  const found: Issue[] = [];
  for (const segment of segments) {
    if (segment.isFlashback) continue;
    for (const part of segment.parts) {
      const before = latest.get(part.partId);
      if (before === undefined || before.part.stateIndex <= part.stateIndex) {
        latest.set(part.partId, { part, segment });
        continue;
      }
      found.push(issue('state-runs-backwards',
        `${part.partName} is ${part.stateName} in “${segment.name}”, but was ${before.part.stateName} already in “${before.segment.name}”, which is shown before it.`,
        'Move one of the two segments, or mark it as a flashback.',
        { severity: 'warn', subjects: [segment, before.segment].map(({ id, name }) => ({ kind: 'segment', id, name })) }));
    }
  }
  return found;
}

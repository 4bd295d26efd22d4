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

/** Earliest and latest state of each part in a segment: the order within one is left to the edit. */
function spanStates({ parts }: ShownSegment): readonly { readonly earliest: ShownPart; readonly latest: ShownPart }[] {
  return [...new Set(parts.map(({ partId }) => partId))].map((id) => {
    const own = parts.filter(({ partId }) => partId === id).toSorted((a, b) => a.stateIndex - b.stateIndex);
    return { earliest: own[0]!, latest: own.at(-1)! };
  });
}

/** A part that is shown in an earlier state than before, outside a flashback: `state-runs-backwards`, a warning. */
export function checkAiringOrder(segments: readonly ShownSegment[]): readonly Issue[] {
  const reached = new Map<string, { readonly part: ShownPart; readonly segment: ShownSegment }>();
  const found: Issue[] = [];
  for (const segment of segments.filter(({ isFlashback }) => !isFlashback)) {
    for (const { earliest, latest } of spanStates(segment)) {
      const before = reached.get(earliest.partId);
      if (before === undefined || before.part.stateIndex <= latest.stateIndex) reached.set(earliest.partId, { part: latest, segment });
      if (before === undefined || before.part.stateIndex <= earliest.stateIndex) continue;
      found.push(issue('state-runs-backwards',
        `${earliest.partName} is ${earliest.stateName} in “${segment.name}”, but was ${before.part.stateName} already in “${before.segment.name}”, which is shown before it.`,
        'Move one of the two segments, or mark it as a flashback.',
        { severity: 'warn', subjects: [segment, before.segment].map(({ id, name }) => ({ kind: 'segment', id, name })) }));
    }
  }
  return found;
}

import { listDated, type Rule, type Violation } from './violation';

/** No piece of split work is shorter than it may be; work shorter than that is one piece. */
export const checkShortestPieces: Rule = (problem, schedule) => listDated(problem, schedule).flatMap(({ activity, placement }) => {
  const { duration, id, mode, shortestPiece } = activity;
  // Without a calendar there are no pauses.
  if (shortestPiece === undefined || mode !== 'split' || activity.calendar === undefined) return [];
  const least = duration < shortestPiece ? duration : shortestPiece;
  return placement.pieces.filter((piece) => piece.end - piece.start < least).map((piece): Violation => ({
    rule: 'shortest-piece',
    message: `${id} has a piece of ${piece.end - piece.start} minutes at ${piece.start}, shorter than ${least}.`,
    activities: [id],
  }));
});

/** The proof-capable core: integer starts, relations s_j >= g(s_i), renewable resources, makespan. */
export { solveCore } from './solve';
export type { CoreOptions, CoreProgress, CoreSolution, CoreStatus, CoreStop } from './solve';
export { followRelation } from './instance';
export type { CoreInstance, CurveRelation, LagRelation, Piece, Relation, StartRange } from './instance';

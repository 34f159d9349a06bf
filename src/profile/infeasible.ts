/** A measure of the sheet that a design can be mended with. Lengths in mm, angles in radians, apex in mm from the
 *  heel; `taper` caps every lean. */
export type Mendable = 'apexX' | 'standingFlat' | 'pitch' | 'toe.radius' | 'toe.toeSpring' | 'toe.toeOff' | 'toe.endAngle' | 'strike' | 'taper';

export interface Change { readonly measure: Mendable; readonly value: number }
/** Changes that, put in together, were tried and give a design. Nearly always one. */
export type Remedy = readonly Change[];

export type Trouble = 'APEX_TOO_NEAR' | 'TOE_ARC_TOO_SHORT' | 'TOE_ARC_TOO_TIGHT' | 'TOE_SPRING_OUT_OF_REACH' | 'TOE_OFF_OUT_OF_REACH' | 'END_ANGLE_TOO_SMALL' | 'NO_BUILD' | 'WALLS_MEET' | 'OUTLINE_FOLDS';

/** Thrown when the measures and the order leave no shape; says which measure is to blame. A correction, not a bug. */
export class Infeasible extends Error {
  readonly trouble: Trouble;
  /** The measures to try, the one to blame first. */
  readonly toTry: readonly Mendable[];

  constructor(trouble: Trouble, message: string, toTry: readonly Mendable[]) {
    super(message);
    this.name = 'Infeasible';
    this.trouble = trouble;
    this.toTry = toTry;
  }
}

/** What is made, or why there is no such shape. */
export function orInfeasible<T>(make: () => T): T | Infeasible {
  try { return make(); }
  catch (error) {
    if (error instanceof Infeasible) return error;
    throw error;
  }
}

import { lowestBetween, rootBetween } from '../../geometry/solve.ts';
import type { Mm } from '../../geometry/units.ts';
import { heightsOf, jointsOf, offsetInward, type GroundFace } from '../../profile/groundFace.ts';
import { lowestOver, type Place } from '../../profile/thinnest.ts';
import type { SolvedSole } from '../../solid/fromRocker.ts';
import { planOfShape } from '../../solid/foamLeft.ts';

/** The thinnest a wedge may be anywhere, square to its faces: less can be neither printed nor taped. Common practice of the trade. */
export const SKIN: Mm = 1.5;
/** What the base keeps at least between stiffener and wedge, upright. Common practice of the trade. */
export const BASE_LEAST: Mm = 2;

/** A base face is found in steps of this, so that it can be ground to. */
const STEP: Mm = 0.1;
/** No arc of the base is tighter than this: it would be a corner. */
const TIGHTEST: Mm = 5;

/**
 * Walking lines turn about their own apex, so the same place lies a little further along one than along another.
 * @returns what to add to a way along the first to get that along the second
 */
export const alongShift = ({ shape: { line: a } }: SolvedSole, { shape: { line: b } }: SolvedSole): Mm => (b.apexX - a.apexX) * (1 - a.cosine);

/**
 * How far the planned face must be set in to be the face of a base under which every shape leaves a wedge no thinner than the
 * skin anywhere: the base then lies above the parallel a skin inside of each. In whole tenths.
 * @returns undefined where the arcs are too tight for it
 */
export function leastSetIn(planned: SolvedSole, others: readonly SolvedSole[]): Mm | undefined {
  const most = Math.min(...planned.shape.face.pieces.map((piece) => (piece.kind === 'arc' ? piece.radius : Infinity))) - TIGHTEST;
  const spare = (setIn: Mm): Mm => Math.min(...others.map((other) => leastGap(planned, offsetInward(planned.shape.face, setIn), other)));
  let high = SKIN;
  while (!(spare(high) >= 0)) {
    if (high >= most) return undefined;
    high = Math.min(most, high + SKIN);
  }
  const exact = high === SKIN ? SKIN : rootBetween(spare, Math.max(SKIN, high - SKIN), high, 1e-6);
  const setIn = Math.ceil(exact / STEP - 1e-6) * STEP;
  return setIn <= most ? Number(setIn.toFixed(1)) : undefined;
}

/** The least height of the base face over the parallel a skin inside of another shape's face; minus infinity where one of them has ended. */
function leastGap(planned: SolvedSole, base: GroundFace, other: SolvedSole): Mm {
  const shift = alongShift(planned, other), inner = offsetInward(other.shape.face, SKIN), { rim } = other.bodies.whole;
  const baseHeight = heightsOf(base), innerHeight = heightsOf(inner);
  const gap = (along: Mm): Mm => { const value = baseHeight(along - shift) - innerHeight(along); return Number.isFinite(value) ? value : -Infinity; };
  const count = Math.ceil(rim.end - rim.start), even = Array.from({ length: count + 1 }, (_, i) => rim.start + ((rim.end - rim.start) * i) / count);
  const joints = [...jointsOf(inner).map(([x]) => x), ...jointsOf(base).map(([x]) => x + shift)].filter((x) => x > rim.start && x < rim.end);
  const places = [...even, ...joints], lowest = places.reduce((best, along) => (gap(along) < gap(best) ? along : best));
  if (gap(lowest) === -Infinity) return -Infinity;
  const near = lowestBetween(gap, Math.max(rim.start, lowest - 1), Math.min(rim.end, lowest + 1), 1e-5);
  return Math.min(gap(lowest), gap(near)) + ROUNDING;
}
/** The planned shape itself leaves exactly the skin where the base is set in by no more. */
const ROUNDING: Mm = 1e-9;

/** What the base keeps where it is thinnest, upright, over the whole plan. */
export function baseLeft({ shape }: SolvedSole, base: GroundFace): Mm {
  const { build, stiffener } = shape, height = heightsOf(base), plan = planOfShape(shape);
  const leftAt = ({ upper, along }: Place): Mm => { const left = upper + build - stiffener - height(along); return Number.isFinite(left) ? left : -Infinity; };
  return leftAt(lowestOver(plan, leftAt));
}

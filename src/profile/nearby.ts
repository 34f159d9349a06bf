import type { Path } from '../geometry/path.ts';
import type { Mm, Rad } from '../geometry/units.ts';
import { remembering } from '../geometry/solve.ts';
import type { Last } from '../last/last.ts';
import { edgeLine, featherLine, tipOf } from '../last/outline.ts';
import { upperFace, type UpperFace } from '../last/upperFace.ts';
import { angleAt } from './groundFace.ts';
import { Infeasible, orInfeasible } from './infeasible.ts';
import { arcsAt, buildFor, fitUnder, judgedOver, leastBuild, spareOf, type Arcs, type Attempt, type Judged, type RockerCase } from './rocker.ts';
import { rollLine, rollX, type RollLine } from './rollLine.ts';
import { standInShoe, type ShoeStance } from './stance.ts';
import { planOf, type BarePlan } from './thinnest.ts';
import { thinnestAlong, type Axis } from './thinnestAlong.ts';
import { thinnestRound } from './thinnestRound.ts';

/** A solved rocker without what only solids and drawings need: the outline. */
export interface BareRocker extends Arcs {
  readonly stance: ShoeStance;
  readonly line: RollLine;
  readonly upper: UpperFace;
  readonly build: Mm;
  readonly tipAngle: Rad;
}

/** Solves one of many rockers that differ little. */
export type SolveNearby = (given: RockerCase) => BareRocker | Infeasible;

/**
 * For many rockers that differ little: the same arcs over the same least thickness as `solveRocker`, but the search for the
 * build begins at the last one found, and no outline is drawn that the thickness does not hang on. It holds to that of
 * `solveRocker` within a micron; under a turned crest, and with a last dished across and a tip beside the long axis, within
 * some hundredths of a millimetre (see `thinnestRound` and `axisOf`).
 */
export function nearbySolver(from: Mm): SolveNearby {
  const near: Near = { build: from, slope: 1 }, outline = lastOutline();
  return (given) => {
    const solved = solveFrom(near, given, outline);
    if (!(solved instanceof Infeasible)) near.build = solved.build;
    return solved;
  };
}

/** Where the search begins, and how fast spare thickness rises with the build there. */
interface Near { build: Mm; slope: number }

type Outline = (given: RockerCase) => Path;

function solveFrom(near: Near, given: RockerCase, outline: Outline): BareRocker | Infeasible {
  const { last, order } = given, stance = standInShoe(given.foot, last), line = rollLine(order.apexX, order.crestAngle), upper = upperFace(last);
  let judged: Judged | undefined;
  const attempt = remembering((build) => orInfeasible(() => {
    const arcs = arcsAt(given, stance, line, build);
    judged ??= judgedFor(given, line, upper, outline);
    return fitUnder(judged, given, arcs, build);
  }));
  const built = orInfeasible(() => buildFor(given, attempt, () => buildNear(near, attempt)));
  if (built instanceof Infeasible) return built;
  const found = attempt(built.build);
  if (found instanceof Infeasible) return found;
  const { thin: _, ...arcs } = found;
  return { ...arcs, stance, line, upper, build: built.build, tipAngle: angleAt(arcs.face, rollX(line, tipOf(last))) };
}

/** Nearer than this two builds are one. */
const SAME_BUILD: Mm = 1e-5;
const MOST_STEPS = 12;

/** The least build by secants from near it: spare thickness rises with the build, by about as much. Where they lead nowhere, as ever. */
function buildNear(near: Near, attempt: Attempt): Mm {
  let { build } = near, spare = spareOf(attempt(build));
  for (let i = 0; i < MOST_STEPS && Number.isFinite(spare); i++) {
    if (Math.abs(spare) < SAME_BUILD) return build;
    const next = build - spare / near.slope, after = spareOf(attempt(next)), rise = (after - spare) / (next - build);
    if (rise > 0.2 && rise < 5) near.slope = rise;
    build = next; spare = after;
  }
  return leastBuild(attempt);
}

/**
 * Under a crest that is square across, thickness at an x is least on the long axis, or the same all across: the axis stands
 * for the plan. Else the whole outline counts.
 */
function judgedFor(given: RockerCase, line: RollLine, upper: UpperFace, outline: Outline): Judged {
  const { last } = given;
  if (line.turn !== 0) return judgedRound(given, { last, upper, edge: outline(given), line });
  const axis = axisOf(given, upper);
  return { judge: (face, asked, build, strikeX) => thinnestAlong(axis, face, asked, build, strikeX), furthest: axis.fore };
}

const judgedRound = ({ order: { minima } }: RockerCase, plan: BarePlan): Judged =>
  (plan.last.camber !== 0 ? judgedOver(planOf(plan.last, plan.upper, plan.edge, plan.line)) : thinnestRound(plan, minima));

/** Right behind a tip that lies beside the axis, the axis leaves the outline: there the outline runs over to the tip. */
function axisOf({ last, order: { edgeBeyond } }: RockerCase, upper: UpperFace): Axis {
  const back = -edgeBeyond.heel, fore = last.length + edgeBeyond.toe, [, tip] = tipOf(last), leaves = fore - (tip * tip) / (2 * TOE_ROUND * last.ballWidth);
  const asideAt = (x: Mm): Mm => (last.camber === 0 || x <= leaves ? 0 : (tip * (x - leaves)) / (fore - leaves));
  return { last, upper, back, fore, asideAt };
}

/** Radius of the outline at the tip as a share of the ball width, about: a pointed toe is tighter, a square one much flatter. */
const TOE_ROUND = 0.3;

/** Draws the edge of a last anew only where something changed that it hangs on. */
function lastOutline(): Outline {
  let known: { readonly by: readonly number[]; readonly edge: Path } | undefined;
  return ({ last, order }) => {
    const by = outlineNumbers(last);
    if (!known?.by.every((one, i) => one === by[i])) known = { by, edge: edgeLine(featherLine(last), last, order.edgeBeyond) };
    return known!.edge;
  };
}

/** Where the edge stands out unevenly, seat and tread shift where it widens by a hair: that is let pass. */
const outlineNumbers = ({ length, ballWidth, heelWidth, innerBall, outerBall, inflare }: Last): readonly number[] =>
  [length, ballWidth, heelWidth, innerBall, outerBall, inflare];

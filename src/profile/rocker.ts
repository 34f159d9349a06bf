import { remembering, rootBetween } from '../geometry/solve.ts';
import { SOLVED } from '../geometry/tolerances.ts';
import type { Path } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import type { Mm, Rad } from '../geometry/units.ts';
import { sin } from '../geometry/trig.ts';
import type { RockerOrder, SeatHeight } from '../prescription/order.ts';
import type { Last } from '../last/last.ts';
import { edgeLine, featherLine, tipOf } from '../last/outline.ts';
import { upperFace, type UpperFace } from '../last/upperFace.ts';
import { apexOn, groundFace, heelPieces, midArcs, toePieces, STEEPEST, type Apex, type MidArcs } from './arcs.ts';
import { angleAt, heightAt, offsetInward, pieceNamed, startOf, type GroundFace, type RollArc } from './groundFace.ts';
import { Infeasible, orInfeasible } from './infeasible.ts';
import { rollLine, rollX, type RollLine } from './rollLine.ts';
import { standInShoe, type FootNumbers, type ShoeStance } from './stance.ts';
import { planOf, thinnest, type Asked, type Closeness, type Plan, type Thinnest } from './thinnest.ts';

/** All that decides a rocker, in plain numbers. */
export interface RockerCase { readonly foot: FootNumbers; readonly last: Last; readonly order: RockerOrder }

/** A solved rocker: the exact ground face at the least build, and what it was built from. Heights are above the ground. */
export interface Rocker {
  readonly stance: ShoeStance;
  readonly face: GroundFace;
  readonly line: RollLine;
  readonly feather: Path;
  readonly edge: Path;
  readonly upper: UpperFace;
  /** Height of the tread plane above the ground, mm. */
  readonly build: Mm;
  /** What keeps the build from being lower: the thinnest place, or whoever asks for a seat height. */
  readonly governs: Thinnest | SeatHeight['by'];
  readonly thinnest: Thinnest;
  /** Ankle pivot and hip as the profile has them: [along the walking line, height above the ground]. */
  readonly pivot: Point;
  readonly hip: Point;
  readonly mid: MidArcs;
  readonly apex: Apex;
  /** Joint of heel and mid arc; undefined where there is no heel arc. */
  readonly heelArc: RollArc | undefined;
  readonly toeArc: RollArc;
  /** Where the arcs end behind: the point that is on the ground at the strike angle. */
  readonly strikePoint: Point;
  /** Roll angle reached at the tip of the last. */
  readonly tipAngle: Rad;
}

/** Highest build tried: nobody walks on more. */
const BUILD_LIMIT: Mm = 400;
/** Where the search begins. */
const USUAL_BUILD: Mm = 25;
export type Arcs = Pick<Rocker, 'face' | 'mid' | 'apex' | 'pivot' | 'hip' | 'strikePoint'>;
export type Trial = Arcs & { readonly thin: Thinnest };

/**
 * Solves the rocker: the lowest build at which the sole is as thick as asked everywhere, and the arcs that go with it.
 * @param closeness how closely the sole is looked over for where it is thinnest
 * @throws Infeasible naming the measure to blame when there is no such shape
 */
export function solveRocker(given: RockerCase, closeness?: Closeness): Rocker {
  const { last, order } = given;
  const stance = standInShoe(given.foot, last), line = rollLine(order.apexX, order.crestAngle);
  // Most refusals show in the arcs alone; the outline is drawn only when they stand.
  let drawn: Drawn | undefined;
  const attempt = remembering((build) => orInfeasible(() => {
    const arcs = arcsAt(given, stance, line, build);
    drawn ??= drawPlan(given, line, closeness);
    return fitUnder(drawn, given, arcs, build);
  }));
  const { build, by } = buildFor(given, attempt), found = attempt(build);
  if (found instanceof Infeasible) throw found;
  const { thin, ...arcs } = found, { feather, edge, upper } = drawn!;
  return {
    ...arcs, stance, line, feather, edge, upper, build,
    governs: by ?? thin, thinnest: thin,
    heelArc: pieceNamed(arcs.face, 'heel arc') as RollArc | undefined,
    toeArc: pieceNamed(arcs.face, 'toe arc') as RollArc,
    tipAngle: angleAt(arcs.face, rollX(line, tipOf(last))),
  };
}

/** The arcs at one build; nothing of them hangs on the outline. @throws Infeasible */
export function arcsAt({ last, order }: RockerCase, stance: ShoeStance, line: RollLine, build: Mm): Arcs {
  const pivot: Point = [rollX(line, [stance.pivot[0], 0]), stance.pivot[1] + build], hip: Point = [rollX(line, [stance.standing, 0]), pivot[1] + stance.hipUp];
  const mid = midArcs(hip[0], pivot[0], hip[1], order.standingFlat), apex = apexOn(mid, order.apexX);
  const heel = heelPieces(pivot, mid, order.strike);
  const toe = toePieces(order.toe, { apex, pivot, tipX: rollX(line, tipOf(last)) });
  const face = groundFace(heel, mid, apex, toe);
  requireBend(pieceNamed(face, 'toe arc') as RollArc, order.outsole.thickness);
  return { face, mid, apex, pivot, hip, strikePoint: startOf(heel[1] ?? face.pieces[1]!) };
}

/** Finds the thinnest place over what lies within the edge, and how far forward along the walking line that reaches. */
export interface Judged { readonly judge: (face: GroundFace, asked: Asked, build: Mm, strikeX: Mm) => Thinnest; readonly furthest: Mm }
interface Drawn extends Judged { readonly upper: UpperFace; readonly feather: Path; readonly edge: Path }

function drawPlan({ last, order }: RockerCase, line: RollLine, closeness?: Closeness): Drawn {
  const upper = upperFace(last), feather = featherLine(last), edge = edgeLine(feather, last, order.edgeBeyond);
  return { upper, feather, edge, ...judgedOver(planOf(last, upper, edge, line), closeness) };
}

export const judgedOver = (plan: Plan, closeness?: Closeness): Judged => ({
  judge: (face, asked, build, strikeX) => thinnest(plan, face, asked, build, strikeX, closeness),
  furthest: Math.max(plan.last.length, ...plan.places.map(({ along }) => along)),
});

/** How thick the sole comes out over arcs at one build. @throws Infeasible */
export function fitUnder({ judge, furthest }: Judged, { order }: RockerCase, arcs: Arcs, build: Mm): Trial {
  const { face, strikePoint } = arcs, outsole = order.outsole.thickness;
  requireReach(face, furthest, outsole);
  const asked = { minima: order.minima, stiffener: order.stiffener, inner: offsetInward(face, outsole) };
  return { ...arcs, thin: judge(face, asked, build, strikePoint[0]) };
}

/** The foam under the outsole keeps at least this radius: tighter is a corner, and an outsole cannot be bent round it. */
const TIGHTEST: Mm = 5;

function requireBend({ radius }: RollArc, outsole: Mm): void {
  if (radius >= outsole + TIGHTEST) return;
  throw new Infeasible('TOE_ARC_TOO_TIGHT',
    `a toe arc of radius ${radius.toFixed(1)} mm is a corner: with an outsole of ${outsole} mm it must be at least ${(outsole + TIGHTEST).toFixed(1)} mm`,
    ['toe.radius', 'toe.toeSpring', 'toe.toeOff', 'toe.endAngle']);
}

/** The face must still be there under the edge that stands out beyond the tip, for the foam above the outsole too. */
function requireReach(face: GroundFace, furthest: Mm, outsole: Mm): void {
  const arc = face.pieces[face.pieces.length - 1]!;
  if (arc.kind !== 'arc') return;
  const reach = arc.centre[0] + (arc.radius - outsole) * sin(STEEPEST);
  if (reach >= furthest) return;
  throw new Infeasible('TOE_ARC_TOO_SHORT',
    `the toe arc of radius ${arc.radius.toFixed(1)} mm stands upright ${(furthest - reach).toFixed(1)} mm before the toe edge ends (outsole of ${outsole} mm counted)`,
    ['toe.radius', 'toe.toeSpring', 'toe.toeOff', 'apexX', 'toe.endAngle']);
}

/** A seat height that is asked for holds where the sole is thick enough at it; else the least build, if that is higher. */
export function buildFor({ last, order: { seatAtLeast } }: RockerCase, attempt: Attempt, least = leastBuild): { readonly build: Mm; readonly by?: SeatHeight['by'] } {
  if (!seatAtLeast) return { build: least(attempt) };
  const asked = seatAtLeast.height - upperFace(last)(last.seatLength / 2, 0), trial = attempt(asked);
  if (spareOf(trial) >= 0) return { build: asked, by: seatAtLeast.by };
  const build = least(attempt);
  if (build < asked && trial instanceof Infeasible) throw trial;
  return { build };
}

/** What comes of a build, or why there is no shape at it. */
export type Attempt = (build: Mm) => Trial | Infeasible;

/** Spare thickness; endlessly little where there is no shape. */
export const spareOf = (trial: Trial | Infeasible): Mm => (trial instanceof Infeasible ? -Infinity : trial.thin.spare);

/**
 * Spare thickness rises with the build, about a millimetre for each, so its zero is the least build. Where no shape
 * exists yet (a short toe arc that grows with the pivot's height), more build is tried; a shape that exists only where
 * it is thicker than anyone asked is refused.
 */
export function leastBuild(attempt: Attempt): Mm {
  const spare = (build: Mm): Mm => spareOf(attempt(build));
  let high = USUAL_BUILD, above = spare(high);
  while (!(above >= 0) && high < BUILD_LIMIT) { high = Number.isFinite(above) ? high - 1.3 * above + 0.1 : 2 * high; above = spare(high); }
  if (!(above >= 0)) throw refusalAt(attempt, USUAL_BUILD);
  let low = high, below = above;
  while (below >= 0) { high = low; low -= 1.3 * below + 0.1; below = spare(low); }
  for (let i = 0; i < 60 && !Number.isFinite(below); i++) {
    const middle = (low + high) / 2, value = spare(middle);
    if (value >= 0) high = middle; else { low = middle; below = value; }
  }
  if (!Number.isFinite(below)) throw refusalAt(attempt, low);
  let root = rootBetween(spare, low, high), left = spare(root);
  for (let i = 0; i < 5 && left < 0; i++) { root += SOLVED - left; left = spare(root); }
  return root;
}

function refusalAt(attempt: Attempt, build: Mm): Infeasible {
  const trial = attempt(build);
  return trial instanceof Infeasible ? trial
    : new Infeasible('NO_BUILD', `no sole up to ${BUILD_LIMIT} mm high is as thick as asked everywhere`, ['apexX', 'pitch', 'strike']);
}

/** Vertical thickness of the sole at a place on the long axis, mm. */
export const thicknessAt = (rocker: Rocker, x: Mm): Mm => rocker.upper(x, 0) + rocker.build - heightAt(rocker.face, rollX(rocker.line, [x, 0]));

import type { Fitting } from '../fitting/fitting.ts';
import type { Side } from '../fitting/words.ts';
import { boundsOf, mirrored, triangleCount, type Box, type Mesh } from '../geometry/mesh.ts';
import type { Point } from '../geometry/point.ts';
import { inDegrees, type Mm, type Rad } from '../geometry/units.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { axisX } from '../profile/rollLine.ts';
import { carriedBy } from '../roll/carried.ts';
import { hullBody, silhouetteOf } from '../roll/hull.ts';
import { dropAcross, jumpsOf } from '../roll/jumps.ts';
import { rollBodyOf } from '../roll/ofSole.ts';
import { contactAt, placedAt, type RollBody } from '../roll/rollBody.ts';
import type { Plain } from './figure.ts';
import { plain } from './figure.ts';
import { figuresOf } from './figures.ts';
import { rollHeights, turnsOf } from './rollFigures.ts';

/** One figure of the plan and what it is on the solid. */
export interface RolledFigure { readonly planned: Plain; readonly found: number; readonly estimated: boolean }

/** How far a point of the shoe comes off its planned height, at most, and at which roll angle. */
export interface Strays { readonly point: 'ankle pivot' | 'hip'; readonly most: Mm; readonly roll: Rad }

/** A gap the solid falls across: from and to, along the axis from the heel; how deep it is; how far the hip dips. */
export interface Gap { readonly from: Mm; readonly to: Mm; readonly deep: Mm; readonly hipDips: Mm }

export interface SolidRoll {
  readonly kind: 'rolled';
  readonly side: Side;
  readonly triangles: number;
  readonly figures: readonly RolledFigure[];
  readonly strays: readonly Strays[];
  readonly gaps: readonly Gap[];
}

/** A solid that does not lie where the planned sole lies: how far each side of its box is off, and what its numbers may be instead of mm. */
export interface Misplaced { readonly kind: 'misplaced'; readonly side: Side; readonly off: Readonly<Record<BoxSide, Mm>>; readonly looksLike?: 'inches' | 'metres' }

/**
 * Rolls a solid, the exported or a scanned one, on the hull of its outline and holds it against the sole as planned: a second
 * way that knows nothing of arcs. Ankle pivot and hip are carried where the plan has them.
 * @param mesh mm, lying as the exported sole lies: forward from the heel, outer and inner side as on that shoe, floor at 0
 */
export function solidRoll(shoe: RockerShoe, fitting: Fitting, mesh: Mesh): SolidRoll | Misplaced {
  const { side } = shoe, own = side === 'left' ? mesh : mirrored(mesh), off = offBy(boundsOf(own), boundsOf(shoe.solids.whole));
  if (Math.max(...Object.values(off).map(Math.abs)) > PLACED) return { kind: 'misplaced', side, off, ...looksLike(boundsOf(own), boundsOf(shoe.solids.whole)) };
  const { rocker: { line, hip } } = shoe, exact = rollBodyOf(shoe), body = hullBody(silhouetteOf(own, line));
  const gaps = jumpsOf(body, own, line).map((jump): Gap => ({ from: axisX(line, jump.bridge.from[0]), to: axisX(line, jump.bridge.to[0]), deep: jump.deep, hipDips: dropAcross(body, jump, hip) }));
  return { kind: 'rolled', side, triangles: triangleCount(mesh), figures: figuresBeside(shoe, fitting, exact, body), strays: straysOf(shoe, exact, body), gaps };
}

/** Trim, outsole and glue make a sole a few mm larger; more than this it lies elsewhere. */
const PLACED: Mm = 15;

/** The upper side is not asked: a shoe may stand on the sole. */
type BoxSide = 'back' | 'front' | 'right' | 'left' | 'underside';
const offBy = (found: Box, planned: Box): Record<BoxSide, Mm> => ({
  back: found.least[0] - planned.least[0], front: found.most[0] - planned.most[0],
  right: found.least[1] - planned.least[1], left: found.most[1] - planned.most[1], underside: found.least[2] - planned.least[2],
});

function looksLike(found: Box, planned: Box): Pick<Misplaced, 'looksLike'> {
  const share = (found.most[0] - found.least[0]) / (planned.most[0] - planned.least[0]), near = (per: number): boolean => Math.abs(share * per - 1) < 0.1;
  return near(25.4) ? { looksLike: 'inches' } : near(1000) ? { looksLike: 'metres' } : {};
}

/** What is not of the sole itself: it is the same for both. */
const OF_OTHERS = 'pivotDropOrdinary';

function figuresBeside(shoe: RockerShoe, fitting: Fitting, exact: RollBody, body: RollBody): RolledFigure[] {
  const turns = turnsOf(shoe, exact), known = figuresOf(shoe, fitting), { rocker: { line } } = shoe;
  const rows = (on: RollBody): readonly Plain[] => [plain('standingPoint', 'Standing point from the heel', axisX(line, contactAt(on, 0)[0]), 'mm'), ...rollHeights(shoe, on, turns)].filter(({ key }) => key !== OF_OTHERS);
  const found = rows(body);
  return rows(exact).map((planned, i) => ({ planned, found: found[i]!.value, estimated: known.some(({ key, estimated }) => key === planned.key && estimated) }));
}

/** Roll angles looked at, in a step of it. */
const LOOKS = 240;

function straysOf(shoe: RockerShoe, exact: RollBody, body: RollBody): Strays[] {
  const { pivot, hip } = carriedBy(shoe), { from, to } = turnsOf(shoe, exact);
  const rolls = Array.from({ length: LOOKS + 1 }, (_, i): Rad => from + ((to - from) * i) / LOOKS);
  const farthest = (point: Strays['point'], at: Point): Strays => {
    const offs = rolls.map((roll) => placedAt(body, at, roll)[1] - placedAt(exact, at, roll)[1]), most = Math.max(...offs.map(Math.abs)), i = offs.findIndex((off) => Math.abs(off) === most);
    return { point, most: offs[i]!, roll: rolls[i]! };
  };
  return [farthest('ankle pivot', pivot), farthest('hip', hip)];
}

/** As numbers for machines: mm, degrees, keys as in design.json. */
export const solidRollNumbers = ({ side, triangles, figures, strays, gaps }: SolidRoll): object => ({
  side, triangles,
  figures: figures.map(({ planned: { key, value, unit }, found, estimated }) => ({ key, unit, planned: value, found, ...(estimated ? { estimated } : {}) })),
  strays: strays.map(({ point, most, roll }) => ({ point, most, roll: inDegrees(roll) })), gaps,
});

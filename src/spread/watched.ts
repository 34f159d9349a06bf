import type { Point } from '../geometry/point.ts';
import { cos, sin } from '../geometry/trig.ts';
import { inDegrees, type Mm, type Rad } from '../geometry/units.ts';
import { tipOf } from '../last/outline.ts';
import { angleAt, heightAt, pieceNamed } from '../profile/groundFace.ts';
import type { BareRocker } from '../profile/nearby.ts';
import type { RockerCase } from '../profile/rocker.ts';
import { rollX } from '../profile/rollLine.ts';
import type { FigureKey } from '../checks/figures.ts';

/** A solved variant and what it was solved from. */
export interface Variant { readonly given: RockerCase; readonly rocker: BareRocker }

/** Who walks in it, as measured: ankle pivot in the shoe, [from the heel, above the tread plane], and tilt at heel strike. */
export interface Walker { readonly pivot: Point; readonly strike: Rad }

/** A result of a shoe whose spread is watched; it is a figure of the shoe. */
export interface Watched {
  readonly key: FigureKey;
  readonly label: string;
  readonly unit: 'mm' | 'deg';
  /** Off by this it matters on the finished shoe; results of different kind are weighed by it. */
  readonly matters: number;
  /** What more and less of it is called. */
  readonly more: string;
  readonly less: string;
}

const result = (key: FigureKey, label: string, unit: Watched['unit'], matters: number, more: string, less: string): Watched => ({ key, label, unit, matters, more, less });

/**
 * How near the parts of a finished shoe are to be made: place along the foot ±3 mm, heel and ball height ±1 mm, toe spring
 * ±1.5 mm, the form of the heel arc ±0.7 mm, tilt as near as it can be read. Common practice of the trade.
 */
const DROP = result('pivotDrop', 'pivot drop at heel strike', 'mm', 0.7, 'deeper', 'shallower');
const STANDING = result('standingPoint', 'standing point', 'mm', 3, 'forward', 'back');
const SEAT = result('seatHeight', 'seat height', 'mm', 1, 'up', 'down');
const BALL = result('ballHeight', 'ball height', 'mm', 1, 'up', 'down');
const SPRING = result('toeSpringOfShoe', 'toe spring of the shoe', 'mm', 1.5, 'up', 'down');
const HEEL = result('heelRise', 'rise of the heel edge', 'mm', 1.5, 'up', 'down');
const STRIKE = result('strikeReached', 'tilt reached at heel strike', 'deg', 3, 'up', 'down');
const TOE_OFF = result('toeOff', 'tilt reached at toe-off', 'deg', 3, 'up', 'down');

/** What is watched of a rocker, in the order of `resultsOf`. */
export const WATCHED: readonly Watched[] = [DROP, STANDING, SPRING, SEAT, BALL, HEEL, STRIKE, TOE_OFF];
/** So many of them are told first. */
export const TOLD_FIRST = 4;

/** What is watched of a match: its raise, at the seat and at the ball. */
export const WATCHED_RAISE: readonly Watched[] = [
  result('raiseSeat', 'raise at the seat', 'mm', 1, 'up', 'down'), result('raiseBall', 'raise at the ball', 'mm', 1, 'up', 'down'),
];

/** The watched results of a variant, mm and degrees. The ground line of walls that lean ends elsewhere; how far its ends shift is the same. */
export function resultsOf(variant: Variant, walker: Walker): number[] {
  const { given: { last, order }, rocker: { face, line, stance, upper, build } } = variant, on = (x: Mm, y = 0): Mm => rollX(line, [x, y]), [, aside] = tipOf(last);
  return [
    dropUnder(variant, walker), stance.standing, heightAt(face, on(last.length, aside)), upper(last.seatLength / 2, 0) + build, upper(last.tread, 0) + build, heightAt(face, on(0)),
    -inDegrees(angleAt(face, on(-order.edgeBeyond.heel))), inDegrees(angleAt(face, on(last.length + order.edgeBeyond.toe, aside))),
  ];
}

/**
 * How far the walker's ankle pivot drops from heel strike until the heel arc is rolled off; it rises where negative. Round a
 * pivot that was read right it keeps its height, so what is off shows only under the pivot as it is.
 */
function dropUnder({ given: { order }, rocker: { face, line, mid, build } }: Variant, { pivot: [x, up], strike }: Walker): Mm {
  const back = rollX(line, [-order.edgeBeyond.heel, 0]), reached = angleAt(face, back), heel = pieceNamed(face, 'heel arc');
  const pivot: Point = [rollX(line, [x, 0]), up + build], corner: Point = [back, heightAt(face, back)];
  const over = ([cx, cz]: Point, roll: Rad): Mm => (pivot[1] - cz) * cos(roll) - (pivot[0] - cx) * sin(roll);
  const heightAtRoll = (roll: Rad): Mm => {
    if (roll < reached) return over(corner, roll);
    return heel?.kind === 'arc' && roll <= heel.to ? heel.radius + over(heel.centre, roll) : mid.radius + over([mid.rearX, mid.radius], roll);
  };
  return heightAtRoll(-strike) - heightAtRoll(Math.max(reached, -strike, heel?.kind === 'arc' ? heel.to : -strike));
}

/** How high a foot stands in a variant, insole counted: seat and ball. */
export const standsOf = ({ given: { last }, rocker: { upper, build } }: Variant): number[] =>
  [upper(last.seatLength / 2, 0) + build + last.insole, upper(last.tread, 0) + build + last.insole];

/** Stretches between the places along a sole at which the ground face is compared. */
export const STRETCHES = 30;

/** The ground face as it lies under the last, heights above the tread plane, at even shares of the last's length from heel to tip. */
export function faceUnderLast({ given: { last }, rocker: { face, line, build } }: Variant): number[] {
  return Array.from({ length: STRETCHES + 1 }, (_, i) => heightAt(face, rollX(line, [(last.length * i) / STRETCHES, 0])) - build);
}

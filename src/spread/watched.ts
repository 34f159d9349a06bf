import { inDegrees, type Mm } from '../geometry/units.ts';
import { tipOf } from '../last/outline.ts';
import { angleAt, heightAt } from '../profile/groundFace.ts';
import type { BareRocker } from '../profile/nearby.ts';
import type { RockerCase } from '../profile/rocker.ts';
import { rollX } from '../profile/rollLine.ts';
import type { FigureKey } from '../checks/figures.ts';

/** A solved variant and what it was solved from. */
export interface Variant { readonly given: RockerCase; readonly rocker: BareRocker }

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
 * ±1.5 mm, tilt as near as it can be read. Common practice of the trade.
 */
const STANDING = result('standingPoint', 'standing point', 'mm', 3, 'forward', 'back');
const SEAT = result('seatHeight', 'seat height', 'mm', 1, 'up', 'down');
const BALL = result('ballHeight', 'ball height', 'mm', 1, 'up', 'down');
const SPRING = result('toeSpringOfShoe', 'toe spring of the shoe', 'mm', 1.5, 'up', 'down');
const HEEL = result('heelRise', 'rise of the heel edge', 'mm', 1.5, 'up', 'down');
const STRIKE = result('strikeReached', 'tilt reached at heel strike', 'deg', 3, 'up', 'down');
const TOE_OFF = result('toeOff', 'tilt reached at toe-off', 'deg', 3, 'up', 'down');

/** What is watched of a rocker, in the order of `resultsOf`. */
export const WATCHED: readonly Watched[] = [STANDING, SEAT, BALL, SPRING, HEEL, STRIKE, TOE_OFF];

/** What is watched of a match: its raise, at the seat and at the ball. */
export const WATCHED_RAISE: readonly Watched[] = [
  result('raiseSeat', 'raise at the seat', 'mm', 1, 'up', 'down'), result('raiseBall', 'raise at the ball', 'mm', 1, 'up', 'down'),
];

/** The watched results of a variant, mm and degrees. The ground line of walls that lean ends elsewhere; how far its ends shift is the same. */
export function resultsOf({ given: { last, order }, rocker: { face, line, stance, upper, build } }: Variant): number[] {
  const on = (x: Mm, y = 0): Mm => rollX(line, [x, y]), [, aside] = tipOf(last);
  return [
    stance.standing, upper(last.seatLength / 2, 0) + build, upper(last.tread, 0) + build, heightAt(face, on(last.length, aside)), heightAt(face, on(0)),
    -inDegrees(angleAt(face, on(-order.edgeBeyond.heel))), inDegrees(angleAt(face, on(last.length + order.edgeBeyond.toe, aside))),
  ];
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

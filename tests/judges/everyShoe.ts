import { inDegrees, type Mm, type Rad } from '../../src/geometry/units.ts';
import { angleAt, heightAt } from '../../src/profile/groundFace.ts';
import { Infeasible, orInfeasible } from '../../src/profile/infeasible.ts';
import type { RockerCase } from '../../src/profile/rocker.ts';
import { seatOf, soleFrom } from '../../src/solid/fromRocker.ts';

/** What a shoe is judged by, read off the whole sole: mm and degrees. */
export interface Judged { readonly seat: number; readonly strike: number; readonly toeOff: number; readonly dropStrike: number; readonly dropToeOff: number; readonly flat: number }

/** Undefined where there is no such shoe. */
export function judged(given: RockerCase): Judged | undefined {
  const sole = orInfeasible(() => soleFrom(given));
  if (sole instanceof Infeasible) return undefined;
  const { rocker: { mid, hip, face }, bodies: { whole: { rim } } } = sole, back = angleAt(face, rim.start), front = angleAt(face, rim.end);
  // Standing on an end of its ground line the shoe touches there alone: the hip is as high as it stands over the tangent.
  const drop = (x: Mm, roll: Rad): Mm => hip[1] - ((hip[1] - heightAt(face, x)) * Math.cos(roll) - (hip[0] - x) * Math.sin(roll));
  return { seat: seatOf(sole), strike: -inDegrees(back), toeOff: inDegrees(front), dropStrike: drop(rim.start, back), dropToeOff: drop(rim.end, front), flat: mid.frontX - mid.rearX };
}

/** The loss as the README tells it: a degree for each degree, a tenth for each mm of hip drop more and of flat missed. */
export const lossTold = (own: Judged, asked: Judged, flat: number): number =>
  Math.max(0, asked.strike - own.strike) + Math.max(0, asked.toeOff - own.toeOff) + 0.1 * (Math.max(0, own.dropStrike - asked.dropStrike) + Math.max(0, own.dropToeOff - asked.dropToeOff) + Math.abs(own.flat - flat));

/** Every mixture of the values given. */
export const mixtures = (values: readonly (readonly number[])[]): number[][] =>
  values.reduce<number[][]>((mixed, own) => mixed.flatMap((before) => own.map((value) => [...before, value])), [[]]);

/** The least loss of all shoes that stand no higher than a limit, by trying every one: Infinity where none does. */
export function leastLoss(cases: Iterable<RockerCase>, ordered: RockerCase, seatAtMost: number): number {
  const asked = judged(ordered)!;
  let least = Infinity;
  for (const one of cases) {
    const own = judged(one);
    if (own && own.seat <= seatAtMost + 1e-9) least = Math.min(least, lossTold(own, asked, ordered.order.standingFlat));
  }
  return least;
}

/** The greatest toe-off angle of all shoes that stand no higher than each limit, by trying every one; -Infinity where none stands so low. */
export function greatestToeOff(cases: readonly RockerCase[], seatsAtMost: readonly Mm[]): readonly number[] {
  const tried = cases.flatMap((one) => judged(one) ?? []);
  return seatsAtMost.map((most) => tried.reduce((greatest, { seat, toeOff }) => (seat <= most + 1e-9 ? Math.max(greatest, toeOff) : greatest), -Infinity));
}

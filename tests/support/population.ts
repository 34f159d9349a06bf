import { degrees, inDegrees } from '../../src/geometry/units.ts';
import type { RockerOrder } from '../../src/prescription/order.ts';
import { TOE_RULES, TOE_SHAPES } from '../../src/fitting/words.ts';
import type { RockerCase } from '../../src/profile/rocker.ts';
import { plainOrder } from './cases.ts';
import { chanceFrom, type Chance } from './random.ts';
import type { Person } from './people.ts';

/** Lean of the leg in the shoe, radians: what a good fitting comes to. */
const LEAN = degrees(4);

/**
 * A person of the survey in a shoe with the default order: a locked ankle fitted to lean 4 degrees, pitch 12 to 20 mm,
 * last spring 8 to 15 mm, the last's other measures by the rules a sheet would use.
 */
export function fittedCase(person: Person, chance: Chance): RockerCase {
  const length = person.foot + 15, pitch = chance.between(12, 20), tread = 0.715 * length, seatLength = length / 4;
  const tilt = Math.atan2(pitch, tread - seatLength / 2);
  return {
    foot: {
      pivotForward: 0.24 * person.foot, pivotHeight: person.malleolus + 5, hipHeight: person.trochanter,
      stance: { kind: 'locked', ankleAngle: LEAN - tilt },
    },
    last: {
      length, pitch, toeSpring: chance.between(8, 15), seatLength, tread, heelBack: 0, camber: 0, ballWidth: person.footBreadth,
      heelWidth: person.heelBreadth, innerBall: person.ball, outerBall: 0.63 * person.foot, toeShape: 'round', inflare: 4, insole: 4,
    },
    order: { ...plainOrder, apexX: 0.65 * length, apexByDefault: true },
  };
}

const anyMinima = (chance: Chance): RockerOrder['minima'] => ({
  edge: chance.between(2, 10), seat: chance.between(10, 30), waist: chance.between(4, 30), tread: chance.between(4, 25), tip: chance.between(3, 14),
});

/** Any order a maker might write, sensible or not, within what the sheet's reader lets through. */
export function anyOrder(given: RockerCase, chance: Chance): RockerCase {
  const { length } = given.last, rule = chance.oneOf(TOE_RULES), sometimes = <T extends object>(extra: T): Partial<T> => (chance.between(0, 1) < 0.3 ? extra : {});
  const numbers = { 'pivot-to-toe': {}, 'pivot-height': {}, given: { radius: chance.between(60, 400) }, 'for-toe-spring': { toeSpring: chance.between(5, 70) }, 'for-toe-off': { toeOff: degrees(chance.between(2, 75)) } };
  const leastEnd = rule === 'for-toe-off' ? inDegrees(numbers[rule].toeOff) : 2;
  const lean = (most: number): number => degrees(chance.between(-most, most));
  const order: RockerOrder = {
    ...given.order,
    apexX: chance.between(0.5, 0.85) * length,
    toe: { rule, ...numbers[rule], ...sometimes({ endAngle: degrees(chance.between(leastEnd, Math.max(leastEnd, 45))) }) },
    standingFlat: chance.oneOf([0, 0, 20, 30, 60]),
    crestAngle: degrees(chance.oneOf([90, 90, 95, 80, 105])),
    strike: degrees(chance.between(8, 32)),
    outsole: { ...given.order.outsole, thickness: chance.between(1.5, 5) },
    stiffener: chance.oneOf([1.5, 1.5, 3]),
    minima: chance.oneOf([given.order.minima, given.order.minima, anyMinima(chance)]),
    ...sometimes({ seatAtLeast: { height: chance.between(20, 70), by: 'order' } }),
    edgeBeyond: chance.oneOf([{ heel: 0, ball: 0, toe: 0 }, { heel: 2, ball: 3, toe: 2 }, { heel: 6, ball: 6, toe: 6 }]),
    taper: chance.oneOf([given.order.taper, { heelInner: lean(8), heelOuter: lean(8), foreInner: lean(5), foreOuter: lean(5) }]),
  };
  return { ...given, order, last: { ...given.last, camber: chance.oneOf([0, 0, 0, 3]), toeShape: chance.oneOf(TOE_SHAPES) } };
}

export { chanceFrom };

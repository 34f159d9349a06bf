import type { Design } from '../../src/checks/design.ts';
import { spot, type View } from '../../src/exports/view.ts';
import type { LengthUnit } from '../../src/fitting/lengthUnit.ts';
import { rangeOf, type RangeName } from '../../src/fitting/ranges.ts';
import type { Point } from '../../src/geometry/point.ts';
import { inDegrees, MM_PER_INCH, type Mm } from '../../src/geometry/units.ts';
import type { RockerShoe } from '../../src/pair/shoe.ts';
import { heightAt } from '../../src/profile/groundFace.ts';
import { rollX } from '../../src/profile/rollLine.ts';
import { tipOf } from '../../src/last/outline.ts';
import type { Handle } from './protocol.ts';

/** Where a handle is on the shoe, the field it moves, and how the field answers to a millimetre of the shoe. */
interface Grip {
  readonly id: string;
  readonly label: string;
  /** [along the walking line, up]. */
  readonly on: Point;
  readonly moves: Handle['moves'];
  readonly field: string;
  readonly range: RangeName;
  /** In the unit of the range table. */
  readonly value: number;
  readonly perMm: number;
  readonly also?: Handle['also'];
  /** So much lower on the paper, where another pin may stand on the same place. */
  readonly below?: Mm;
}

/** The places of each rocker that can be dragged on the side drawing. @param views where each shoe stands on it; @param units what the sheet is written in */
export function handlesOf(design: Design, views: readonly View[], units: LengthUnit): Handle[] {
  return design.shoes.flatMap((shoe, i) => shoe.kind === 'rocker' ? gripsOf(shoe).map((grip) => handleFor(grip, shoe, views[i]!, units)) : []);
}

function handleFor({ id, label, on, moves, field, range, value, perMm, also, below = 0 }: Grip, { side }: RockerShoe, view: View, units: LengthUnit): Handle {
  const { limits: [least, most], unit } = rangeOf(range), inches = unit === 'mm' && units === 'in', by = inches ? 1 / MM_PER_INCH : 1;
  const at = spot(view, on);
  return {
    id: `${side}.${id}`, label: `${side} ${label}`, at: [at[0], at[1] + below], moves, path: `${side}.${field}`,
    ...(also ? { also: Object.fromEntries(Object.entries(also).map(([name, word]) => [`${side}.${name}`, word])) } : {}),
    value: value * by, unit: inches ? 'in' : unit === 'deg' ? '°' : unit, perMm: perMm * by, perPaper: (perMm * by) / view.scale, least: least * by, most: most * by,
  };
}

function gripsOf(shoe: RockerShoe): Grip[] {
  const { last, order, rocker } = shoe, { face, line, apex, mid, hip, strikePoint, heelArc, build, upper } = rocker;
  const tip = rollX(line, tipOf(last)), spring = heightAt(face, tip), seat = last.seatLength / 2, seatHeight = upper(seat, 0) + build;
  // A strike angle so small that it needs no heel arc can be drawn back again.
  const strike: Grip = {
    id: 'strike', label: 'strike point', on: strikePoint, moves: 'along', field: 'foot.strikeAngle', range: 'foot.strikeAngle',
    value: inDegrees(order.strike), perMm: -inDegrees(1 / ((heelArc?.radius ?? rocker.pivot[1]) * Math.cos(order.strike))),
  };
  return [
    { id: 'apex', label: 'apex', on: apex.point, moves: 'along', field: 'order.apex', range: 'order.apex', value: (100 * order.apexX) / last.length, perMm: 100 / last.length },
    {
      id: 'tip', label: 'toe spring at the tip', on: [tip, spring], moves: 'up', field: 'order.toe.toeSpring', range: 'order.toe.toeSpring', value: spring, perMm: 1,
      also: { 'order.toe.rule': 'for-toe-spring', 'order.toe.radius': null, 'order.toe.toeOffAngle': null },
    },
    { id: 'flat', label: 'front end of the standing flat', on: [mid.frontX, 0], moves: 'along', field: 'order.standingFlat', range: 'order.standingFlat', value: mid.frontX - mid.rearX, perMm: 2 },
    { id: 'seat', label: 'seat height', on: [rollX(line, [seat, 0]), seatHeight], moves: 'up', field: 'order.seatHeightAtLeast', range: 'order.seatHeightAtLeast', value: seatHeight, perMm: 1 },
    strike, ...standingGrip(shoe, [hip[0], 0]),
  ];
}

/** The standing point follows what was measured on the client; a prosthesis is aligned by the prosthetist, so it has none. */
function standingGrip({ fitting: { foot }, rocker: { stance } }: RockerShoe, on: Point): Grip[] {
  const common = { id: 'standing', on, moves: 'along', below: 7 } as const, by = (what: string) => ({ label: `standing point, by ${what}` }), plates = foot?.heelPlates;
  if (foot?.stance.kind === 'free') return [{ ...common, ...by('the hip ahead of the ankle'), field: 'foot.hipAhead', range: 'foot.hipAhead', value: foot.stance.hipAhead.value, perMm: 1 }];
  if (plates) return [{ ...common, ...by('the hip ahead on the plates'), field: 'foot.heelPlates.hipAhead', range: 'foot.heelPlates.hipAhead', value: plates.hipAhead.value, perMm: 1 }];
  if (foot?.stance.kind !== 'locked' || foot.stance.found === 'prosthesis alignment') return [];
  return [{ ...common, ...by('the fixed ankle angle'), field: 'foot.ankleAngle', range: 'foot.ankleAngle', value: inDegrees(foot.stance.ankleAngle.value), perMm: inDegrees(1 / (stance.leg * Math.cos(stance.lean))) }];
}

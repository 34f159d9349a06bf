import { HEIGHT_WITHIN } from '../making/gauges/heightGauge.ts';
import { WORN } from '../making/gauges/repairGauge.ts';
import type { Slice } from '../making/gauges/slice.ts';
import { SPRING_WITHIN } from '../making/gauges/toeWedge.ts';
import type { Made } from '../making/made.ts';
import { BASE_LEAST, SKIN } from '../making/wedges/base.ts';
import type { TrialWedge } from '../making/wedges/wedges.ts';
import type { Side } from '../fitting/words.ts';
import { inDegrees } from '../geometry/units.ts';

/** What the gauges of a shoe are cut to; nothing where none are ordered. Ways are along the walking line, places across it positive to the outer side. */
export function gaugeNumbers({ gauges }: Made, side: Side): object {
  const one = gauges.find((each) => each.side === side);
  if (!one) return {};
  const held = ({ across, from, to }: Slice): object => ({ acrossMm: across, fromMm: from, toMm: to });
  return {
    gauges: {
      parts: one.parts.map(({ name }) => name), inner: held(one.slices.inner), outer: held(one.slices.outer), repair: held(one.slices.repair), wornMm: WORN,
      heights: one.heights.map(({ place, height }) => ({ place, heightMm: height, withinMm: HEIGHT_WITHIN })),
      toeEnd: { heightMm: one.toeEnd.height, slopeDeg: inDegrees(one.toeEnd.slope), withinMm: SPRING_WITHIN },
    },
  };
}

/** The trial of a shoe; nothing where none is ordered or none can be made. Thicknesses are upright, on the long axis. */
export function wedgeNumbers({ wedges }: Made, side: Side): object {
  const one = wedges.find((each) => each.side === side);
  if (!one) return {};
  const { trial: { seat, higher, setIn, baseLeft, leftOut } } = one;
  return {
    trial: {
      seatHeightMm: seat, higherThanPlannedMm: higher, baseSetInMm: setIn, baseLeastMm: baseLeft, baseLeastWantedMm: BASE_LEAST, leastSkinMm: SKIN,
      wedges: one.wedges.map(ofWedge), leftOut: leftOut.map(({ variant: { number, apexBy, flat }, why, works }) => ({ number, apexByMm: apexBy, flatMm: flat, why, worksWithStepMm: works.step, worksWithFlatMm: works.flat })),
    },
  };
}

const ofWedge = ({ variant: { number, apexBy, flat, planned }, numbers }: TrialWedge): object => ({
  number, apexByMm: apexBy, flatMm: flat, planned,
  ...Object.fromEntries(Object.entries(numbers).map(([name, value]) => [`${name}Mm`, value])),
});

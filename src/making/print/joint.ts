import type { PrintOrder } from '../../fitting/making.ts';
import { cos, atan } from '../../geometry/trig.ts';
import type { Mm } from '../../geometry/units.ts';
import type { Body } from '../../solid/body.ts';
import type { Bar } from '../booleans.ts';
import type { Outline } from '../mould/outline.ts';
import { facesInPlan, roomAcross, sectionAt, waistOf, type Section } from './waist.ts';

/**
 * How a sole is parted at its waist. The heel part carries a dovetail that slides down into the forepart; two loose pins,
 * one from each wall, run through the cheeks of the forepart into the dovetail and hold it at its height. Pins along the
 * shoe would not do: a dovetail goes in from above only.
 */
export interface Joint {
  readonly waist: Section;
  readonly key: Key;
  /** What each part keeps, in plan. */
  readonly heel: Outline;
  readonly fore: Outline;
  /** Bores of the pins; none where the sole is too thin for them. */
  readonly bores: readonly Bar[];
  /** The thickest pin there is room for. */
  readonly pinMost: Mm;
}

/** A dovetail in plan: half its width at the joint and at its end, its length, and its middle across the shoe. */
export interface Key { readonly neck: Mm; readonly head: Mm; readonly long: Mm; readonly middle: Mm }

/** Shares of the width of the waist: a neck that does not tear, cheeks that do not spread. */
const NECK = 0.15, HEAD = 0.22, LONG = 0.25;
/** Least left round a pin, above and below it, and between the two pins' ends. */
const WALL: Mm = 3;

export function jointOf(body: Body, order: PrintOrder): Joint {
  const faces = facesInPlan(body), waist = waistOf(body, faces), key = keyAt(waist, order);
  const hole = order.pin + 2 * order.clearance, x = waist.x + key.long / 2, room = roomAcross(body, faces, x - hole / 2, x + hole / 2);
  const pinMost = room.high - room.low - 2 * WALL - 2 * order.clearance;
  const bores = pinMost >= order.pin ? boresAt(x, (room.low + room.high) / 2, hole, key, sectionAt(faces, x)) : [];
  return { waist, key, heel: heelOutline(waist.x, key), fore: foreOutline(waist.x, key, order.clearance), bores, pinMost };
}

function keyAt({ inner, outer }: Section, { pin, clearance }: PrintOrder): Key {
  const wide = outer - inner;
  return { neck: wide * NECK, head: wide * HEAD, long: Math.max(wide * LONG, pin + 2 * clearance + 2 * WALL), middle: (inner + outer) / 2 };
}

/** Beyond any sole. */
const FAR: Mm = 1000;

function heelOutline(x: Mm, { neck, head, long, middle }: Key): Outline {
  return [[-FAR, -FAR], [x, -FAR], [x, middle - neck], [x + long, middle - head], [x + long, middle + head], [x, middle + neck], [x, FAR], [-FAR, FAR]];
}

/** The slot is wider all round by the clearance, measured square to the sides of the key. */
function foreOutline(x: Mm, { neck, head, long, middle }: Key, clearance: Mm): Outline {
  const slope = (head - neck) / long, aside = clearance / cos(atan(slope)), end = long + clearance;
  const near = neck + aside, far = neck + slope * end + aside;
  return [[x, -FAR], [FAR, -FAR], [FAR, FAR], [x, FAR], [x, middle + near], [x + end, middle + far], [x + end, middle - far], [x, middle - near]];
}

/** From beyond each wall to a little short of the middle of the key. */
function boresAt(x: Mm, z: Mm, diameter: Mm, { middle }: Key, { inner, outer }: Section): Bar[] {
  const start = inner - OUT, inside = middle - WALL / 2 - start;
  return [
    { from: [x, start, z], axis: 'across', length: inside, diameter },
    { from: [x, middle + WALL / 2, z], axis: 'across', length: outer + OUT - (middle + WALL / 2), diameter },
  ];
}
/** Walls lean; bores begin this far outside the narrower face. */
const OUT: Mm = 40;

/** How deep each pin goes, from the narrower face inwards. */
export const pinDepth = ({ waist: { inner, outer } }: Joint): Mm => (outer - inner) / 2 - WALL / 2;

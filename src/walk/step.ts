import { between, type Point } from '../geometry/point.ts';
import { smoothStep } from '../geometry/solve.ts';
import type { Side } from '../fitting/words.ts';
import type { Mm } from '../geometry/units.ts';
import { frameAt, laid, placeAt, type Frame, type Place, type WalkOn } from './frame.ts';
import { STANCE_PART } from './phases.ts';
import type { ShoeWalk, Walking } from './walking.ts';

/** One shoe at one moment of walking, forward counted from where the first left stance begins under the hip. */
export interface Stride {
  readonly side: Side;
  /** On the floor as a frame tells, or on its way forward through the air. */
  readonly onFloor: boolean;
  readonly place: Place;
  readonly pivot: Point;
  readonly hip: Point;
  /** Of this moment of stance, moved to where it is walked; undefined in the air. */
  readonly frame: Frame | undefined;
}

/** How high a shoe is carried through the air at most, above the floor. Common practice of drawings, no measure. */
const LIFT: Mm = 40;

/**
 * The pair at one moment, left before right, half a cycle apart.
 * @param cycle how many cycles of two steps have been walked, 0 at a left heel contact; any number from 0 up
 * @param which the shoes themselves, or ordinary ones in their place
 */
export const stridesAt = (walking: Walking, cycle: number, which: 'own' | 'ordinary' = 'own'): readonly Stride[] =>
  walking.shoes.map((shoe) => strideOf(shoe, shoe[which], walking.stride, cycle - (shoe.side === 'left' ? 0 : 0.5)));

function strideOf({ side }: ShoeWalk, on: WalkOn, stride: Mm, since: number): Stride {
  const steps = Math.floor(since), part = since - steps, { first, last } = endsOf(on);
  const ahead = (step: number): Mm => (step + (side === 'left' ? 0 : 0.5)) * stride - first.hip[0];
  if (part <= STANCE_PART) {
    const frame = moved(frameAt(on, part / STANCE_PART), ahead(steps));
    return { side, onFloor: true, place: frame.place, pivot: frame.pivot, hip: frame.hip, frame };
  }
  const left = moved(last, ahead(steps)), lands = moved(first, ahead(steps + 1));
  return { side, onFloor: false, ...inTheAir(on, left, lands, (part - STANCE_PART) / (1 - STANCE_PART)), frame: undefined };
}

/** Where stance begins and ends, asked for at every moment. */
interface Ends { readonly first: Frame; readonly last: Frame }
const ends = new WeakMap<WalkOn, Ends>();
function endsOf(on: WalkOn): Ends {
  const known = ends.get(on) ?? { first: frameAt(on, 0), last: frameAt(on, 1) };
  ends.set(on, known);
  return known;
}

/** The pivot goes forward gently, the shoe turns from how it left to how it lands, its lowest point in an arc above the floor. */
function inTheAir({ body, carried }: WalkOn, left: Frame, lands: Frame, part: number): Pick<Stride, 'place' | 'pivot' | 'hip'> {
  const gently = smoothStep(part), turned = placeAt(body, left.roll + (lands.roll - left.roll) * gently), [x] = laid(turned, carried.pivot);
  const forward = left.pivot[0] + (lands.pivot[0] - left.pivot[0]) * gently, place = { turn: turned.turn, x: turned.x + forward - x, z: turned.z + 4 * LIFT * part * (1 - part) };
  return { place, pivot: laid(place, carried.pivot), hip: between(left.hip, lands.hip, part) };
}

const forward = ([x, z]: Point, by: Mm): Point => [x + by, z];
const moved = (frame: Frame, by: Mm): Frame => ({
  ...frame, place: { ...frame.place, x: frame.place.x + by }, pivot: forward(frame.pivot, by), hip: forward(frame.hip, by), contact: forward(frame.contact, by),
});

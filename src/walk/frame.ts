import type { Path, PathPiece } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import { clamp } from '../geometry/solve.ts';
import { cos, sin } from '../geometry/trig.ts';
import { degrees, type Mm, type Rad } from '../geometry/units.ts';
import type { Carried } from '../roll/carried.ts';
import { anglesCovered, contactAt, floorAt, stretchAt, turnsBetween, type RollBody } from '../roll/rollBody.ts';
import { phaseAt, type Phase } from './phases.ts';
import { valueAt, type StanceCurve } from './stanceCurve.ts';

/** One leg walking on one shoe: everything a frame is worked out from. Points are those of the shoe at rest. */
export interface WalkOn {
  readonly body: RollBody;
  readonly carried: Carried;
  /** Ankle pivot to hip. */
  readonly leg: Mm;
  readonly curve: StanceCurve;
  /** Roll angle at each percent of stance. */
  readonly rolls: readonly Rad[];
  /** Rolled less than this to either side of rest the shoe counts as flat on the floor; nothing for a sole that rolls. */
  readonly flatWithin: Rad;
}

/** So a flat foot is told from one that turns. Source: foot flat is a pitch within 2° in published gait data (Pinzone and others 2014). */
export const FLAT_WITHIN: Rad = degrees(2);

/**
 * Where a shoe is laid: turned by `turn`, toe down, then moved. A point [x, z] of the shoe at rest comes to
 * [x cos + z sin + place x, z cos − x sin + place z].
 */
export interface Place { readonly turn: Rad; readonly x: Mm; readonly z: Mm }

/** What of the shoe is on the floor: its own underside, or the corner at one of its ends. */
export type TouchesWith = 'sole' | 'rear corner' | 'front corner';

/** One moment of stance. Points [forward on the floor, height], forward from the same zero as the shoe at rest. */
export interface Frame {
  /** Share of stance, 0 at heel contact to 1 at toe-off. */
  readonly share: number;
  readonly phase: Phase;
  readonly roll: Rad;
  readonly place: Place;
  /** Ends of the leg line, the knee straight. */
  readonly pivot: Point;
  readonly hip: Point;
  readonly contact: Point;
  readonly touches: TouchesWith;
  /** The floor's upright push, in body weights. */
  readonly push: number;
}

/** Where the shoe lies when it has rolled there without sliding. */
export const placeAt = (body: RollBody, turn: Rad): Place => placeOver(body, turn, floorAt(body, turn));

function placeOver(body: RollBody, turn: Rad, forward: Mm): Place {
  const [x, z] = contactAt(body, turn), c = cos(turn), s = sin(turn);
  return { turn, x: forward - x * c - z * s, z: x * s - z * c };
}

/** Where a point of the shoe at rest comes to lie. */
export function laid({ turn, x, z }: Place, [px, pz]: Point): Point {
  const c = cos(turn), s = sin(turn);
  return [px * c + pz * s + x, pz * c - px * s + z];
}

/** The same of a whole outline. */
export const laidPath = (place: Place, path: Path): Path => path.map((piece): PathPiece => (piece.kind === 'line'
  ? { kind: 'line', from: laid(place, piece.from), to: laid(place, piece.to) }
  : { ...piece, centre: laid(place, piece.centre), start: piece.start - place.turn }));

/** The roll at a share of stance; further than upright on its end no shoe is turned. */
export function rollAt({ rolls, body }: WalkOn, share: number): Rad {
  const { from, to } = turnsBetween(body);
  return clamp(valueAt(rolls, share), from, to);
}

/** The rolls at which the shoe is on its sole. */
export function soleBetween({ body, flatWithin }: WalkOn): { readonly from: Rad; readonly to: Rad } {
  const { from, to } = anglesCovered(body);
  return { from: Math.min(from, -flatWithin), to: Math.max(to, flatWithin) };
}

/** One moment of stance. @param share 0 at heel contact to 1 at toe-off, held to that */
export function frameAt(on: WalkOn, share: number): Frame {
  const { body, carried, leg, curve } = on, roll = rollAt(on, share), floor = floorAt(body, roll), place = placeOver(body, roll, floor), pivot = laid(place, carried.pivot);
  const line = valueAt(curve.legLine, share), push = valueAt(curve.push, share), { from, to } = soleBetween(on), forward = pushedAt(on, roll, floor);
  return {
    share: clamp(share, 0, 1), phase: phaseAt(share), roll, place, pivot, hip: [pivot[0] + leg * sin(line), pivot[1] + leg * cos(line)],
    contact: [forward, 0], touches: roll < from ? 'rear corner' : roll > to ? 'front corner' : 'sole', push,
  };
}

/** Flat on the floor, a shoe is pushed under its heel first and under its ball last. */
function pushedAt({ body, flatWithin }: WalkOn, roll: Rad, floor: Mm): Mm {
  if (!(Math.abs(roll) < flatWithin)) return floor;
  const [rear, front] = stretchAt(body, 0);
  return rear[0] + ((front[0] - rear[0]) * (roll + flatWithin)) / (2 * flatWithin);
}

/** Every percent of stance. */
export const PERCENT_SHARES: readonly number[] = Array.from({ length: 101 }, (_, i) => i / 100);

/** The way of ankle pivot and hip over the whole stance, a point for each percent. */
export interface Traces { readonly pivot: readonly Point[]; readonly hip: readonly Point[] }

export function tracesOf(on: WalkOn): Traces {
  const frames = PERCENT_SHARES.map((share) => frameAt(on, share));
  return { pivot: frames.map(({ pivot }) => pivot), hip: frames.map(({ hip }) => hip) };
}

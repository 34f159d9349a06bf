import { clamp } from '../geometry/solve.ts';
import type { Point } from '../geometry/point.ts';
import { GRAVITY, type Mm, type Rad } from '../geometry/units.ts';
import { travelled } from '../roll/rollBody.ts';
import { frameAt, laid, PERCENT_SHARES, rollAt, soleBetween, type Frame, type WalkOn } from './frame.ts';
import { MID_STANCE, OTHER_LANDS } from './phases.ts';

/** A value with the share of stance at which it is taken. */
export interface AtShare { readonly value: number; readonly share: number }

/** A stretch of stance in which the shoe stands on a corner, and how far it turns past what its sole covers. */
export interface OnCorner { readonly corner: 'rear corner' | 'front corner'; readonly from: number; readonly to: number; readonly past: Rad }

/** Heights of a point above the floor, mm. */
export interface StepHeights { readonly contact: Mm; readonly lowest: AtShare; readonly highest: AtShare; readonly end: Mm }

/** Moments of the floor's upright push about a point of the shoe, N·m for each kg of body mass: positive where it pushes ahead of the point. */
export interface Moments { readonly most: AtShare; readonly least: AtShare }

/** A step in numbers. */
export interface StepFigures {
  /** Roll angles at both ends of stance. */
  readonly strike: Rad;
  readonly toeOff: Rad;
  /** Share of stance for which the sole's own underside is on the floor. */
  readonly carried: number;
  readonly corners: readonly OnCorner[];
  readonly pivot: StepHeights;
  /**
   * Until the other foot lands, which then carries the body. Until then a straight knee puts the hip within 2 % of where
   * the measured walkers have it; later theirs bend.
   */
  readonly hip: StepHeights;
  /** How far the pivot sinks from heel contact to its lowest before mid-stance. */
  readonly pivotDrop: Mm;
  /** Floor rolled over on the sole itself, and how far the hip comes forward over the whole stance. */
  readonly rolled: Mm;
  readonly hipForward: Mm;
  readonly aboutPivot: Moments;
  readonly aboutBall: Moments;
}

export function stepFigures(on: WalkOn): StepFigures {
  const frames = PERCENT_SHARES.map((share) => frameAt(on, share)), first = frames[0]!, last = frames.at(-1)!, { from, to } = soleBetween(on);
  const pivot = heightsOf(frames, (frame) => frame.pivot), hip = heightsOf(frames.filter(({ share }) => share <= OTHER_LANDS), (frame) => frame.hip);
  const sunk = Math.min(...frames.filter(({ share }) => share <= MID_STANCE).map((frame) => frame.pivot[1]));
  return {
    strike: first.roll, toeOff: last.roll, ...cornersIn(on), pivot, hip, pivotDrop: pivot.contact - sunk,
    rolled: travelled(on.body, clamp(last.roll, from, to)) - travelled(on.body, clamp(first.roll, from, to)), hipForward: last.hip[0] - first.hip[0],
    aboutPivot: momentsAbout(on.carried.pivot, frames), aboutBall: momentsAbout(on.carried.ball, frames),
  };
}

const extreme = (frames: readonly Frame[], of: (frame: Frame) => number, sign: 1 | -1): AtShare =>
  frames.map((frame): AtShare => ({ value: of(frame), share: frame.share })).reduce((best, one) => (sign * one.value > sign * best.value ? one : best));

function heightsOf(frames: readonly Frame[], of: (frame: Frame) => Point): StepHeights {
  const up = (frame: Frame): Mm => of(frame)[1];
  return { contact: up(frames[0]!), end: up(frames.at(-1)!), lowest: extreme(frames, up, -1), highest: extreme(frames, up, 1) };
}

/** The moment of the floor's upright push about a point of the shoe, N·m/kg. */
export const momentAbout = (point: Point, { contact, place, push }: Frame): number => ((contact[0] - laid(place, point)[0]) / 1000) * push * GRAVITY;

function momentsAbout(point: Point, frames: readonly Frame[]): Moments {
  const of = (frame: Frame): number => momentAbout(point, frame);
  return { most: extreme(frames, of, 1), least: extreme(frames, of, -1) };
}

/** Between two percents the roll runs straight, so the share at which it passes an angle is exact. */
function cornersIn(on: WalkOn): Pick<StepFigures, 'carried' | 'corners'> {
  const { from, to } = soleBetween(on);
  const corners = [...stretches(on, (roll) => from - roll, 'rear corner'), ...stretches(on, (roll) => roll - to, 'front corner')].sort((a, b) => a.from - b.from);
  return { carried: 1 - corners.reduce((sum, one) => sum + one.to - one.from, 0), corners };
}

/** Rolled no further past the sole than this it is still on it. */
const ARITHMETIC: Rad = 1e-12;

/** Stretches of stance for which a roll lies past a limit. */
function stretches(on: WalkOn, past: (roll: Rad) => Rad, corner: OnCorner['corner']): OnCorner[] {
  const found: OnCorner[] = [], beyond = PERCENT_SHARES.map((share) => past(rollAt(on, share)) - ARITHMETIC);
  for (let i = 0; i + 1 < beyond.length; i++) {
    const a = beyond[i]!, b = beyond[i + 1]!, crosses = (i + a / (a - b)) / 100, open = found.at(-1);
    if (a <= 0 && b <= 0) continue;
    const piece = { corner, from: a > 0 ? i / 100 : crosses, to: b > 0 ? (i + 1) / 100 : crosses, past: Math.max(a, b) };
    if (a > 0 && open) found[found.length - 1] = { corner, from: open.from, to: piece.to, past: Math.max(open.past, piece.past) };
    else found.push(piece);
  }
  return found;
}

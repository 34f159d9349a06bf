import { featherLine, edgeLine } from '../last/outline.ts';
import { pitchSpan, type Last } from '../last/last.ts';
import type { UpperFace } from '../last/upperFace.ts';
import type { Mm } from '../geometry/units.ts';
import type { SheetMatch } from '../fitting/fitting.ts';
import type { GroundFace, RollArc, RollStraight } from '../profile/groundFace.ts';
import { rollLine } from '../profile/rollLine.ts';
import type { SoleShape } from '../solid/soleShape.ts';

/** How much a shoe is to be raised, mm; the same tilt carries on from heel to tip. */
export interface Raise { readonly seat: Mm; readonly ball: Mm }

/** Below this a raise is not worth a layer: the pair counts as level. Common practice, pair tolerance ±1 mm. */
export const LEVEL_WITHIN: Mm = 1;
export const isLevel = ({ seat, ball }: Raise): boolean => Math.abs(seat) <= LEVEL_WITHIN && Math.abs(ball) <= LEVEL_WITHIN;

/**
 * A plain full-length raise for the shoe as it stands now: its upper face is the shoe's own underside (level from heel
 * to ball, its toe spring ahead of it) tilted as the two heights ask; its ground face is level to the ball and turns up
 * to the tip in one mild arc, so that a foot that bends still can.
 */
export function raiseShape(last: Last, order: SheetMatch, raise: Raise): SoleShape {
  const upper = undersideOf(last, raise), feather = featherLine(last);
  const tip = upper(last.length, 0) + raise.ball - order.tip;
  return {
    last, upper, build: raise.ball, face: mildRoll(last, tip), line: rollLine(last.tread, Math.PI / 2),
    feather, edge: edgeLine(feather, last, order.edgeBeyond), taper: order.taper,
    stiffener: 0, outsole: order.outsole.thickness, stations: [],
  };
}

/** The present shoe's underside above its own tread, tilted by the raise. */
function undersideOf(last: Last, raise: Raise): UpperFace {
  const slope = (raise.seat - raise.ball) / pitchSpan(last), fore = last.length - last.tread;
  return (x) => {
    const t = (x - last.tread) / fore, spring = t <= 0 ? 0 : last.toeSpring * (t <= 1 ? t * t : 2 * t - 1);
    return slope * (last.tread - x) + spring;
  };
}

/** How far the level part is drawn behind the heel; it runs on. */
const BEHIND: Mm = 100;

function mildRoll(last: Last, tipHeight: Mm): GroundFace {
  const level = (to: Mm): RollStraight => ({ kind: 'straight', name: 'level tread', from: [-BEHIND, 0], to: [to, 0] });
  if (!(tipHeight > 0)) return { pieces: [level(last.length)] };
  const run = last.length - last.tread, radius = (run * run + tipHeight * tipHeight) / (2 * tipHeight);
  const arc: RollArc = { kind: 'arc', name: 'toe arc', centre: [last.tread, radius], radius, from: 0, to: Math.asin(run / radius) };
  return { pieces: [level(last.tread), arc] };
}

import { edgeLine, featherLine } from '../last/outline.ts';
import { pitchSpan, type Last } from '../last/last.ts';
import type { UpperFace } from '../last/upperFace.ts';
import { degrees, type Mm, type Rad } from '../geometry/units.ts';
import { lately } from '../geometry/lately.ts';
import { remembering } from '../geometry/solve.ts';
import { atan, tan } from '../geometry/trig.ts';
import type { SheetMatch } from '../fitting/fitting.ts';
import { STEEPEST } from '../profile/arcs.ts';
import type { GroundFace, RollArc, RollStraight } from '../profile/groundFace.ts';
import { Infeasible, orInfeasible } from '../profile/infeasible.ts';
import { rollLine } from '../profile/rollLine.ts';
import { FOAM_WANTED, LEAST_FOAM } from '../profile/thinnest.ts';
import { foamLeft, planOfShape } from '../solid/foamLeft.ts';
import { bodiesOf, type Bodies } from '../solid/solids.ts';
import type { SoleShape } from '../solid/soleShape.ts';

/** How much a shoe is to be raised, mm; the same tilt carries on from heel to tip. */
export interface Raise { readonly seat: Mm; readonly ball: Mm }

/** Below this a raise is not worth a layer: the pair counts as level. Common practice, pair tolerance ±1 mm. */
export const LEVEL_WITHIN: Mm = 1;
export const isLevel = ({ seat, ball }: Raise): boolean => Math.abs(seat) <= LEVEL_WITHIN && Math.abs(ball) <= LEVEL_WITHIN;

/** A raise that can be made. `tip` is its thickness at the tip: asked for, chosen, or all there is where the raise is level throughout. */
export interface RaiseMade { readonly tip: Mm; readonly shape: SoleShape; readonly bodies: Bodies }

/** Why a shoe cannot be raised: there is `missing` mm too little to put a raise in, or the tip asked for does not do: too thin, or (then `text` says so) its walls would meet, as all would in the last case. */
export type RaiseTrouble =
  | { readonly why: 'walls meet'; readonly text: string }
  | { readonly why: 'too little'; readonly missing: Mm }
  | { readonly why: 'tip does not do'; readonly tip: Mm; readonly works: Mm; readonly text?: string };

/** What becomes of a shoe that is to be raised. */
type Raising = { readonly kind: 'level' } | { readonly kind: 'made'; readonly made: RaiseMade } | { readonly kind: 'refused'; readonly trouble: RaiseTrouble };

/** Thickness left at the tip where the sheet does not say and the slope allows; common practice of the trade. */
const USUAL_TIP: Mm = 5;
/** A tip left open is as thick as keeps the turned-up toe no steeper than this: one walks on it with a foot that bends. */
export const MILD_TIP: Rad = degrees(25);
const STEP: Mm = 0.1;

/** Where there is not the foam that is wanted, however level the toe, no toe spring is given up for less than this of it. */
const SPRING_OVER_FOAM: Mm = 0.25;

/** Puts a raise under a shoe as it stands now, or says why there can be none. */
export const raiseUnder: (last: Last, order: SheetMatch, raise: Raise) => Raising = lately(2, makeRaise);

function makeRaise(last: Last, order: SheetMatch, raise: Raise): Raising {
  if (isLevel(raise)) return { kind: 'level' };
  const trial = trialsOf(last, order, raise), most = trial.foam(trial.levelTip);
  if (most < LEAST_FOAM) return { kind: 'refused', trouble: { why: 'too little', missing: LEAST_FOAM - most } };
  const asked = order.tip === undefined ? undefined : trial.made(order.tip);
  if (asked && !(asked instanceof Infeasible)) return { kind: 'made', made: asked };
  const found = chosenRaise(trial, last, most >= FOAM_WANTED ? FOAM_WANTED : Math.max(LEAST_FOAM, most - SPRING_OVER_FOAM));
  if (found instanceof Infeasible) return { kind: 'refused', trouble: { why: 'walls meet', text: found.message } };
  if (order.tip === undefined) return { kind: 'made', made: found };
  return { kind: 'refused', trouble: { why: 'tip does not do', tip: order.tip, works: found.tip, ...(asked ? { text: asked.message } : {}) } };
}

/** What comes of a raise with one tip or another. */
interface Trials {
  /** Tip of the raise that is level throughout: the thickest there is. */
  readonly levelTip: Mm;
  /** Foam left where it is thinnest; it grows with the tip. */
  readonly foam: (tip: Mm) => Mm;
  /** The raise itself; undefined where it keeps too little foam, and why where its walls do not close. */
  readonly made: (tip: Mm) => RaiseMade | Infeasible | undefined;
}

function trialsOf(last: Last, order: SheetMatch, raise: Raise): Trials {
  const levelTip = undersideOf(last, raise)(last.length, 0) + raise.ball, plan = planOfShape(raiseShape(last, order, raise, levelTip));
  const foam = remembering((tip: Mm): Mm => {
    const shape = orInfeasible(() => raiseShape(last, order, raise, tip));
    return shape instanceof Infeasible ? -Infinity : foamLeft(shape, plan).thickness;
  });
  const made = remembering((tip: Mm) => (foam(tip) >= LEAST_FOAM ? orInfeasible(() => withTip(raiseShape(last, order, raise, tip), tip)) : undefined));
  return { levelTip, foam, made };
}

/**
 * With a tip left open: the thinnest, in tenths, that is mild enough and keeps the foam that is wanted. Where its walls
 * would meet, which a taller tip does first, the next thinner one, in millimetres, whose walls do not; why not, where
 * there is none.
 */
function chosenRaise({ levelTip, foam, made }: Trials, last: Last, wanted: Mm): RaiseMade | Infeasible {
  const mild = levelTip - (last.length - last.tread) * tan(MILD_TIP / 2);
  const tip = leastTip(Math.max(USUAL_TIP, mild), levelTip, (one) => foam(one) >= wanted), first = made(tip);
  for (let thinner = tip; foam(thinner) >= LEAST_FOAM; thinner = inMm(Math.ceil(thinner / STEP) - 1 / STEP)) {
    const one = made(thinner);
    if (one && !(one instanceof Infeasible)) return one;
  }
  return first instanceof Infeasible ? first : new Infeasible('WALLS_MEET', 'the walls lean so far that the ground line crosses itself', ['taper']);
}

const inMm = (steps: number): Mm => Number((steps * STEP).toFixed(1));

/** The thinnest tip of at least so much, in tenths, that will do; the level one where no thinner does. */
function leastTip(atLeast: Mm, levelTip: Mm, works: (tip: Mm) => boolean): Mm {
  const least = Math.ceil(atLeast / STEP - 1e-9), most = Math.floor(levelTip / STEP);
  if (least > most || !works(inMm(most))) return levelTip;
  return inMm(least + firstStep(most - least, (k) => works(inMm(least + k))));
}

/** The first of the steps 0 to `most` that works, where all after it do and the last one does. Most often the very first will do. */
function firstStep(most: number, works: (step: number) => boolean): number {
  if (works(0)) return 0;
  let bad = 0, good = most;
  while (good - bad > 1) { const middle = (good + bad) >> 1; if (works(middle)) good = middle; else bad = middle; }
  return good;
}

const upperTip = ({ upper, build, last }: SoleShape): Mm => upper(last.length, 0) + build;

/** @throws Infeasible where its walls would meet above the ground */
const withTip = (shape: SoleShape, tip: Mm): RaiseMade => ({ tip: Math.min(tip, upperTip(shape)), shape, bodies: bodiesOf(shape) });

/**
 * A plain full-length raise for the shoe as it stands now: its upper face is the shoe's own underside (level from heel
 * to ball, its toe spring ahead of it) tilted as the two heights ask; its ground face is level to the ball and turns up
 * to the tip in one mild arc, so that a foot that bends still can.
 * @param tip thickness left at the tip, mm
 * @throws Infeasible where that would have the toe turn up to the upright
 */
export function raiseShape(last: Last, order: SheetMatch, raise: Raise, tip: Mm): SoleShape {
  const upper = undersideOf(last, raise), feather = featherLine(last);
  return {
    last, upper, build: raise.ball, face: mildRoll(last, upper(last.length, 0) + raise.ball - tip), line: rollLine(last.tread, Math.PI / 2),
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
  const run = last.length - last.tread, radius = (run * run + tipHeight * tipHeight) / (2 * tipHeight), to = 2 * atan(tipHeight / run);
  if (to > STEEPEST) throw new Infeasible('TOE_ARC_TOO_SHORT', 'the toe of the raise would turn up to the upright before its tip', []);
  const arc: RollArc = { kind: 'arc', name: 'toe arc', centre: [last.tread, radius], radius, from: 0, to };
  return { pieces: [level(last.tread), arc] };
}

import type { Minima } from '../fitting/fitting.ts';
import { rangeOf, type RangeName } from '../fitting/ranges.ts';
import type { Last } from '../last/last.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { footNumbers } from '../profile/stance.ts';
import { Infeasible, orInfeasible } from '../profile/infeasible.ts';
import { solveRocker, type RockerCase } from '../profile/rocker.ts';
import { foamLeft } from '../solid/foamLeft.ts';
import { soleFrom } from '../solid/fromRocker.ts';
import { rollX } from '../profile/rollLine.ts';
import { FOAM_WANTED, LEAST_FOAM, type Thinnest, type Zone } from '../profile/thinnest.ts';
import { apexBehindJoint } from '../prescription/order.ts';
import type { Point } from '../geometry/point.ts';
import { degrees, type Mm } from '../geometry/units.ts';
import type { Finding } from './finding.ts';
import { isBuiltUpToOther } from './restsOn.ts';
import { capital, fromHeel, mm, sentences } from './say.ts';
import { under, type Pace, type Seen } from './seen.ts';
import { PRACTICE } from './sources.ts';

/** The solver keeps the minima to this; anything more is a fault of the program. */
const SOLVED_TO: Mm = 1e-6;

/** Guards the promise of the solver: nowhere thinner than asked. */
export function thinSole({ shoe: { side, rocker: { thinnest } } }: Seen<RockerShoe>): Finding[] {
  const { at: [x], thickness, minimum, spare, zone } = thinnest;
  if (!under(spare, -SOLVED_TO)) return [];
  return [{
    code: 'THIN_SOLE', severity: 'stop', side, measured: thickness, limit: minimum, unit: 'mm', where: zone, at: x,
    text: `The sole is ${mm(thickness)} thick ${fromHeel(x)}; at least ${mm(minimum)} were asked there. Do not cut: report this sheet.`, basis: PRACTICE,
  }];
}

/** Foam may be thinner than one wants. */
export function thinFoam({ shoe, number, pace }: Seen<RockerShoe>): Finding[] {
  const { side, last } = shoe, left = number('foamLeft');
  if (!under(left, FOAM_WANTED)) return [];
  const { at } = foamLeft(shoe.shape), where = placeWords(last, at[0]);
  return [{
    code: 'THIN_FOAM', severity: 'warn', side, measured: left, limit: FOAM_WANTED, unit: 'mm', where, at: at[0],
    text: `Only ${mm(left)} of foam stay ${where}; less than ${mm(FOAM_WANTED)} is hard to cut and to glue. Ask for more thickness there (${moreAsked(shoe, minimaAt(shoe, at), FOAM_WANTED - left, pace)}), or take a thinner outsole (order.outsole.thickness) or stiffener (order.stiffener).`,
    basis: PRACTICE,
  }];
}

/** The least thicknesses that hold at a place: ahead of the tread it falls evenly from the tread's to the tip's. */
function minimaAt({ last, rocker: { strikePoint, line } }: RockerShoe, at: Point): readonly (keyof Minima)[] {
  const [x] = at;
  if (x > last.length - 1) return ['tip'];
  if (x > last.tread) return ['tread', 'tip'];
  return [rollX(line, at) < strikePoint[0] ? 'edge' : x <= last.seatLength ? 'seat' : 'waist'];
}

/** Thickness is asked for in steps of this. */
const ASKED_STEP: Mm = 0.5;
/** So many steps are tried. */
const TRIES = 16;
const raisedBy = (minima: Minima, names: readonly (keyof Minima)[], more: Mm): Partial<Minima> =>
  Object.fromEntries(names.map((name) => [name, Math.ceil((minima[name] + more) / ASKED_STEP) * ASKED_STEP]));

/** The fields to raise, with the values now and those that leave foam enough: put in and solved. */
function moreAsked(shoe: RockerShoe, names: readonly (keyof Minima)[], short: Mm, pace: Pace): string {
  const given = caseOf(shoe), { minima } = given.order, least = Math.ceil(short / ASKED_STEP);
  // Under a steep face the outsole takes more upright than it is thick, so that what is missing need not be enough.
  const tried = pace === 'careful' ? Array.from({ length: TRIES }, (_, i) => raisedBy(minima, names, (least + i) * ASKED_STEP)) : [];
  const works = tried.find((raised) => leavesEnough({ ...given, order: { ...given.order, minima: { ...minima, ...raised } } }));
  return names.map((name) => `order.minima.${name}, now ${mm(minima[name])}${works ? `; ${mm(works[name]!)} leaves enough` : ''}`).join(' and ');
}

function leavesEnough(given: RockerCase): boolean {
  const sole = orInfeasible(() => soleFrom(given));
  return !(sole instanceof Infeasible) && !under(foamLeft(sole.shape).thickness, FOAM_WANTED);
}

/** Names what keeps the sole from being lower, and what a change would save: each was put in and solved again. */
export function governs(seen: Seen<RockerShoe>): Finding[] {
  const { shoe, pace } = seen, { rocker: { governs: cause } } = shoe;
  if (typeof cause === 'string') return [builtUp(seen)];
  const { zone, thickness, minimum, by, at: [x] } = cause;
  const saved = (pace === 'careful' ? trialsFor(shoe, cause) : []).map(({ words, trial }) => ({ words, saving: shoe.rocker.build - buildOf(trial) })).filter(({ saving }) => saving >= WORTH_SAYING);
  const [first, ...others] = saved.map(({ words, saving }, i) => `${words} takes ${mm(saving)} off${i === 0 ? ' the whole sole' : ''}`);
  const hint = first === undefined ? '' : [first, ...others].join('; ');
  return [{
    code: 'GOVERNS', severity: 'note', side: shoe.side, measured: thickness, limit: minimum, unit: 'mm', where: zone, at: x,
    text: sentences(`The ${NAMES[zone]} sets the height: ${mm(thickness)} left ${placeWords(shoe.last, x)}${asideWords(shoe.last, cause.at)}`, fallingWords(shoe, cause), by === 'foam that must stay' ? LAYERS : '', capital(hint)),
    basis: PRACTICE,
  }];
}

const NAMES: Record<Zone, string> = { 'edge behind the strike point': 'back edge', seat: 'seat', waist: 'waist', tread: 'tread', tip: 'tip' };
const LAYERS = `Stiffener, outsole and ${mm(LEAST_FOAM)} of foam take more there than was asked`;
const WORTH_SAYING: Mm = 0.05;
const APEX_FORWARD: Mm = 6, MORE_SPRING: Mm = 3, LESS_ASKED: Mm = 2, LESS_OUTSOLE: Mm = 1, LESS_STRIKE = 5;

/** Off the long axis, where the table of stations does not look; at the toe it looks where the tip is. */
const asideWords = ({ length }: Last, [x, y]: Point): string => (x > length - 1 || Math.abs(y) < ON_AXIS ? '' : `, ${mm(Math.abs(y), 0)} to the ${y > 0 ? 'outer' : 'inner'} side of the long axis`);
const ON_AXIS: Mm = 1;

/** Ahead of the tread the least thickness is neither the tread's nor the tip's. */
const fallingWords = ({ last, order: { minima } }: RockerShoe, { at: [x], zone, by, minimum }: Thinnest): string =>
  zone === 'tip' && by === 'thickness asked' && x > last.tread && Math.abs(minimum - minima.tip) > SHOWN ? `${mm(minimum)} are asked there, for it falls evenly from ${mm(minima.tread)} at the tread to ${mm(minima.tip)} at the tip (order.minima)` : '';
/** What would not be seen in tenths. */
const SHOWN: Mm = 0.049;

export const placeWords = ({ length }: Last, x: Mm): string => (x > length - 1 ? 'at the toe' : fromHeel(x));

interface Change { readonly words: string; readonly trial: RockerCase }

/** What a shoe was solved from, for advice and trials that solve it once more with something changed. */
export const caseOf = ({ fitting, last, order }: RockerShoe): RockerCase => ({ foot: footNumbers(fitting.foot!), last, order });

/** A stiff toe joint keeps the apex behind it. */
const roomAhead = ({ fitting, last, order }: RockerShoe): Mm =>
  fitting.foot?.joint === 'toe joint' ? Math.floor(apexBehindJoint(last, order.crestAngle) - order.apexX) : Infinity;

/** At most two changes that can lower a sole held up at a place. */
function trialsFor(shoe: RockerShoe, { zone, minimum, by }: Thinnest): Change[] {
  const given = caseOf(shoe), { last, order } = given;
  const change = (words: string, changed: Partial<RockerCase['order']>): Change => ({ words, trial: { ...given, order: { ...order, ...changed } } });
  if (zone === 'tip' || zone === 'tread') {
    const spring = { words: `${MORE_SPRING} mm more spring in the last (last.toeSpring)`, trial: { ...given, last: { ...last, toeSpring: last.toeSpring + MORE_SPRING } } };
    const forward = Math.min(APEX_FORWARD, roomAhead(shoe));
    const later = forward >= 1 && (100 * (order.apexX + forward)) / last.length <= rangeOf('order.apex').limits[1] ? [change(`the apex ${mm(forward, 0)} forward (order.apex)`, { apexX: order.apexX + forward })] : [];
    const room = last.toeSpring + MORE_SPRING <= rangeOf('last.toeSpring').limits[1];
    return [...later, ...(last.heights || !room ? [] : [spring])];
  }
  const name = zone === 'edge behind the strike point' ? 'edge' : zone, { thickness } = order.outsole;
  const softer = name === 'edge' && order.strike > degrees(2 * LESS_STRIKE)
    ? [change(`${LESS_STRIKE}° less at heel strike (foot.strikeAngle)`, { strike: order.strike - degrees(LESS_STRIKE) })] : [];
  const allowed = (range: RangeName, value: Mm): boolean => value >= rangeOf(range).limits[0];
  if (by === 'thickness asked') return [...softer, ...(allowed(`order.minima.${name}`, minimum - LESS_ASKED) ? [change(`${LESS_ASKED} mm less asked for there (order.minima.${name})`, { minima: { ...order.minima, [name]: minimum - LESS_ASKED } })] : [])];
  return [...softer, ...(allowed('order.outsole.thickness', thickness - LESS_OUTSOLE) ? [change(`an outsole ${LESS_OUTSOLE} mm thinner (order.outsole.thickness)`, { outsole: { ...order.outsole, thickness: thickness - LESS_OUTSOLE } })] : [])];
}

/** NaN where the change leaves no shape. */
function buildOf(trial: RockerCase): Mm {
  const rocker = orInfeasible(() => solveRocker(trial));
  return rocker instanceof Infeasible ? NaN : rocker.build;
}

/** The sole is higher than thickness alone asks for: the maker or the other shoe wants it so. */
function builtUp({ shoe, number, place, pace }: Seen<RockerShoe>): Finding {
  const given = caseOf(shoe), seat = number('seatHeight');
  const { seatAtLeast: _, ...order } = given.order, lower = pace === 'careful' ? shoe.rocker.build - buildOf({ ...given, order }) : 0;
  const cause = isBuiltUpToOther(shoe) ? 'The other shoe sets the height, so that both feet stand as ordered' : 'The seat height asked for (order.seatHeightAtLeast) sets the height';
  return {
    code: 'GOVERNS', severity: 'note', side: shoe.side, measured: seat, unit: 'mm', where: 'seat', ...place('seatHeight'),
    text: sentences(`${cause}: ${mm(seat)} at the seat`, lower >= WORTH_SAYING ? `Thickness alone would let the sole be ${mm(lower)} lower` : ''),
    basis: PRACTICE,
  };
}

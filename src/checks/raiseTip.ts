import { inDegrees, type Mm } from '../geometry/units.ts';
import { MILD_TIP, type RaiseMade } from '../pair/raise.ts';
import type { MatchShoe } from '../pair/shoe.ts';
import { angleAt } from '../profile/groundFace.ts';
import { FOAM_WANTED } from '../profile/thinnest.ts';
import { foamLeft } from '../solid/foamLeft.ts';
import type { Finding } from './finding.ts';
import { keepsFoam, moreRoom, raiseWithTip, raiseWithTipOpen } from './raiseRoom.ts';
import { deg, mm, sentences } from './say.ts';
import { over, under, type Seen } from './seen.ts';
import { PRACTICE, TRIPPING } from './sources.ts';
import { placeWords } from './thickness.ts';

/** Steepest toe of a raise: the foot in it still bends, and a steeper one is hard to walk on. */
const STEEPEST = inDegrees(MILD_TIP);

/** The tip to ask for, where another one mends what is wrong: it was put in and made. */
function tipThat(shoe: MatchShoe, works: (made: RaiseMade) => boolean): string {
  const made = raiseWithTipOpen(shoe);
  return made && works(made) ? `${mm(made.tip)} at the tip works (order.tip), or leave it out` : '';
}

/** A raise has no stiffener: foam is won at the tip, from the outsole, or by a higher shoe on the other side. */
export function thinRaise({ shoe, number, place, pace }: Seen<MatchShoe>): Finding[] {
  if (!shoe.made) return [];
  const { side, last } = shoe, left = number('foamLeft'), { at = NaN } = place('foamLeft');
  if (!under(left, FOAM_WANTED)) return [];
  return [{
    code: 'THIN_FOAM', severity: 'warn', side, measured: left, limit: FOAM_WANTED, unit: 'mm', where: placeWords(last, at), at,
    text: sentences(`Only ${mm(left)} of foam stay ${placeWords(last, at)}; less than ${mm(FOAM_WANTED)} is hard to cut and to glue`, ...(pace === 'careful' ? moreFoam(shoe, FOAM_WANTED - left) : [])),
    basis: PRACTICE,
  }];
}

function moreFoam(shoe: MatchShoe, missing: Mm): string[] {
  const tip = tipThat(shoe, ({ shape }) => !under(foamLeft(shape).thickness, FOAM_WANTED));
  return tip ? [tip] : ['More at the tip (order.tip) does not help', moreRoom(shoe, missing, keepsFoam(FOAM_WANTED))];
}

export function steepTip({ shoe, number, place, pace }: Seen<MatchShoe>): Finding[] {
  if (!shoe.made) return [];
  const slope = number('tipSlope');
  if (!over(slope, STEEPEST)) return [];
  const tip = pace === 'quick' ? '' : tipThat(shoe, ({ shape: { face, last } }) => !over(inDegrees(angleAt(face, last.length)), STEEPEST));
  return [{
    code: 'RAISE_TIP_STEEP', severity: 'warn', side: shoe.side, measured: slope, limit: STEEPEST, unit: 'deg', where: 'tip', ...place('tipSlope'),
    text: sentences(`The raise turns up at ${deg(slope)} at the tip, with ${mm(number('foamLeft'))} of foam left where it is thinnest; more than ${STEEPEST}° is hard to walk on`, tip || 'Leave more at the tip (order.tip)'),
    basis: PRACTICE,
  }];
}

/** A toe that comes down further than this is felt: twice what a toe spring may be off. Common practice of the trade. */
const SPRING_LOST: Mm = 3;

/** A raise that is level to the toe takes the spring of the shoe it is glued to. */
export function lostSpring({ shoe, number, place, pace }: Seen<MatchShoe>): Finding[] {
  const { side, made, last } = shoe, spring = number('toeSpringOfShoe'), least = last.toeSpring - SPRING_LOST;
  if (!made || !under(spring, least)) return [];
  return [{
    code: 'RAISE_TOE_LOW', severity: 'warn', side, measured: spring, limit: least, unit: 'mm', where: 'tip', ...place('toeSpringOfShoe'),
    text: sentences(`The tip of the raised ${side} shoe stands ${mm(spring)} above the floor, and ${mm(last.toeSpring)} as the shoe is now: it catches sooner on floor and stairs`, pace === 'quick' ? '' : keptSpring(shoe, made.tip - (least - spring))),
    basis: TRIPPING,
  }];
}

/** Less than this under the tip may catch, by the card that walks with the shoes too. Common practice of the trade. */
export const CLEARS: Mm = 15;

/** A raise keeps about the toe spring of its shoe, be that low; where it takes of it lostSpring tells more. */
export function lowTip(seen: Seen<MatchShoe>): Finding[] {
  const { shoe: { side, made, last }, number, place } = seen, spring = number('toeSpringOfShoe');
  if (!made || !under(spring, CLEARS) || lostSpring(seen).length > 0) return [];
  return [{
    code: 'RAISE_TOE_CLEARANCE', severity: 'note', side, measured: spring, limit: CLEARS, unit: 'mm', where: 'tip', ...place('toeSpringOfShoe'),
    text: `The tip of the raised ${side} shoe stands ${mm(spring)} above the floor, and ${mm(last.toeSpring)} as the shoe is now; less than ${CLEARS} mm may catch on carpets and kerbs, sooner with the weight of a raise. The foot in it still bends: watch the toe on the first walk.`,
    basis: TRIPPING,
  }];
}

/** What a thinner tip would keep, put in and made. */
function keptSpring(shoe: MatchShoe, tip: Mm): string {
  const asked = Math.floor(tip * 10 + 1e-6) / 10, made = asked >= shoe.order.outsole.thickness ? raiseWithTip(shoe, asked) : undefined;
  return made ? `${mm(asked)} at the tip (order.tip) keeps all but ${SPRING_LOST} mm of it, and ${mm(foamLeft(made.shape).thickness)} of foam where it is thinnest` : 'So low a raise keeps no more; build the other shoe up, or keep the toe of this one as it is';
}

/** A tip cannot be thicker than the raise is there. */
export function tipBeyondRaise({ shoe: { side, made, order, last } }: Seen<MatchShoe>): Finding[] {
  if (!made || order.tip === undefined || !over(order.tip, made.tip + 0.05)) return [];
  return [{
    code: 'RAISE_TIP_LEVEL', severity: 'note', side, measured: made.tip, limit: order.tip, unit: 'mm', where: 'tip', at: last.length,
    text: `Of the ${mm(order.tip)} asked for at the tip (order.tip) there are ${mm(made.tip)}: the raise is no thicker there, and its ground face stays level to the toe.`, basis: PRACTICE,
  }];
}

/** Ahead of the tread a raise follows the spring of the shoe it is glued to: where that was not measured, it may not lie on it. */
export function guessedSpring({ shoe: { side, made, last, fitting: { last: { toeSpring } } } }: Seen<MatchShoe>): Finding[] {
  if (!made || toeSpring.origin !== 'default') return [];
  return [{
    code: 'MATCH_SPRING_GUESSED', severity: 'warn', side, measured: toeSpring.value, unit: 'mm', where: 'forepart', at: last.length,
    text: `The toe spring of the ${side} shoe was not measured and counts as ${mm(toeSpring.value)}: ahead of the tread the raise is glued to a curve nobody measured. Each mm it is out is about a mm of thickness at the tip, to be ground off or filled. Stand the shoe on a table and measure how high its tip is (last.toeSpring).`,
    basis: PRACTICE,
  }];
}

import type { Mm, Rad } from '../geometry/units.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { bendTold, gradeOf } from '../stiffener/grades.ts';
import { plyOrdered } from '../stiffener/laying.ts';
import { plateUnder } from '../stiffener/plate.ts';
import { assessedOr } from '../stiffener/search.ts';
import type { Finding } from './finding.ts';
import { mm, sentences } from './say.ts';
import type { Seen } from './seen.ts';
import { PRACTICE } from './sources.ts';

/** Joints that lie ahead of the ankle bend with the sole: those are hurt first where it bends. */
const BENDS_WITH_SOLE: readonly string[] = ['toe joint', 'midfoot'];

const USUAL_CLOTH = 'carbon twill 200';

/** How far as many flat plies as come to that thickness would bend; linear. */
function asFlatPlies({ last, shape }: RockerShoe, thickness: Mm, mass: number): Rad {
  const plate = plateUnder(last, shape.feather, shape.upper), ply = plyOrdered({ ply: { kind: 'cloth', cloth: USUAL_CLOTH } }), count = Math.max(1, Math.round(thickness / ply.thickness));
  return assessedOr({ below: Array.from({ length: count }, () => ({ ply, angle: 0 })), above: [], attached: [] }, { plate }, { mass, wanted: 'rigid' }).bench.bend;
}

/** Of a stiffener that only has a thickness nobody knows how far it bends, and the rocker works only if it does not. */
export function stiffenerUnknown({ shoe, fitting: { wearer } }: Seen<RockerShoe>): Finding[] {
  const { side, fitting: { foot, order } } = shoe;
  if (order.kind !== 'rocker' || order.pack) return [];
  const none = order.stiffener === 0, mass = wearer.mass ? '' : ', and what the client weighs (wearer.mass)', bend = none || !wearer.mass ? undefined : asFlatPlies(shoe, order.stiffener, wearer.mass.value);
  const isSoft = bend !== undefined && gradeOf(bend) === 'flexible';
  return [{
    code: 'STIFFENER_UNKNOWN', severity: none || isSoft || BENDS_WITH_SOLE.includes(foot?.joint ?? '') || foot?.state === 'prosthetic' ? 'warn' : 'note', side, measured: order.stiffener, unit: 'mm', where: 'stiffener', basis: PRACTICE,
    text: sentences(
      none ? 'There is no stiffener (order.stiffener is 0): foam and rubber bend at the ball at every step, so that the shoe does not roll over its arcs and the joint is bent that must not be, until the sole comes off'
        : `How far the stiffener of ${mm(order.stiffener)} bends is not known; a rocker that bends at the ball does not roll and comes off`,
      bend === undefined ? '' : `Flat plies of ${USUAL_CLOTH} so thick would bend ${bendTold(bend, 1)}${isSoft ? ', too soft' : ''}`,
      `Say what is wanted (order.stiffener: { "wanted": "rigid" })${mass}, and its plies are found`,
    ),
  }];
}

import type { RockerShoe } from '../pair/shoe.ts';
import type { Finding } from './finding.ts';
import { mm, sentences } from './say.ts';
import type { Seen } from './seen.ts';
import { PRACTICE } from './sources.ts';

/** Joints that lie ahead of the ankle bend with the sole: those are hurt first where it bends. */
const BENDS_WITH_SOLE: readonly string[] = ['toe joint', 'midfoot'];

/** Of a stiffener that only has a thickness nobody knows how far it bends, and the rocker works only if it does not. */
export function stiffenerUnknown({ shoe: { side, fitting: { foot, order } }, fitting: { wearer } }: Seen<RockerShoe>): Finding[] {
  if (order.kind !== 'rocker' || order.pack) return [];
  const none = order.stiffener === 0, mass = wearer.mass ? '' : ', and what the client weighs (wearer.mass)';
  return [{
    code: 'STIFFENER_UNKNOWN', severity: none || BENDS_WITH_SOLE.includes(foot?.joint ?? '') || foot?.state === 'prosthetic' ? 'warn' : 'note', side, measured: order.stiffener, unit: 'mm', where: 'stiffener', basis: PRACTICE,
    text: sentences(
      none ? 'There is no stiffener (order.stiffener is 0): foam and rubber bend at the ball at every step, so that the shoe does not roll over its arcs and the joint is bent that must not be, until the sole comes off'
        : `Of the stiffener only its thickness is known, ${mm(order.stiffener)}: nothing is known of how far it bends at the ball, and a rocker that bends there does not roll and comes off`,
      `Say what is wanted of it (order.stiffener: { "wanted": "rigid" })${mass}, and its plies are found`,
    ),
  }];
}

import { mm, sentences } from '../../checks/say.ts';
import { FILL_RIM, PLY_INSET, rimRoundPlies } from '../plies.ts';
import { sidesOf, soleTarget, stiffened, type Bench } from './bench.ts';
import { step, type Step } from './step.ts';
import { WAITS } from './waits.ts';

/** Carbon and epoxy laid on the lasted bottom. Plies and their order are the maker's own until a laminate is designed. */
export function stiffenerSteps(bench: Bench): Step[] {
  const soles = stiffened(bench), sides = sidesOf(soles);
  if (soles.length === 0) return [];
  const thickest = soles.map(({ parts: { shape } }) => shape).reduce((most, one) => (one.stiffener > most.stiffener ? one : most));
  const thickness = soleTarget(soles, 'Stiffener, thickness', ({ parts: { shape } }) => mm(shape.stiffener), '± 0.1 mm');
  return [
    step({
      name: 'Dry run of the plies', sides, how: `Cut cloth, peel ply, film and pad; number them in the order of use and lay them out. Keep plies 5 to 8 mm inside the feather line, the template's ${PLY_INSET}. Nothing is mixed yet.`,
      batches: ['cloth'], hazards: ['carbon'],
    }),
    step({
      name: 'Laminate the stiffener', sides, how: 'Film and release on the lasted bottom. Weigh the cloth; mix resin and hardener to 110 to 120 % of that weight. Wet the plies out one by one, peel ply on both faces, then film, foam pad, and vacuum or sandbag.',
      targets: [thickness], wait: WAITS.laminate, batches: ['resin', 'hardener'], hazards: ['epoxy', 'carbon'],
    }),
    step({
      name: 'Post-cure', sides, how: 'In a warm box, still on the last, before any heat is used on the shoe.', wait: WAITS.postCure, hazards: ['heat'],
    }),
    step({
      name: 'Trim and prove the stiffener', sides, how: 'Trim wet to the line and seal the edges. Tap it all over: dull is a void. Weigh it. Measure the thickness at seat, waist and ball.',
      targets: [thickness], hazards: ['carbon', 'spindle'],
    }),
    step({
      name: 'Cement stiffener and lasted bottom', sides, how: 'Pull the peel ply off, roughen the lasted bottom, cement both faces. No bare spot: it would squeak.',
      wait: WAITS.cement, batches: ['cement for the stiffener'], hazards: ['solvent', 'carbon'],
    }),
    step({ name: 'Lay the stiffener on and press', sides, how: 'By the centre and ankle lines, from the middle outwards, last in. It must not stand proud at the feather line.', wait: WAITS.joint }),
    step({ name: 'Fill the rim round the plies', sides, how: sentences(`On the sole as planned ${rimRoundPlies(thickest)}`, FILL_RIM, 'Let it set, and rub it down by hand, flush and without touching the plies'), batches: ['filler'], hazards: ['dust', 'carbon'] }),
  ];
}

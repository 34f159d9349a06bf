import { figuresOf } from '../../checks/figures.ts';
import { grams, mm, sentences } from '../../checks/say.ts';
import type { Fitting } from '../../fitting/fitting.ts';
import type { Shoe } from '../../pair/shoe.ts';
import type { PackGrams } from '../../stiffener/choices.ts';
import { packFor } from '../../stiffener/pack.ts';
import { inShort } from '../../stiffener/layers.ts';
import { FILL_RIM, PLY_INSET, rimRoundPlies } from '../plies.ts';
import { sidesOf, soleTarget, stiffened, type Bench } from './bench.ts';
import { gramsTaken } from '../plies/amounts.ts';
import { step, type SideValue, type Step, type Target } from './step.ts';
import { WAITS } from './waits.ts';

/** Plies laid on the lasted bottom: as told where it is known what is laid, else the maker's own. */
export function stiffenerSteps(bench: Bench): Step[] {
  const soles = stiffened(bench), sides = sidesOf(soles);
  if (soles.length === 0) return [];
  const thickest = soles.map(({ parts: { shape } }) => shape).reduce((most, one) => (one.stiffener > most.stiffener ? one : most));
  const laid = laidTargets(bench), thickness = soleTarget(soles, 'Stiffener, thickness', ({ parts: { shape } }) => mm(shape.stiffener), '± 0.1 mm');
  return [
    step({
      name: 'Dry run of the plies', sides, how: `Cut cloth, peel ply, film and pad; number them in the order of use and lay them out. Keep plies 5 to 8 mm inside the feather line, the template's ${PLY_INSET}. Nothing is mixed yet.`,
      targets: laid.of, batches: ['cloth'], hazards: ['carbon'],
    }),
    step({
      name: 'Laminate the stiffener', sides, how: 'Film and release on the lasted bottom. Weigh the cloth; mix resin and hardener to 110 to 120 % of that weight. Wet the plies out one by one, peel ply on both faces, then film, foam pad, and vacuum or sandbag.',
      targets: [...laid.weighedOut, thickness], wait: WAITS.laminate, batches: ['resin', 'hardener'], hazards: ['epoxy', 'carbon'],
    }),
    step({
      name: 'Post-cure', sides, how: 'In a warm box, still on the last, before any heat is used on the shoe.', wait: WAITS.postCure, hazards: ['heat'],
    }),
    step({
      name: 'Trim and prove the stiffener', sides, how: 'Trim wet to the line and seal the edges. Tap it all over: dull is a void. Weigh it. Measure the thickness at seat, waist and ball.',
      targets: [thickness, ...laid.weighed], hazards: ['carbon', 'spindle'],
    }),
    step({
      name: 'Cement stiffener and lasted bottom', sides, how: 'Pull the peel ply off, roughen the lasted bottom, cement both faces. No bare spot: it would squeak.',
      wait: WAITS.cement, batches: ['cement for the stiffener'], hazards: ['solvent', 'carbon'],
    }),
    step({ name: 'Lay the stiffener on and press', sides, how: 'By the centre and ankle lines, from the middle outwards, last in. It must not stand proud at the feather line.', wait: WAITS.joint }),
    step({ name: 'Fill the rim round the plies', sides, how: sentences(`On the sole as planned ${rimRoundPlies(thickest)}`, FILL_RIM, 'Let it set, and rub it down by hand, flush and without touching the plies'), batches: ['filler'], hazards: ['dust', 'carbon'] }),
  ];
}

/** What of a stiffener is told only where its plies are known: what it is laid of, what is weighed out for it, what it weighs. */
interface LaidTargets { readonly of: readonly Target[]; readonly weighedOut: readonly Target[]; readonly weighed: readonly Target[] }

function laidTargets({ soles, plies, design: { fitting } }: Bench): LaidTargets {
  const packs = soles.flatMap(({ shoe }) => {
    const pack = packFor(shoe, fitting);
    return pack ? [{ side: shoe.side, pack, taken: gramsTaken(shoe.side, pack, plies), est: isEstimated(shoe, fitting) ? ' (est.)' : '' }] : [];
  });
  const weight = (what: string, of: keyof PackGrams, within: string): Target[] => told(what, packs.flatMap(({ side, taken, est }) => {
    const value = taken[of];
    return value === undefined ? [] : [{ side, text: `${grams(value)}${est}` }];
  }), within);
  return {
    of: told('Laid of', packs.map(({ side, pack: { stiffener, underFoam, plate } }) => ({ side, text: inShort(stiffener, underFoam, plate) })), ''),
    weighedOut: [...weight('Cloth that lies in it, dry', 'cloth', 'cut larger, it weighs more'), ...weight('Resin that stays in it', 'resin', 'mix more: some stays in brush and cup')],
    weighed: weight('Plies and core, weighed', 'pack', '± 5 %'),
  };
}

const told = (what: string, values: readonly SideValue[], within: string): Target[] => (values.length > 0 ? [{ what, values, within }] : []);
const isEstimated = (shoe: Shoe, fitting: Fitting): boolean => figuresOf(shoe, fitting).some(({ key, estimated }) => key === 'packThickness' && estimated);

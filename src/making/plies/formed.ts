import { mm, sentences } from '../../checks/say.ts';
import { stackedOf } from '../../stiffener/layers.ts';
import type { CoreLayer, Stiffener } from '../../stiffener/stiffener.ts';
import { drinks, CORE_COAT } from '../../stiffener/weighed.ts';

/** How a core comes into the form of the last before anything is laid on it, and what keeps a pack in that form. */

/** Common practice; of sheets glued up the strain of each tells. */
function bending(core: Pick<CoreLayer, 'name' | 'material' | 'sheets'>): string {
  const { name, material: { bends } } = core, stacked = stackedOf(core, mm);
  if (bends.strain !== undefined && stacked !== '') return `One sheet of that thickness does not bend to this last: glue it up of ${stacked}, cut alike, over the last in one press with film between, and take it off when the glue is hard`;
  return stacked !== '' ? `Glue it up of ${stacked}. ${formedAs(name)}` : formedAs(name);
}

function formedAs(name: string): string {
  switch (name) {
    case 'birch plywood': return 'A sheet of that thickness bends to this last: press it on with the plies';
    case 'leather board': return 'Soak it, mould it wet on the last, let it dry there until it weighs what it did before: wet board is far softer, and keeps resin from taking';
    case 'cork': return 'It bends to the last by itself; warm it through where it springs back, and press it there until it is cold';
    case 'light EVA': case 'firm EVA': case 'hard EVA': return 'Warm it through, press it on the last and leave it there until it is cold';
    default: return 'Bring it into the form of the last before any resin: what is bent to it by the plies springs back';
  }
}

/** @property skived its ends are */
export const formingWords = (core: CoreLayer, thickest: number, isSkived: boolean): string => sentences(
  `${mm(thickest)} of ${core.name}, measured: write what it really is (order.stiffener.coreThickness)`, bending(core), isSkived ? 'Skive its ends' : '', 'Weigh it dry; roughen it with a dust mask on and dust it off',
  drinks(core) ? `It drinks resin: rub a thin coat of the same mix into both faces, about ${CORE_COAT} g/m² each, and let it get tacky` : '',
);

/** A pack with more plies on one face than on the other draws crooked as it cures. */
export function warpWords({ above, below, core }: Pick<Stiffener, 'above' | 'below' | 'core'>): string {
  const count = (plies: Stiffener['above']): number => plies.filter(({ over }) => over === undefined).length, [top, under] = [count(above), count(below)];
  return !core || top === under ? '' : `${top} above and ${under} below the core are unlike, so the pack may warp as it cures: leave it pressed on the last through cure and post-cure, and let it cool there`;
}

import { figuresOf } from '../../checks/figures.ts';
import { bandWords, droopWords, kgWords } from '../../checks/benchWords.ts';
import { grams, mm, rounded, sentences } from '../../checks/say.ts';
import type { Fitting } from '../../fitting/fitting.ts';
import { USUAL_PLIES } from '../../fitting/readMaking.ts';
import type { Side } from '../../fitting/words.ts';
import type { Shoe } from '../../pair/shoe.ts';
import { packFor, type Pack } from '../../stiffener/pack.ts';
import { inShort } from '../../stiffener/layers.ts';
import { at } from '../../stiffener/stiffener.ts';
import { weightBand } from '../../stiffener/weighed.ts';
import { FILL_RIM, PLY_INSET, rimRoundPlies } from '../plies.ts';
import { mixOf } from '../plies/amounts.ts';
import { benchTestOf } from '../plies/bench.ts';
import { formingWords, warpWords } from '../plies/formed.ts';
import { sidesOf, soleTarget, stiffened, type Bench } from './bench.ts';
import { step, type SideValue, type Step, type Target } from './step.ts';
import { WAITS } from './waits.ts';

/** Plies laid on the lasted bottom: as told where it is known what is laid, else the maker's own. */
export function stiffenerSteps(bench: Bench): Step[] {
  const soles = stiffened(bench), sides = sidesOf(soles);
  if (soles.length === 0) return [];
  const thickest = soles.map(({ parts: { shape } }) => shape).reduce((most, one) => (one.stiffener > most.stiffener ? one : most)), packs = packsOf(bench), isKnown = packs.length === soles.length;
  const thickness = soleTarget(soles, 'Stiffener, thickness', ({ parts: { shape } }) => mm(shape.stiffener), packs.some(({ pack }) => hasCore(pack)) ? 'plies ± 0.1 mm, on the core as you measured it' : '± 0.1 mm');
  return [
    step({
      name: 'Dry run of the plies', sides, how: `Cut cloth, peel ply, film and pad; number them in the order of use and lay them out. ${isKnown ? `Each is cut to its own template: they step in by themselves, the outermost ${PLY_INSET} inside the feather line.` : `Keep plies 5 to 8 mm inside the feather line, the template's ${PLY_INSET}.`} Nothing is mixed yet.`,
      targets: told('Laid of', packs, ({ pack: { stiffener, underFoam, plate } }) => inShort(stiffener, underFoam, plate), ''), batches: ['cloth'], hazards: ['carbon'],
    }),
    ...coreSteps(packs),
    step({
      name: 'Laminate the stiffener', sides, how: sentences('Film and release on the lasted bottom', isKnown ? 'Weigh the cloth; mix resin and hardener by weight, as much as stands below' : 'Weigh the cloth; mix resin and hardener to 110 to 120 % of that weight', 'Wet the plies out one by one, peel ply on both faces, then film, foam pad, and vacuum or sandbag', ...new Set(packs.map(({ pack: { stiffener } }) => warpWords(stiffener)))),
      targets: [...weighedOut(packs, bench.design.fitting), thickness], wait: WAITS.laminate, batches: ['resin', 'hardener'], hazards: ['epoxy', 'carbon'],
    }),
    step({
      name: 'Post-cure', sides, how: 'In a warm box, still on the last, before any heat is used on the shoe.', wait: WAITS.postCure, hazards: ['heat'],
    }),
    step({
      name: 'Trim and prove the stiffener', sides, how: 'Trim wet to the line and seal the edges. Tap it all over: dull is a void. Weigh it. Measure the thickness at seat, waist and tread.',
      targets: [thickness, ...told('The whole pack, weighed', packs, ({ pack }) => grams(pack.grams.pack), weightWords(packs))], hazards: ['carbon', 'spindle'],
    }),
    ...benchSteps(packs, bench),
    step({
      name: 'Cement stiffener and lasted bottom', sides, how: 'Pull the peel ply off, roughen the lasted bottom, cement both faces. No bare spot: it would squeak.',
      wait: WAITS.cement, batches: ['cement for the stiffener'], hazards: ['solvent', 'carbon'],
    }),
    step({ name: 'Lay the stiffener on and press', sides, how: 'By the centre and ankle lines, from the middle outwards, last in. It must not stand proud at the feather line.', wait: WAITS.joint }),
    step({ name: 'Fill the rim round the plies', sides, how: sentences(`On the sole as planned ${rimRoundPlies(thickest)}`, FILL_RIM, 'Let it set, and rub it down by hand, flush and without touching the plies'), batches: ['filler'], hazards: ['dust', 'carbon'] }),
  ];
}

/** A stiffener of which it is known what it is laid of. @property est behind what rests on an estimate */
interface Packed { readonly side: Side; readonly pack: Pack; readonly est: string }

const packsOf = ({ soles, design: { fitting } }: Bench): Packed[] => soles.flatMap(({ shoe }) => {
  const pack = packFor(shoe, fitting);
  return pack ? [{ side: shoe.side, pack, est: isEstimated(shoe, fitting) ? ' (est.)' : '' }] : [];
});
const isEstimated = (shoe: Shoe, fitting: Fitting): boolean => figuresOf(shoe, fitting).some(({ key, estimated }) => key === 'packThickness' && estimated);
const hasCore = ({ stiffener: { core }, underFoam }: Pack): boolean => core !== undefined && !underFoam;

/** A number of each stiffener that has it; none where none has. */
function told(what: string, packs: readonly Packed[], value: (one: Packed) => string | undefined, within: string): Target[] {
  const values = packs.flatMap((one): SideValue[] => { const text = value(one); return text === undefined ? [] : [{ side: one.side, text: `${text}${one.est}` }]; });
  return values.length > 0 ? [{ what, values, within }] : [];
}

const tenth = (value: number | undefined): string | undefined => (value === undefined ? undefined : grams(value, 1));

function weighedOut(packs: readonly Packed[], { making: { plies = USUAL_PLIES } }: Fitting): Target[] {
  const parts = (stays: number | undefined): string | undefined => {
    if (stays === undefined) return undefined;
    const { resin, hardener } = mixOf(stays, plies);
    return `${grams(resin, 1)} and ${grams(hardener, 1)}`;
  };
  return [
    ...told('Cloth that lies in it, dry', packs, ({ pack }) => tenth(pack.grams.cloth), 'cloth to cut weighs more'), ...told('Resin with hardener that stays in it', packs, ({ pack }) => tenth(pack.grams.resin), ''),
    ...told('Mixed: resin and hardener', packs, ({ pack }) => parts(pack.grams.resin), `${rounded(plies.spare * 100, 0)} % more than stays; ${rounded(plies.hardener, 0)} to 100 by weight, as its label says`),
  ];
}

const weightWords = (packs: readonly Packed[]): string => packs.map(({ side, pack }) => { const [least, most] = weightBand(pack.grams); return `${packs.length > 1 ? `${side === 'left' ? 'L' : 'R'} ` : ''}${rounded(least, 0)} to ${grams(most)}`; }).join(', ');

function coreSteps(packs: readonly Packed[]): Step[] {
  const cored = packs.filter(({ pack }) => hasCore(pack));
  return cored.length === 0 ? [] : [step({
    name: 'Form the core', sides: cored.map(({ side }) => side), how: sentences(...new Set(cored.map(({ pack: { stiffener: { core }, plate } }) => formingWords(core!, at(core!.thickness, plate.ball), core!.over !== undefined)))),
    targets: told('Core, cut and dry', cored, ({ pack }) => tenth(pack.grams.core), 'a tenth more or less is usual: write down what it weighs'), batches: ['core'],
  })];
}

/** Numbers of the bench card; the card itself is a page of the plies' own paper. */
function benchSteps(packs: readonly Packed[], { plies }: Bench): Step[] {
  const proved = packs.flatMap((one) => { const test = benchTestOf(one.pack); return test ? [{ ...one, bare: test.bare }] : []; });
  return proved.length === 0 ? [] : [step({
    name: 'Prove the bare pack on the bench', sides: proved.map(({ side }) => side), how: sentences(
      'Stand clear, goggles on. Foot side down, clamped up to the clamp line; gauge 2 on the tread line, the mass and gauge 1 on the load line; read after half a minute, three times',
      plies ? 'What another reading means stands on the page "Bench test" of the paper of the plies' : 'What another reading means stands on the paper of the plies: order it (making.plies)', 'Type the reading into the sheet (order.stiffener.bench)',
    ),
    targets: [
      ...told('Clamp, tread and load line, from the heel', proved, ({ side }) => proved.filter((one) => one.side === side).map(({ bare }) => `${rounded(bare.clampAt, 0)}, ${rounded(bare.ball, 0)}, ${mm(bare.loadAt, 0)}`)[0], ''),
      ...told('Hung on it', proved, ({ side }) => proved.filter((one) => one.side === side).map(({ bare }) => kgWords(bare.mass))[0], ''),
      ...told('Gauge 1', proved, ({ side }) => proved.filter((one) => one.side === side).map(({ bare: { band, droop } }) => (band ? bandWords(band) : `${droopWords(droop)} as reckoned, and yet not good: see the stops`))[0], 'put right by gauge 2'),
    ],
  })];
}

import type { LaidPly, OwnCore, PackOrder, PlyOrder } from '../fitting/fitting.ts';
import type { Mm } from '../geometry/units.ts';
import type { Last } from '../last/last.ts';
import { CLOTHS, CORES, FIBRES, INSOLES, RESIN, SPRING_STEEL, type Cloth, type CoreMaterial, type CoreName, type FailureStrains } from '../materials/stiffeners.ts';
import type { FoamName } from '../materials/materials.ts';
import { tableOf } from '../geometry/table.ts';
import { attachedBeside, coreLaid, PLIES_MOST, type Bench, type BenchAttached, type CoreChoice, type Open } from './choices.ts';
import { camberUnder, tightestRadius } from './plate.ts';
import { plyOf, type Ply, type PlyMaterial } from './ply.ts';
import { coreThicknesses, sheetsFor } from './sheets.ts';
import type { Along, Attached, CamberCounted, PlacedPly, Plate, Stiffener } from './stiffener.ts';

/** What the order of a stiffener means for a plate: what it is laid from and what may be chosen. */

/** Thicknesses a core is sold in. Common practice. */
const CORE_SHEETS: readonly Mm[] = [2, 3, 4, 5, 6, 8, 10, 12];
/** What is tried as a core where the maker leaves it open; foam between two packs is another matter (`underFoam`). */
const TRIED_CORES: readonly CoreName[] = ['leather board', 'birch plywood', 'cork'];

/** The foam body as a core: its material, and how thick it is along the shoe. */
export interface FoamCore { readonly foam: FoamName; readonly thickness: (x: Mm) => Mm }

/** @throws RangeError for what the reader of the sheet should have refused */
export function plyOrdered(order: Pick<PackOrder, 'ply' | 'resin' | 'ownResin'>): Ply {
  const read = plyOf(materialOf(order));
  if (!read.ok) throw new RangeError(read.faults.map(({ text }) => text).join(' '));
  return read.value;
}

function materialOf({ ply, resin, ownResin }: Pick<PackOrder, 'ply' | 'resin' | 'ownResin'>): PlyMaterial {
  const wet = { ...(resin === undefined ? {} : { resin }), ...(ownResin ? { matrix: { ...ownResin, basis: `${ownResin.name} as on the sheet` } } : {}) };
  switch (ply.kind) {
    case 'cloth': return { ...ply, ...wet };
    case 'own cloth': return { ...ply, fibre: typeof ply.fibre === 'string' ? FIBRES[ply.fibre] : { ...ply.fibre, basis: 'fibre as on the sheet' }, failsAt: failsLike(ply), ...wet };
    case 'measured': {
      const { name, thickness, density, along, across, shear, poisson, pulled, pressed, sheared } = ply;
      return { kind: 'measured', name, thickness, density, lamina: { e1: along, e2: across, g12: shear, nu12: poisson }, failsAt: { pull1: pulled, press1: pressed, pull2: pulled, press2: pressed, shear: sheared, basis: 'measured' } };
    }
  }
}

/** A cloth of the maker's own fails where one of the list does that is woven of the same fibre; one of a fibre of the maker's own as the sheet says, and across it as its resin does. */
function failsLike({ fibre, weave }: PlyOrder & { kind: 'own cloth' }): FailureStrains {
  const known: readonly Cloth[] = Object.values(CLOTHS), straight = weave === 'unidirectional', alike = known.filter((cloth) => typeof fibre !== 'string' || cloth.fibre === fibre);
  const like = (alike.find((cloth) => (cloth.weave === 'unidirectional') === straight) ?? alike[0]!).failsAt;
  if (typeof fibre === 'string') return like;
  const { pulled, pressed } = fibre;
  return { ...like, pull1: pulled, press1: pressed, ...(straight ? {} : { pull2: pulled, press2: pressed }), basis: `along the fibres as on the sheet; else ${like.basis}` };
}

/** Where nobody said how thick it is sold. */
const OWN_SHEETS: readonly Mm[] = [0.5, 0.8, 1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12];

const materialOfOwn = ({ density, modulus, shear, shearStrength, bendsTo, sheet }: OwnCore): CoreMaterial => {
  const only = (value: number) => ({ least: value, counted: value, most: value });
  return { density, modulus: only(modulus), shear: only(shear), shearStrength, basis: 'as on the sheet', bends: { ...(bendsTo === undefined ? { moulded: 'takes the form of the last' } : { strain: bendsTo }), sold: sheet === undefined ? OWN_SHEETS : [sheet], basis: 'as on the sheet' } };
};

const coreOf = (core: CoreName | OwnCore, thickness: Along): CoreChoice =>
  (typeof core === 'string' ? { name: core, material: CORES[core], thickness, foam: false } : { name: core.name, material: materialOfOwn(core), thickness, foam: false });

const foamCore = ({ foam, thickness }: FoamCore): CoreChoice => ({ name: `the foam body (${foam})`, material: CORES[foam], thickness, foam: true });

/** Thicknesses in which a core is open. One of which no sheet is thin enough to be bent onto the last is not, unless it was named: then it is told of. */
function thicknessesOpen({ core, coreThickness }: PackOrder, { material }: CoreChoice, plate: Plate): readonly Mm[] {
  const radius = tightestRadius(plate), named = core !== undefined;
  if (coreThickness !== undefined) return named || sheetsFor(material, coreThickness, radius) ? [coreThickness] : [];
  const bent = coreThicknesses(material, radius, CORE_SHEETS);
  return named && bent.length === 0 ? CORE_SHEETS : bent;
}

/** What may be chosen from under an order. @param foam the body between insole and outsole, where plies may lie under it */
export function openIn(order: PackOrder, plate: Plate, foam: FoamCore | undefined): Open {
  const { core, edges, underFoam, thicknessAtMost } = order, named = core === undefined ? TRIED_CORES : core === 'none' ? [] : [core];
  const cores = named.flatMap((one) => thicknessesOpen(order, coreOf(one, 0), plate).map((thickness) => coreOf(one, thickness)));
  return {
    plies: { least: 1, most: PLIES_MOST }, thicknessAtMost, edges: edges > 0 ? [0, edges] : [0],
    cores: [...(core === undefined || core === 'none' ? [undefined] : []), ...cores, ...(underFoam && foam ? [foamCore(foam)] : [])],
  };
}

/** What most lasts are dished across at the ball, where nobody measured it. Common practice. */
export const CAMBER_USUAL: Mm = 2;

/** @param measured the camber of the last was; where it was not and none is typed, it is counted only where it weakens */
export function benchOf(order: PackOrder, last: Last, plate: Plate, measured: boolean, foam?: FoamCore): Bench {
  const ply = plyOrdered(order), typed = order.camber ?? (measured ? last.camber : undefined), counted: CamberCounted = typed === undefined ? 'none' : order.bench ? 'whole' : 'half';
  const camber = typed === 0 ? {} : { camber: { height: camberUnder({ ...last, camber: typed ?? CAMBER_USUAL }, plate), counted } };
  return { ply, ...outerPly(order, ply), plate, attached: attachedOf(order, last, plate, foam), ...camber };
}

const outerPly = (order: PackOrder, ply: Ply): Pick<Bench, 'outer'> =>
  (order.outerCloth === undefined || order.plies ? {} : { outer: plyLaid(order, { ply: { kind: 'cloth', cloth: order.outerCloth } }, ply) });

/** Of foam and insole that are not bonded nothing is counted; a shank is steel, and bends by itself even where it slides. */
function attachedOf({ bond, insole, shank }: PackOrder, { insole: thickness }: Last, plate: Plate, foam: FoamCore | undefined): BenchAttached {
  const strip = shank && shank.to > plate.from && shank.from < plate.to ? [shankOf(shank, bond)] : [];
  if (bond === 0) return { above: strip };
  const sole: Attached[] = thickness > 0 ? [{ name: `insole of ${insole}`, side: 'above', thickness, modulus: INSOLES[insole].modulus, bond }] : [];
  return { above: [...strip, ...sole], ...(foam ? { foam: { name: foamCore(foam).name, side: 'below', thickness: thicknessesOf(foam, plate), modulus: CORES[foam.foam].modulus.counted, bond } } : {}) };
}

function shankOf({ thickness, width, from, to }: NonNullable<PackOrder['shank']>, bond: number): Attached {
  const { modulus, density, yieldsAt } = SPRING_STEEL;
  return { name: 'shank of spring steel', side: 'above', thickness, width, over: { from, to }, modulus, density, yieldsAt, bond };
}

const FOAM_EVERY: Mm = 5;
/** Read off once for every pack that is tried. */
function thicknessesOf({ thickness }: FoamCore, { from, to }: Plate): (x: Mm) => Mm {
  const parts = Math.ceil((to - from) / FOAM_EVERY), places = Array.from({ length: parts + 1 }, (_, i) => from + ((to - from) * i) / parts);
  return tableOf(places, places.map(thickness));
}

/** A ply as it is told: the pack's own unless it names another cloth or another share of resin. What holds its resin already takes none. */
function plyLaid({ ply, resin, ownResin }: PackOrder, one: Pick<LaidPly, 'ply' | 'resin'>, usual: Ply): Ply {
  if (one.ply === undefined && one.resin === undefined) return usual;
  const laid = one.ply ?? ply, wet = one.resin ?? (laid.kind === 'measured' || (laid.kind === 'own cloth' && laid.thickness !== undefined) ? undefined : resin);
  return plyOrdered({ ply: laid, ...(wet === undefined ? {} : { resin: wet }), ...(ownResin ? { ownResin } : {}) });
}

/** What the maker lays, as it is told. A strip ends where the plate does; one that does not lie on it at all is left out. */
export function laidAs(order: PackOrder, { ply, camber, plate, attached }: Bench, foam: FoamCore | undefined): { readonly stiffener: Stiffener; readonly foam: boolean } {
  const { plies = [], core, coreThickness, underFoam, edges } = order;
  const between = underFoam && foam ? foamCore(foam) : core !== undefined && core !== 'none' && coreThickness !== undefined ? coreOf(core, coreThickness) : undefined;
  const placed = (pack: 'below' | 'above'): PlacedPly[] => plies.filter((one) => one.pack === pack).flatMap(({ angle, from, to, ...one }) => {
    const over = from === undefined || to === undefined ? undefined : { from: Math.max(from, plate.from), to: Math.min(to, plate.to) };
    return over && over.to <= over.from ? [] : [{ ply: plyLaid(order, one, ply), angle, ...(over ? { over } : {}) }];
  });
  const [below, above] = [placed('below'), placed('above')];
  return {
    foam: between?.foam === true,
    stiffener: {
      below: between ? below : [...below, ...above], above: between ? above : [], attached: attachedBeside(attached, between?.foam === true), ...(camber ? { camber } : {}), ...(edges > 0 ? { edges } : {}),
      ...(between ? { core: coreLaid(between, plate) } : {}),
    },
  };
}

/** Resin by hand differs from bench to bench: how little and how much is usual, g for each g of cloth. Common practice. */
export const RESIN_USUAL = { least: 0.7 * RESIN.byHand, most: 1.4 * RESIN.byHand } as const;

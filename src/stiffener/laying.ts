import type { OwnCore, PackOrder, PlyOrder } from '../fitting/fitting.ts';
import type { Mm } from '../geometry/units.ts';
import type { Last } from '../last/last.ts';
import { CLOTHS, CORES, FIBRES, RESIN, type Cloth, type CoreMaterial, type CoreName, type FailureStrains } from '../materials/stiffeners.ts';
import type { FoamName } from '../materials/materials.ts';
import { PLIES_MOST, type Bench, type CoreChoice, type Open } from './choices.ts';
import { camberUnder } from './plate.ts';
import { plyOf, type Ply, type PlyMaterial } from './ply.ts';
import type { Along, CamberCounted, PlacedPly, Plate, Stiffener } from './stiffener.ts';

/** What the order of a stiffener means for a plate: what it is laid from and what may be chosen. */

/** Thicknesses a core is sold in. Common practice. */
export const CORE_SHEETS: readonly Mm[] = [2, 3, 4, 5, 6, 8, 10, 12];
/** What is tried as a core where the maker leaves it open; foam between two packs is another matter (`underFoam`). */
const TRIED_CORES: readonly CoreName[] = ['leather board', 'birch plywood', 'cork'];

/** The foam body as a core: its material, and how thick it is along the shoe. */
export interface FoamCore { readonly foam: FoamName; readonly thickness: (x: Mm) => Mm }

/** @throws RangeError for what the reader of the sheet should have refused */
export function plyOrdered(order: Pick<PackOrder, 'ply' | 'resin'>): Ply {
  const read = plyOf(materialOf(order));
  if (!read.ok) throw new RangeError(read.faults.map(({ text }) => text).join(' '));
  return read.value;
}

function materialOf({ ply, resin }: Pick<PackOrder, 'ply' | 'resin'>): PlyMaterial {
  const wet = resin === undefined ? {} : { resin };
  switch (ply.kind) {
    case 'cloth': return { ...ply, ...wet };
    case 'own cloth': return { ...ply, fibre: FIBRES[ply.fibre], failsAt: failsLike(ply), ...wet };
    case 'measured': {
      const { name, thickness, density, along, across, shear, poisson, pulled, pressed, sheared } = ply;
      return { kind: 'measured', name, thickness, density, lamina: { e1: along, e2: across, g12: shear, nu12: poisson }, failsAt: { pull1: pulled, press1: pressed, pull2: pulled, press2: pressed, shear: sheared, basis: 'measured' } };
    }
  }
}

/** A cloth of the maker's own fails where one of the list does that is woven of the same fibre. */
function failsLike({ fibre, weave }: PlyOrder & { kind: 'own cloth' }): FailureStrains {
  const known: readonly Cloth[] = Object.values(CLOTHS), alike = known.filter((cloth) => cloth.fibre === fibre), straight = weave === 'unidirectional';
  return (alike.find((cloth) => (cloth.weave === 'unidirectional') === straight) ?? alike[0]!).failsAt;
}

const materialOfOwn = ({ density, modulus, shear, shearStrength }: OwnCore): CoreMaterial => {
  const only = (value: number) => ({ least: value, counted: value, most: value });
  return { density, modulus: only(modulus), shear: only(shear), shearStrength, basis: 'as on the sheet' };
};

const coreOf = (core: CoreName | OwnCore, thickness: Along): CoreChoice =>
  (typeof core === 'string' ? { name: core, material: CORES[core], thickness, foam: false } : { name: core.name, material: materialOfOwn(core), thickness, foam: false });

const foamCore = ({ foam, thickness }: FoamCore): CoreChoice => ({ name: `the foam body (${foam})`, material: CORES[foam], thickness, foam: true });

export function openIn({ core, coreThickness, edges, underFoam, thicknessAtMost }: PackOrder, foam: FoamCore | undefined): Open {
  const named = core === undefined ? TRIED_CORES : core === 'none' ? [] : [core], sheets = coreThickness === undefined ? CORE_SHEETS : [coreThickness];
  const cores = named.flatMap((one) => sheets.map((thickness) => coreOf(one, thickness)));
  return {
    plies: { least: 1, most: PLIES_MOST }, thicknessAtMost, edges: edges > 0 ? [0, edges] : [0],
    cores: [...(core === undefined || core === 'none' ? [undefined] : []), ...cores, ...(underFoam && foam ? [foamCore(foam)] : [])],
  };
}

/** What most lasts are dished across at the ball, where nobody measured it. Common practice. */
export const CAMBER_USUAL: Mm = 2;

/** @param measured the camber of the last was; where it was not and none is typed, it is counted only where it weakens */
export function benchOf(order: PackOrder, last: Last, plate: Plate, measured: boolean): Bench {
  const ply = plyOrdered(order), typed = order.camber ?? (measured ? last.camber : undefined), counted: CamberCounted = typed === undefined ? 'none' : order.bench ? 'whole' : 'half';
  return { ply, plate, ...(typed === 0 ? {} : { camber: { height: camberUnder({ ...last, camber: typed ?? CAMBER_USUAL }, plate), counted } }) };
}

/** What the maker lays, as it is told. */
export function laidAs({ plies = [], core, coreThickness, underFoam, edges }: PackOrder, { ply, camber, plate }: Bench, foam: FoamCore | undefined): { readonly stiffener: Stiffener; readonly foam: boolean } {
  const between = underFoam && foam ? foamCore(foam) : core !== undefined && core !== 'none' && coreThickness !== undefined ? coreOf(core, coreThickness) : undefined;
  const placed = (pack: 'below' | 'above'): PlacedPly[] => plies.filter((one) => one.pack === pack).map(({ angle, from, to }) =>
    ({ ply, angle, ...(from === undefined || to === undefined ? {} : { over: { from: Math.max(from, plate.from), to: Math.min(to, plate.to) } }) }));
  const [below, above] = [placed('below'), placed('above')];
  return {
    foam: between?.foam === true,
    stiffener: {
      below: between ? below : [...below, ...above], above: between ? above : [], attached: [], ...(camber ? { camber } : {}), ...(edges > 0 ? { edges } : {}),
      ...(between ? { core: { name: between.name, material: between.material, thickness: between.thickness } } : {}),
    },
  };
}

/** Resin by hand differs from bench to bench: how little and how much is usual, g for each g of cloth. Common practice. */
export const RESIN_USUAL = { least: 0.7 * RESIN.byHand, most: 1.4 * RESIN.byHand } as const;

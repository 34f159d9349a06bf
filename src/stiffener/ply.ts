import { fault, type Fault, type Path } from '../fitting/faults.ts';
import type { Mm } from '../geometry/units.ts';
import { CLOTHS, CRIMP, EPOXY, FIBRES, FIBRE_SHARE, RESIN, type ClothName, type FailureStrains, type Fibre, type Resin, type Weave } from '../materials/stiffeners.ts';

/** A thin layer that is stiff in two directions square to each other; MPa. `nu12` is how far it draws in along 2 when it is pulled along 1. */
export interface Lamina { readonly e1: number; readonly e2: number; readonly g12: number; readonly nu12: number }

/** One ply as it lies in the stiffener: its stiffness in its own axes, thickness in mm, g/cm³. */
export interface Ply {
  readonly name: string;
  readonly lamina: Lamina;
  readonly thickness: Mm;
  readonly density: number;
  readonly failsAt: FailureStrains;
  /** Grams of cloth and of resin on each m²; of a measured ply nobody knows them. */
  readonly grams?: { readonly cloth: number; readonly resin: number };
  /** Share of its volume that is fibre. */
  readonly fibreShare?: number;
  /** Runs one way only. */
  readonly straight?: boolean;
  /** What it was laid of, where its resin is laid by hand; not of one that was measured. */
  readonly laidOf?: PlyMaterial;
  readonly basis: string;
}

/** What a ply is made of: a cloth of the table, one told by its data, or a finished ply that was measured. */
export type PlyMaterial =
  /** @property resin grams of resin for each gram of cloth; thickness instead, where the laid ply was measured, mm */
  | { readonly kind: 'cloth'; readonly cloth: ClothName; readonly matrix?: Resin; readonly resin?: number; readonly thickness?: Mm }
  | { readonly kind: 'own cloth'; readonly name: string; readonly fibre: Fibre; readonly weave: Weave; readonly areal: number; readonly failsAt: FailureStrains; readonly matrix?: Resin; readonly resin?: number; readonly thickness?: Mm }
  | { readonly kind: 'measured'; readonly name: string; readonly lamina: Lamina; readonly thickness: Mm; readonly density: number; readonly failsAt: FailureStrains };

export type Read<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly faults: readonly Fault[] };

/** How stiffness follows from fibre and resin. They agree along the fibres and differ across. */
export type MixingRule = 'mixtures' | 'Halpin-Tsai' | 'Chamis';

/** Volume share of fibre from the weight share. Source: the definition. */
export const fibreShareOf = (weightShare: number, fibreDensity: number, resinDensity: number): number =>
  weightShare / fibreDensity / (weightShare / fibreDensity + (1 - weightShare) / resinDensity);

/**
 * Thickness of a laid ply, mm: what fibre and resin on each m² take up, without voids.
 * @param areal g/m² of fibre; densities g/cm³
 * Source: composites handbooks, t = W_f / ρ_f + W_m / ρ_m.
 */
export const plyThickness = (areal: number, fibreShare: number, fibreDensity: number): Mm => areal / (1000 * fibreDensity * fibreShare);

/**
 * Stiffness of straight fibres in resin. Along: the rule of mixtures. Across and in shear: by the rule named.
 * Sources: P. K. Mallick, Fiber-Reinforced Composites (2008), chapter 3; J. C. Halpin and J. L. Kardos 1976 (ξ 2 across, 1 in
 * shear); C. C. Chamis, NASA TM-83320 (1983) (both from memory).
 */
export function mixed(fibre: Fibre, resin: Resin, fibreShare: number, rule: MixingRule = 'Halpin-Tsai'): Lamina {
  const v = fibreShare, m = 1 - v, resinShear = resin.modulus / (2 * (1 + resin.poisson));
  const across: Record<MixingRule, (f: number, r: number, fullness: number) => number> = {
    mixtures: (f, r) => 1 / (v / f + m / r),
    'Halpin-Tsai': (f, r, fullness) => { const eta = (f / r - 1) / (f / r + fullness); return (r * (1 + fullness * eta * v)) / (1 - eta * v); },
    Chamis: (f, r) => r / (1 - Math.sqrt(v) * (1 - r / f)),
  };
  return {
    e1: v * fibre.along + m * resin.modulus, e2: across[rule](fibre.across, resin.modulus, 2),
    g12: across[rule](fibre.shear, resinShear, 1), nu12: v * fibre.poisson + m * resin.poisson,
  };
}

/**
 * A weave as half its fibres along and half across, straight, then softened by its crimp.
 * Source: common practice; woven cloth as a balanced cross-ply (R. M. Jones, Mechanics of Composite Materials, from memory).
 */
export function wovenOf(straight: Lamina, crimp: number): Lamina {
  const { e1, e2, g12, nu12 } = straight, part = 1 - (nu12 * nu12 * e2) / e1;
  const along = (e1 + e2) / (2 * part), coupled = (nu12 * e2) / part, e = crimp * (along - (coupled * coupled) / along);
  return { e1: e, e2: e, g12, nu12: coupled / along };
}

/** The ply a material gives, or what is wrong with it: every fault at once. @param path where it stands */
export function plyOf(material: PlyMaterial, path: Path = ['ply']): Read<Ply> {
  if (material.kind === 'measured') return measuredPly(material, path);
  if (material.kind === 'own cloth') return laidPly(material, path);
  if (!Object.hasOwn(CLOTHS, material.cloth)) return { ok: false, faults: [fault([...path, 'cloth'], `must be one of ${Object.keys(CLOTHS).join(', ')}`, material.cloth)] };
  const { fibre, ...cloth } = CLOTHS[material.cloth], { resin, thickness, matrix } = material;
  return laidPly({ kind: 'own cloth', name: material.cloth, ...cloth, fibre: FIBRES[fibre], ...(matrix ? { matrix } : {}), ...(resin === undefined ? {} : { resin }), ...(thickness === undefined ? {} : { thickness }) }, path);
}

const positive = (path: Path, value: number, unit: string): Fault[] =>
  Number.isFinite(value) && value > 0 ? [] : [fault(path, `must be greater than 0${unit === '' ? '' : ` ${unit}`}`, value)];

function laminaFaults({ e1, e2, g12, nu12 }: Lamina, path: Path): Fault[] {
  const each = [...positive([...path, 'e1'], e1, 'MPa'), ...positive([...path, 'e2'], e2, 'MPa'), ...positive([...path, 'g12'], g12, 'MPa')];
  const bounded = Number.isFinite(nu12) && nu12 * nu12 * e2 < e1;
  return each.length > 0 || bounded ? each : [fault([...path, 'nu12'], 'must be less than the root of e1 over e2, or the ply could push by itself', nu12)];
}

const strainFaults = ({ pull1, press1, pull2, press2, shear }: FailureStrains, path: Path): Fault[] =>
  Object.entries({ pull1, press1, pull2, press2, shear }).flatMap(([name, value]) => positive([...path, 'failsAt', name], value, ''));

/** What is wrong with a finished ply. */
export const plyDataFaults = ({ thickness, density, lamina, failsAt }: Pick<Ply, 'thickness' | 'density' | 'lamina' | 'failsAt'>, path: Path): Fault[] =>
  [...positive([...path, 'thickness'], thickness, 'mm'), ...positive([...path, 'density'], density, 'g/cm³'), ...laminaFaults(lamina, [...path, 'lamina']), ...strainFaults(failsAt, path)];

function measuredPly({ name, lamina, thickness, density, failsAt }: PlyMaterial & { kind: 'measured' }, path: Path): Read<Ply> {
  const faults = plyDataFaults({ thickness, density, lamina, failsAt }, path);
  return faults.length > 0 ? { ok: false, faults } : { ok: true, value: { name, lamina, thickness, density, failsAt, basis: 'measured' } };
}

function laidPly(cloth: PlyMaterial & { kind: 'own cloth' }, path: Path): Read<Ply> {
  const { fibre, areal, failsAt, matrix = EPOXY, resin = RESIN.byHand, thickness } = cloth;
  const dataFaults = [
    ...positive([...path, 'areal'], areal, 'g/m²'), ...strainFaults(failsAt, path),
    ...Object.entries({ density: fibre.density, along: fibre.along, across: fibre.across, shear: fibre.shear }).flatMap(([name, value]) => positive([...path, 'fibre', name], value, '')),
    ...Object.entries({ density: matrix.density, modulus: matrix.modulus }).flatMap(([name, value]) => positive([...path, 'matrix', name], value, '')),
    ...(thickness === undefined ? resinFaults(resin, path) : positive([...path, 'thickness'], thickness, 'mm')),
  ];
  if (dataFaults.length > 0) return { ok: false, faults: dataFaults };
  const share = thickness === undefined ? fibreShareOf(1 / (1 + resin), fibre.density, matrix.density) : areal / (1000 * fibre.density * thickness);
  if (!(share >= FIBRE_SHARE.least && share <= FIBRE_SHARE.most))
    return { ok: false, faults: [fault([...path, thickness === undefined ? 'resin' : 'thickness'], `must leave a share of fibre between ${FIBRE_SHARE.least} and ${FIBRE_SHARE.most} of the volume (here ${share.toFixed(2)})`, thickness ?? resin)] };
  return { ok: true, value: { ...laid(cloth, matrix, share), ...(thickness === undefined ? { laidOf: cloth } : {}) } };
}

/** The same ply with another share of resin; itself where its resin is not laid by hand. @param resin g for each g of cloth */
export function withResin(ply: Ply, resin: number): Ply {
  const { laidOf } = ply, read = laidOf && laidOf.kind !== 'measured' ? plyOf({ ...laidOf, resin }) : undefined;
  return read?.ok ? read.value : ply;
}

const resinFaults = (resin: number, path: Path): Fault[] =>
  resin >= RESIN.least && resin <= RESIN.most ? [] : [fault([...path, 'resin'], `must be ${RESIN.least} to ${RESIN.most} g of resin for each g of cloth`, resin, 'Laid by hand it is about 1.')];

function laid({ name, fibre, weave, areal, failsAt }: PlyMaterial & { kind: 'own cloth' }, matrix: Resin, fibreShare: number): Ply {
  const straight = mixed(fibre, matrix, fibreShare), thickness = plyThickness(areal, fibreShare, fibre.density);
  return {
    name, lamina: weave === 'unidirectional' ? straight : wovenOf(straight, CRIMP[weave]), thickness, fibreShare, failsAt, straight: weave === 'unidirectional',
    density: fibreShare * fibre.density + (1 - fibreShare) * matrix.density,
    grams: { cloth: areal, resin: thickness * 1000 * (1 - fibreShare) * matrix.density },
    basis: `${fibre.basis}; ${matrix.basis}; Halpin-Tsai${weave === 'unidirectional' ? '' : `, ${weave} as a cross-ply softened by ${CRIMP[weave]}`}`,
  };
}

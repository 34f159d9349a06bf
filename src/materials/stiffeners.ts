/**
 * What a sole stiffener is made of. Moduli and strengths in MPa (N/mm²), densities in g/cm³, cloth in g/m². Each number has its
 * basis. Fibres and resins are told by their data; what is laid from them is worked out in `stiffener/ply.ts`. A piece that was
 * made and measured on the bench goes before any of these.
 */

/** The softest, the one that is counted with, and the stiffest of what is sold under a name. */
export interface Spread { readonly least: number; readonly counted: number; readonly most: number }

/** A fibre: stiff along itself, much less so across. */
export interface Fibre {
  readonly density: number;
  readonly along: number;
  readonly across: number;
  readonly shear: number;
  /** Poisson's ratio along the fibre. */
  readonly poisson: number;
  readonly basis: string;
}

const FIBRE_DATA = 'data of the fibre as handbooks give them (from memory; Soden, Hinton and Kaddour, Compos Sci Technol 58 (1998) 1011, for carbon and glass)';
export const FIBRES = {
  carbon: { density: 1.79, along: 230_000, across: 15_000, shear: 15_000, poisson: 0.2, basis: FIBRE_DATA },
  glass: { density: 2.54, along: 73_000, across: 73_000, shear: 30_000, poisson: 0.22, basis: FIBRE_DATA },
  aramid: { density: 1.44, along: 124_000, across: 6_900, shear: 2_800, poisson: 0.35, basis: 'data of the fibre as handbooks give them (from memory)' },
  basalt: { density: 2.65, along: 86_000, across: 86_000, shear: 34_000, poisson: 0.26, basis: 'common practice (from memory), 80 to 90 GPa' },
} as const satisfies Record<string, Fibre>;
export type FibreName = keyof typeof FIBRES;

export interface Resin { readonly density: number; readonly modulus: number; readonly poisson: number; readonly basis: string }
/** Laid by hand and cured warm. Half-cured it is softer; above about 60 °C any of them may soften. */
export const EPOXY: Resin = { density: 1.15, modulus: 3_200, poisson: 0.35, basis: 'common practice (from memory), 2.8 to 3.6 GPa once cured; Mallick 2008 counts with 3.6' };

export const WEAVES = ['unidirectional', 'twill', 'plain'] as const;
export type Weave = (typeof WEAVES)[number];

/**
 * What is left of the stiffness of straight fibres when they go up and down in a weave.
 * Basis: common practice; it brings carbon at a fibre fraction of 0.45 to the 45 to 60 GPa of hand-laid cloth.
 */
export const CRIMP: Readonly<Record<Weave, number>> = { unidirectional: 1, twill: 0.91, plain: 0.87 };

/** Strains at which a ply first fails: pulled and pressed along its first direction, along its second, and sheared. */
export interface FailureStrains {
  readonly pull1: number; readonly press1: number;
  readonly pull2: number; readonly press2: number;
  readonly shear: number;
  readonly basis: string;
}

/** Cloth as it is bought. */
export interface Cloth { readonly fibre: FibreName; readonly weave: Weave; readonly areal: number; readonly failsAt: FailureStrains }

const woven = (pull: number, press: number, shear: number, basis: string): FailureStrains => ({ pull1: pull, press1: press, pull2: pull, press2: press, shear, basis });
const HAND_LAID = 'common practice (from memory) for cloth laid by hand';
const CARBON_UD: FailureStrains = {
  pull1: 0.0124, press1: 0.0056, pull2: 0.0043, press2: 0.0141, shear: 0.015,
  basis: 'measured: Acta Mech Autom 2025, 10.2478/ama-2025-0022 (1277, 572, 31.5 and 104 MPa over 103.0 and 7.36 GPa); shear from common practice',
};
const CARBON_CLOTH = woven(0.009, 0.0065, 0.015, `${HAND_LAID}; 400 to 700 MPa in bending over 45 to 60 GPa`);
const GLASS_CLOTH = woven(0.016, 0.012, 0.015, HAND_LAID), BASALT_CLOTH = woven(0.017, 0.012, 0.015, HAND_LAID);
const ARAMID_CLOTH = woven(0.013, 0.003, 0.015, `${HAND_LAID}; pressed, aramid gives way early`);

/** Cloths of the trade by weight. Another one is told by its own data (`PlyMaterial` in stiffener/ply.ts). */
export const CLOTHS = {
  'carbon twill 160': { fibre: 'carbon', weave: 'twill', areal: 160, failsAt: CARBON_CLOTH },
  'carbon twill 200': { fibre: 'carbon', weave: 'twill', areal: 200, failsAt: CARBON_CLOTH },
  'carbon twill 245': { fibre: 'carbon', weave: 'twill', areal: 245, failsAt: CARBON_CLOTH },
  'carbon plain 200': { fibre: 'carbon', weave: 'plain', areal: 200, failsAt: CARBON_CLOTH },
  'carbon unidirectional 150': { fibre: 'carbon', weave: 'unidirectional', areal: 150, failsAt: CARBON_UD },
  'carbon unidirectional 200': { fibre: 'carbon', weave: 'unidirectional', areal: 200, failsAt: CARBON_UD },
  'carbon unidirectional 300': { fibre: 'carbon', weave: 'unidirectional', areal: 300, failsAt: CARBON_UD },
  'glass twill 163': { fibre: 'glass', weave: 'twill', areal: 163, failsAt: GLASS_CLOTH },
  'glass twill 280': { fibre: 'glass', weave: 'twill', areal: 280, failsAt: GLASS_CLOTH },
  'aramid twill 170': { fibre: 'aramid', weave: 'twill', areal: 170, failsAt: ARAMID_CLOTH },
  'basalt twill 210': { fibre: 'basalt', weave: 'twill', areal: 210, failsAt: BASALT_CLOTH },
} as const satisfies Record<string, Cloth>;
export type ClothName = keyof typeof CLOTHS;

/** Grams of resin for each gram of cloth: as laid by hand, and what no laying can go beyond. Common practice; at 0.75 of the volume fibres touch all over. */
export const RESIN = { byHand: 1, least: 0.25, most: 2.5 } as const;

/** The least and the most of a ply's volume that is fibre: with less it is no ply, denser no fibres lie. Common practice. */
export const FIBRE_SHARE = { least: 0.1, most: 0.75 } as const;

/** Thinner than this no core can be cut, mm; softer in shear than this it ties nothing, MPa. Common practice. */
export const LEAST_CORE = 0.5, LEAST_CORE_SHEAR = 0.3;

/**
 * A core, or a layer that works with the stiffener. Shear is that between its two faces, which decides a core; it is told by
 * itself and only for foams and cork worked out from the modulus, over 2.6 (Poisson's ratio 0.3).
 */
export interface CoreMaterial {
  readonly density: number;
  readonly modulus: Spread;
  readonly shear: Spread;
  /** Shear stress at which it tears or splits, the weakest sold under the name. */
  readonly shearStrength: number;
  readonly basis: string;
  readonly bends: SheetBends;
}

/**
 * How a core comes to lie on the bottom of a last. Bent as it is sold, its faces are strained by half its thickness over the radius
 * it is bent to, and bear so much (`strain`) without cracking; thicker, it is glued up of several sheets bent together. Or it is moulded (`moulded`), and takes the form whatever it is.
 * @property sold thicknesses it is sold in, mm
 */
export interface SheetBends { readonly strain?: number; readonly moulded?: string; readonly sold: readonly number[]; readonly basis: string }

/** Glue between sheets of a core, g/m² on each joint. */
export const SHEET_GLUE = { perJoint: 200, basis: 'common practice (from memory), 150 to 250 g/m² of epoxy or wood glue, spread on one face' } as const;

const EVA_BENDS: SheetBends = { moulded: 'pressed on warm', sold: [2, 3, 4, 5, 6, 8, 10, 12], basis: 'common practice; warmed it takes the form' };
const EVA_BASIS = 'common practice (from memory), loaded slowly. Sheet is sold by hardness, but no modulus follows from a hardness read on foam (Shore A pins pierce it): the range stands for all sheets sold so, and a piece of the sheet in hand goes before it';
const foam = (density: number, least: number, counted: number, most: number, shearStrength: number, basis: string, bends = EVA_BENDS): CoreMaterial => ({
  density, modulus: { least, counted, most }, shear: { least: least / 2.6, counted: counted / 2.6, most: most / 2.6 }, shearStrength, basis, bends,
});

export const CORES = {
  'leather board': {
    density: 1, modulus: { least: 80, counted: 120, most: 250 }, shear: { least: 30, counted: 44, most: 90 }, shearStrength: 2.5,
    basis: 'common practice (from memory); wet board is far softer',
    bends: { moulded: 'moulded on the last wet, and dried there', sold: [1, 1.5, 2, 2.5, 3, 4], basis: 'common practice' },
  },
  'birch plywood': {
    density: 0.68, modulus: { least: 6_000, counted: 8_000, most: 10_000 }, shear: { least: 50, counted: 67, most: 170 }, shearStrength: 2.5,
    basis: 'common practice (from memory), thin plywood with the grain of its faces along the shoe; shear as its cross veneers roll',
    bends: { strain: 0.005, sold: [0.8, 1, 1.2, 1.5, 2, 2.5, 3, 4], basis: 'common practice (from memory): bent cold along its faces\' grain to about a hundred times its thickness' },
  },
  cork: foam(0.25, 4, 13, 17, 0.5, 'common practice (from memory); bound cork 17 MPa (Boria and others 2018, Procedia Struct Integr 12:317), softer with more rubber in it', { strain: 0.05, sold: [2, 3, 4, 5, 6, 8, 10, 12], basis: 'common practice (from memory): bound cork bends round ten times its thickness' }),
  'light EVA': foam(0.15, 1.5, 2.5, 4, 0.25, `sold as about 30 to 45 Asker C; ${EVA_BASIS}`),
  'firm EVA': foam(0.2, 3, 5, 8, 0.4, `sold as about 50 to 65 Asker C; ${EVA_BASIS}`),
  'hard EVA': foam(0.25, 5, 8, 12, 0.6, `sold as about 65 to 75 Asker C; ${EVA_BASIS}`),
} as const satisfies Record<string, CoreMaterial>;
export type CoreName = keyof typeof CORES;

/** Shear between two packs that lie on each other, and through a pack: that of the resin between its plies. */
export const BETWEEN_PLIES = { shear: EPOXY.modulus / (2 * (1 + EPOXY.poisson)), basis: 'of the resin; 1.2 GPa' } as const;

/** What an insole is of: modulus in its plane, MPa, that counts for as much of it as is bonded. */
export const INSOLES = {
  leather: { modulus: 60, basis: 'common practice (from memory); insole shoulder, 30 to 120 MPa, least when damp' },
  'leather board': { modulus: 120, basis: 'as the core of that name' },
  'fibre board': { modulus: 400, basis: 'common practice (from memory); cellulose insole board, 300 to 800 MPa dry' },
} as const satisfies Record<string, { readonly modulus: number; readonly basis: string }>;
export type InsoleName = keyof typeof INSOLES;

/** A strip of spring steel in the waist. It yields at the strain given. */
export const SPRING_STEEL = { density: 7.85, modulus: 206_000, yieldsAt: 0.0055, basis: 'handbook value of the modulus; hardened shank steel yields from about 1100 MPa (from memory)' } as const;

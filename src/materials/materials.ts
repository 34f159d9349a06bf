/** Densities in g/cm³. Foam hardness names its scale; hardness and density are not tied (trade practice). */
export interface Material { readonly density: number; readonly basis: string }

/**
 * How hard a layer is to squash upright, MPa, from softest to hardest of what is sold under its name. Neither density nor a
 * hardness read with a durometer tells it (Shore A should not be used on foams at all), so a piece of the sheet in hand, loaded
 * and measured, goes before any of these. They hold for small squash: a foam gives way when it loses about a tenth of its thickness.
 */
export interface Squashed extends Material { readonly modulus: readonly [softest: number, hardest: number]; readonly modulusBasis: string }

const SHOE_FOAM = 'common practice; shoe foams 0.15 to 0.25 g/cm³ (Verdejo and Mills 2002)';
const FOAM_MODULUS = 'common practice; firm shoe foam 3 to 8 MPa, soft about 1.5 MPa, loaded slowly';

/** Foams for the body. Source of the window: Verdejo and Mills 2002, 0.15 to 0.25 g/cm³ for shoe foams; single values are common practice. */
export const FOAMS = {
  'firm EVA': { density: 0.2, basis: SHOE_FOAM, modulus: [3, 8], modulusBasis: FOAM_MODULUS },
  'light EVA': { density: 0.15, basis: SHOE_FOAM, modulus: [1.5, 4], modulusBasis: FOAM_MODULUS },
  'hard EVA': { density: 0.25, basis: SHOE_FOAM, modulus: [5, 12], modulusBasis: `${FOAM_MODULUS}; harder sheet from memory` },
  cork: { density: 0.25, basis: 'common practice', modulus: [4, 17], modulusBasis: 'common practice; bound cork 17 MPa (Boria and others 2018, Procedia Struct Integr 12:317), softer with more rubber in it' },
} as const satisfies Record<string, Squashed>;
export type FoamName = keyof typeof FOAMS;

export const OUTSOLES = {
  'microcellular rubber': { density: 0.5, basis: 'common practice, 0.4 to 0.6 g/cm³', modulus: [2, 6], modulusBasis: 'common practice (from memory)' },
  'solid rubber': { density: 1.2, basis: 'common practice; vulcanised rubber 1.05 to 1.35 g/cm³', modulus: [20, 200], modulusBasis: 'common practice (from memory): 2 to 6 MPa as a block, many times that as a thin layer that cannot spread' },
  leather: { density: 1.0, basis: 'common practice, 0.95 to 1.05 g/cm³', modulus: [20, 100], modulusBasis: 'common practice (from memory)' },
} as const satisfies Record<string, Squashed>;
export type OutsoleName = keyof typeof OUTSOLES;

/**
 * What is cast in a mould: density of the set part in g/cm³, and by what share it comes out smaller than its cavity.
 * Poured foams differ from maker to maker and from day to day: the data sheet, or a trial piece that was weighed and
 * measured, goes before any of these.
 */
export interface Cast extends Material {
  readonly way: 'poured' | 'pressed';
  readonly shrink: number;
  readonly shrinkBasis: string;
}

const POURED_SHRINK = 'common practice, 0.5 to 1.5 %; commercial polyurethane castings hold ±0.5 % of a size (Taylor & Francis, b11488)';

export const CASTS = {
  'self-skinning PU': { way: 'poured', density: 0.5, basis: 'common practice, 0.35 to 0.6 g/cm³', shrink: 0.01, shrinkBasis: POURED_SHRINK },
  'soft self-skinning PU': { way: 'poured', density: 0.35, basis: 'common practice, 0.35 to 0.6 g/cm³', shrink: 0.012, shrinkBasis: POURED_SHRINK },
  'solid PU': { way: 'poured', density: 1.05, basis: 'common practice, 1.0 to 1.15 g/cm³ for casting rubber', shrink: 0.005, shrinkBasis: `${POURED_SHRINK}; what does not foam shrinks least` },
  'pressed EVA': { way: 'pressed', density: 0.25, basis: 'common practice; shoe foams 0.15 to 0.25 g/cm³ (Verdejo and Mills 2002), and the press makes them denser', shrink: 0.015, shrinkBasis: 'common practice, 1 to 2 % once cold; the true size is found by a trial piece' },
} as const satisfies Record<string, Cast>;
export type CastName = keyof typeof CASTS;

/** Contact cement for foam and rubber, g/m² on each of the two faces of a joint, as it is brushed on. */
export const CEMENT = { perFace: 150, basis: 'common practice, 100 to 200 g/m² on each face (from memory)' } as const;

/** Carbon and epoxy laid by hand, at equal weights of both: 1 / (0.5 / 1.8 + 0.5 / 1.2) = 1.44. */
export const STIFFENER: Material = { density: 1.44, basis: 'equal weights of carbon (1.8) and epoxy (1.2), common practice' };

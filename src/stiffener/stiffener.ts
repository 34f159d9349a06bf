import type { CoreMaterial } from '../materials/stiffeners.ts';
import type { Mm, Rad } from '../geometry/units.ts';
import type { Ply } from './ply.ts';

/** A stretch along the shoe, mm from the heel; all of the plate where it is left out. */
export interface Stretch { readonly from: Mm; readonly to: Mm }

/** The same all along, or by the place along the shoe. */
export type Along = number | ((x: Mm) => number);
export const at = (along: Along, x: Mm): number => (typeof along === 'number' ? along : along(x));

/** A ply and where it lies: a patch, where it has a stretch. */
export interface PlacedPly { readonly ply: Ply; readonly angle: Rad; readonly over?: Stretch }

/** Which of the numbers of a core or a foam is counted with. */
export type Counted = 'least' | 'counted' | 'most';

/** A core skived to less than the thinnest sheet is none there; where its stretch ends on the plate it is skived (`SKIVED`), so one that runs through has none, or one that reaches beyond. */
export interface CoreLayer { readonly name: string; readonly material: CoreMaterial; readonly thickness: Along; readonly over?: Stretch; readonly count?: Counted; readonly sheets?: Sheets }

/** Sheets a core is glued up of on the last, each mm thick. */
export interface Sheets { readonly count: number; readonly thickness: Mm }

/**
 * What lies on the stiffener and works with it a little: foam body, insole, a shank of steel.
 * @property bond 0 when it slides on the plate, 1 when it is one piece with it
 * @property width mm; that of the plate where it is left out
 */
export interface Attached {
  readonly name: string;
  readonly side: 'above' | 'below';
  readonly thickness: Along;
  readonly modulus: number;
  readonly bond: number;
  readonly width?: Mm;
  readonly over?: Stretch;
  /** Strain at which it yields, where it must not. */
  readonly yieldsAt?: number;
  /** G/cm³ of what comes with the stiffener and is weighed with it; foam and insole are part of the shoe anyhow. */
  readonly density?: number;
}

/** A stiffener as it is laid: all lists from the bottom up. Without a core, `below` and `above` lie on each other. */
export interface Stiffener {
  readonly below: readonly PlacedPly[];
  readonly above: readonly PlacedPly[];
  readonly core?: CoreLayer;
  readonly attached: readonly Attached[];
  /**
   * How much lower the middle of the plate lies than its edges, mm, by the place along the shoe. For how far the plate bends half of
   * one that is typed is counted: a plate flattens under load. Once the bench test has been read, what it gave is counted whole; of one
   * that nobody measured, none. What strains the plies counts the worst of it (`weakest`).
   */
  readonly camber?: { readonly height: Along; readonly counted: CamberCounted };
  /** Edges of the upper pack turned up, all along both sides: height over its upper face, mm. */
  readonly edges?: Mm;
}

/** Where a plate lies in the shoe, mm. */
export interface Plate {
  readonly from: Mm;
  readonly to: Mm;
  /** Width square to the shoe's axis. */
  readonly width: (x: Mm) => Mm;
  /** Height of the plate, for its shank's curve. */
  readonly rise?: (x: Mm) => Mm;
  /** Where the foot bears at the ball, on the tread line (`last.tread`), and where at the heel. */
  readonly ball: Mm;
  readonly heel: Mm;
  /** How far the edges of its layers are to keep from each other; they are all as wide as it where left out. */
  readonly stagger?: Mm;
}

/** The same with the softest, the counted or the stiffest of what is sold as its core. */
export const countedAs = (stiffener: Stiffener, count: Counted): Stiffener => (stiffener.core ? { ...stiffener, core: { ...stiffener.core, count } } : stiffener);

/** How much of a camber is counted for the bend. */
export type CamberCounted = 'none' | 'half' | 'whole';

export const lies = (over: Stretch | undefined, x: Mm): boolean => over === undefined || (x >= over.from && x <= over.to);

/** Places at which the plate changes: nothing is reckoned across them. */
export function breaksOf({ below, above, core, attached }: Stiffener): Mm[] {
  const all = [...below, ...above, ...attached, ...(core ? [core] : [])];
  return all.flatMap(({ over }) => (over ? [over.from, over.to] : []));
}

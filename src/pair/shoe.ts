import type { Fitting, ShoeFitting, SheetMatch } from '../fitting/fitting.ts';
import type { Side } from '../fitting/words.ts';
import type { Mm } from '../geometry/units.ts';
import type { Last } from '../last/last.ts';
import type { RockerOrder } from '../prescription/order.ts';
import type { Rocker } from '../profile/rocker.ts';
import type { SoleShape } from '../solid/soleShape.ts';
import type { Bodies, Solids } from '../solid/solids.ts';
import type { FootHeights } from './level.ts';
import type { Raise, RaiseTrouble } from './raise.ts';

interface AnyShoe {
  readonly side: Side;
  readonly fitting: ShoeFitting;
  readonly last: Last;
  /** Where the foot stands in the finished shoe. */
  readonly stands: FootHeights;
}

/** A shoe with a rocker. Its shape and solids are those of a LEFT shoe; a right one is mirrored when it leaves. */
export interface RockerShoe extends AnyShoe, SoleParts {
  readonly kind: 'rocker';
  readonly order: RockerOrder;
  readonly rocker: Rocker;
}

/** The other shoe, brought level by a plain raise. */
export interface MatchShoe extends AnyShoe {
  readonly kind: 'match';
  readonly order: SheetMatch;
  readonly raise: Raise;
  /** Seat height of the rocker it is matched to, as `order.seatHeightAtLeast` counts it. */
  readonly otherSeat: Mm;
  /** None where the pair is level already, or where the shoe cannot be raised. */
  readonly made: RaiseParts | undefined;
  /** Why it cannot be raised, where it should be. */
  readonly trouble: RaiseTrouble | undefined;
}

/** A sole as exact shape, as bodies between faces, and as meshes. */
export interface SoleParts { readonly shape: SoleShape; readonly bodies: Bodies; readonly solids: Solids }

/** The parts of a raise, and how thick it is at the tip, mm. */
interface RaiseParts extends SoleParts { readonly tip: Mm }

export type Shoe = RockerShoe | MatchShoe;

/** The shoes of one job, left before right. */
export interface Pair { readonly fitting: Fitting; readonly shoes: readonly Shoe[] }

export const partsOf = (shoe: Shoe): SoleParts | undefined => shoe.kind === 'rocker' ? shoe : shoe.made;

import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import type { Making } from './making.ts';
import type { FoamName, OutsoleName } from '../materials/materials.ts';
import type { ClothName, CoreName, FibreName, InsoleName, Weave } from '../materials/stiffeners.ts';
import type { Freedom, GradeWanted, Joint, JointState, LegFinding, PackSide, Risk, Sex, Side, PlateFinding, ToeRuleName, ToeShape } from './words.ts';
import type { Measure } from './measure.ts';

/**
 * A fitting sheet that has been read: every length in mm, every angle in radians, every missing measure estimated by
 * a named rule. Nothing here is a design yet: the order still holds only what the maker wrote.
 */
export interface Fitting {
  readonly version: 1;
  /** Units of the sheet; papers may repeat lengths in them. */
  readonly units: 'mm' | 'in';
  readonly job: Job;
  readonly wearer: Wearer;
  /** One or both shoes, each with its own foot, last and order. */
  readonly shoes: { readonly left?: ShoeFitting; readonly right?: ShoeFitting };
  readonly making: Making;
  readonly overrides: readonly Override[];
}

export interface Job {
  /** Letters, digits, dot, dash and underscore: it becomes part of file names. */
  readonly reference: string;
  /** ISO date (year-month-day) the papers carry; nothing in the files comes from the clock. */
  readonly date: string;
  readonly maker?: string;
  readonly prescriber?: string;
  /** ISO date of the prescription. */
  readonly prescribed?: string;
  readonly note?: string;
}

export interface Wearer {
  readonly mass?: Measure;
  readonly stature?: Measure;
  readonly crotchHeight?: Measure;
  readonly sex?: Sex;
  /** The risks that are present: none, too, where nobody asked. */
  readonly risks: readonly Risk[];
  /** True where the sheet says that risks were asked about, be it with an empty list. */
  readonly risksAsked: boolean;
  readonly legDifference: LegDifference;
}

/** The leg-length difference the prescriber wants corrected. Never estimated. */
export interface LegDifference {
  /** How much higher the shorter leg is to stand, mm, 0 when none is to be corrected. */
  readonly correct: Mm;
  readonly shorter?: Side;
  readonly found: LegFinding;
}

export interface ShoeFitting {
  readonly side: Side;
  /** Present for a rocker; a match needs none. */
  readonly foot?: Foot;
  readonly last: LastMeasures;
  readonly order: SheetOrder;
  /** What all above the new sole weighs, g, where it was weighed. */
  readonly upperWeight?: number;
}

export interface Foot {
  readonly joint: Joint;
  readonly state: JointState;
  /** True when the ankle must not bend (ankle itself, or a prosthetic foot). */
  readonly ankleLocked: boolean;
  readonly length: Measure;
  readonly ballInner: Measure;
  readonly ballOuter: Measure;
  readonly pivotForward: Measure;
  readonly pivotHeight: Measure;
  readonly hipHeight: Measure;
  readonly stance: Stance;
  /** Roll angle at heel strike, as a positive angle (toe up). */
  readonly strikeAngle: Measure;
  readonly toeOffAngle?: Measure;
  readonly prosthesis?: Prosthesis;
  /** The outer ankle bone, where it was measured: floor to its most lateral point, barefoot. */
  readonly malleolusHeight?: Measure;
  /** What was read on heel plates, where a fixed ankle angle was found with them. */
  readonly heelPlates?: HeelPlates;
  /** Movement that a locked ankle has left, up and down together, radians; none where left out. */
  readonly ankleRange?: Measure;
  /** How this leg was seen to walk. */
  readonly walk?: Walk;
}

/** The shank over one stance, radians forward of upright: three angles from a side video, or a table from heel contact to toe-off. */
export type Walk =
  | { readonly kind: 'angles'; readonly contact: Measure; readonly midStance: Measure; readonly toeOff: Measure }
  | { readonly kind: 'table'; readonly rows: readonly StanceRow[] };

/** One line of the table: share of stance 0 to 1, shank, and where it was taken the floor's upright push in body weights. */
export interface StanceRow { readonly share: number; readonly shank: number; readonly push?: number }

/** The client at ease on plates under the heel end of a stiff board, plumb line from the trochanter; mm. */
export interface HeelPlates {
  readonly height: Measure;
  readonly span: Measure;
  readonly hipAhead: Measure;
}

export type Stance =
  /** Ankle that must not bend: fixed dorsiflexion (negative = pointed foot), radians. */
  | { readonly kind: 'locked'; readonly ankleAngle: Measure; readonly found: PlateFinding }
  /** Ankle free: hip ahead of the ankle in quiet standing, mm. */
  | { readonly kind: 'free'; readonly hipAhead: Measure };

export interface Prosthesis {
  /** Heel rise the foot was aligned to, mm. */
  readonly heelRise: Measure;
  /** Aligned lean of the shank, radians, 0 when not given. */
  readonly shankLean: Measure;
  /** Name of the prosthetist who agrees with another heel rise. */
  readonly prosthetist?: string;
}

export interface LastMeasures {
  readonly length: Measure;
  readonly pitch: Measure;
  readonly toeSpring: Measure;
  readonly seatLength: Measure;
  readonly tread: Measure;
  readonly heelBack: Measure;
  readonly camber: Measure;
  readonly ballWidth: Measure;
  readonly heelWidth: Measure;
  readonly innerBall: Measure;
  readonly outerBall: Measure;
  readonly inflare: Measure;
  readonly insole: Measure;
  readonly toeShape: ToeShape;
  readonly heights?: readonly Point[];
}

/** Lean of the walls, radians: positive leans in towards the ground (taper), negative out (flare). */
export interface Tapers { readonly heelInner: number; readonly heelOuter: number; readonly foreInner: number; readonly foreOuter: number }
export interface EdgeWidths { readonly heel: Mm; readonly ball: Mm; readonly toe: Mm }
export interface OutsoleOrder { readonly thickness: Mm; readonly material: OutsoleName }
/** Least vertical thickness of the whole stack by zone, mm. */
export interface Minima { readonly edge: Mm; readonly seat: Mm; readonly waist: Mm; readonly tread: Mm; readonly tip: Mm }

/** What both kinds of order share: how the sole is built. */
interface SheetBuild {
  readonly taper: Tapers;
  readonly edgeBeyond: EdgeWidths;
  readonly outsole: OutsoleOrder;
  readonly foam: FoamName;
}

export interface SheetRocker extends SheetBuild {
  readonly kind: 'rocker';
  /** Apex as a share of the last's length from the heel (0.65 = 65 %), when the maker gave one. */
  readonly apex?: number;
  readonly toe: ToeOrder;
  readonly standingFlat: Mm;
  /** Apex line against the long axis, radians; a right angle is square across. */
  readonly crestAngle: number;
  /** Thickness, mm. Of a pack that is wanted or laid a usual one, until `designWith` has worked it out. */
  readonly stiffener: Mm;
  /** What is wanted of the stiffener or laid, where the sheet says more than a thickness. */
  readonly pack?: PackOrder;
  /** What the pack weighs, g, once it was worked out. */
  readonly packGrams?: number;
  readonly minima: Minima;
  /** The seat is to stand at least this high, when the maker gave it. */
  readonly seatHeightAtLeast?: Mm;
  /** Limits to work backwards from; they change nothing of what is made. */
  readonly targets?: Targets;
}

/** The least and the most a measure may become, inside units (mm, radians, shares of one); open where left out. */
export interface OpenSpan { readonly least?: number; readonly most?: number }

/** Limits on what is seen of a shoe, and what may be changed to keep to them. */
export interface Targets {
  readonly seatHeightAtMost?: Mm;
  readonly ballHeightAtMost?: Mm;
  readonly ballThicknessAtMost?: Mm;
  readonly tipAtMost?: Mm;
  /** No limit: what it is missed by counts as a loss. */
  readonly tipWanted?: Mm;
  readonly toeSpringAtLeast?: Mm;
  readonly toeSpringAtMost?: Mm;
  /** g. */
  readonly weightAtMost?: number;
  /** How far the seats may differ before the pair is brought level. */
  readonly seatDifferenceAtMost?: Mm;
  readonly free: readonly Freedom[];
  readonly spans: { readonly apex?: OpenSpan; readonly toeRadius?: OpenSpan; readonly standingFlat?: OpenSpan; readonly strikeAngle?: OpenSpan; readonly pitch?: OpenSpan; readonly lastSpring?: OpenSpan };
}

/** What is wanted of a stiffener, or what is laid. */
export interface PackOrder {
  readonly wanted: GradeWanted;
  /** The most it is to bend at the ball, radians; in place of the grade. */
  readonly bendAtMost?: number;
  readonly ply: PlyOrder;
  /** g of resin for each g of cloth, where the maker gave it. */
  readonly resin?: number;
  /** Cloth of the outermost plies of a pack that is sought. */
  readonly outerCloth?: ClothName;
  /** Another resin than epoxy. */
  readonly ownResin?: OwnResin;
  /** Left open where the maker leaves it to the search. */
  readonly core?: CoreName | 'none' | OwnCore;
  readonly coreThickness?: Mm;
  /** At the ball; that of the last where left out. */
  readonly camber?: Mm;
  readonly edges: Mm;
  readonly underFoam: boolean;
  readonly thicknessAtMost: Mm;
  /** How far foam body, insole and shank bend as one with the plate: 0 not at all, 1 as one piece. */
  readonly bond: number;
  readonly insole: InsoleName;
  /** A strip of spring steel on the plate, mm from the heel. */
  readonly shank?: ShankOrder;
  /** What is laid, from the bottom up. */
  readonly plies?: readonly LaidPly[];
  /** Bench test of what is laid. */
  readonly bench?: { readonly mass: number; readonly droop: Mm; readonly lever?: Mm; readonly atTread?: Mm };
}

/** A ply as it is laid, of the pack's cloth unless it names another. @property ply undefined where `cloth` names none that is known */
export interface LaidPly { readonly pack: PackSide; readonly angle: number; readonly from?: Mm; readonly to?: Mm; readonly cloth?: string; readonly ply?: PlyOrder; readonly resin?: number }

/** A resin by its data: g/cm³, MPa. */
export interface OwnResin { readonly name: string; readonly density: number; readonly modulus: number; readonly poisson: number }
/** A fibre by its data: g/cm³, MPa, strains of a ply laid of it, along the fibre, as shares. */
export interface OwnFibre { readonly density: number; readonly along: number; readonly across: number; readonly shear: number; readonly poisson: number; readonly pulled: number; readonly pressed: number }

/** A cloth of the list, one told by its weight, or a finished ply that was measured (MPa, g/cm³, strains as shares). */
export type PlyOrder =
  | { readonly kind: 'cloth'; readonly cloth: ClothName }
  | { readonly kind: 'own cloth'; readonly name: string; readonly fibre: FibreName | OwnFibre; readonly weave: Weave; readonly areal: number; readonly thickness?: Mm }
  | { readonly kind: 'measured'; readonly name: string; readonly thickness: Mm; readonly density: number; readonly along: number; readonly across: number; readonly shear: number; readonly poisson: number; readonly pulled: number; readonly pressed: number; readonly sheared: number };

export interface ShankOrder { readonly thickness: Mm; readonly width: Mm; readonly from: Mm; readonly to: Mm }

export interface OwnCore { readonly name: string; readonly density: number; readonly modulus: number; readonly shear: number; readonly shearStrength: number; /** Strain its faces bear when it is bent cold, where it is not moulded. */ readonly bendsTo?: number; /** It is bought so thick. */ readonly sheet?: Mm }

export interface ToeOrder {
  readonly rule: ToeRuleName;
  /** For `given`, mm. */
  readonly radius?: Mm;
  /** For `for-toe-spring`, mm: wanted toe spring of the shoe. */
  readonly toeSpring?: Mm;
  /** For `for-toe-off`, radians: wanted roll angle at the tip. */
  readonly toeOff?: number;
  /** Where the arc ends and runs on straight, radians. */
  readonly endAngle?: number;
}

export interface SheetMatch extends SheetBuild {
  readonly kind: 'match';
  /** Floor to where the foot's heel stands, inside the shoe at the centre of the seat, as the shoe is now, mm. */
  readonly seatHeightNow: Measure;
  /** Floor to where the ball of the foot stands, inside the shoe, as the shoe is now, mm. */
  readonly ballHeightNow: Measure;
  /** Thickness left at the tip, mm; left open, it is as thin as the raise lets it be. */
  readonly tip?: Mm;
}

export type SheetOrder = SheetRocker | SheetMatch;

/** A stop the maker takes on his own name. It stands on every paper. */
export interface Override { readonly code: string; readonly side?: Side; readonly by: string; readonly reason: string }

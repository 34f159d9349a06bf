import type { LayerWords } from '../../src/checks/packWords.ts';
import type { Finding } from '../../src/checks/finding.ts';
import type { Figure } from '../../src/checks/figures.ts';
import type { TroubleWords } from '../../src/checks/troubleWords.ts';
import type { Paper } from '../../src/exports/drawing.ts';
import type { View } from '../../src/exports/view.ts';
import type { LengthUnit } from '../../src/fitting/lengthUnit.ts';
import type { Fault } from '../../src/fitting/readSheet.ts';
import type { MakingName, Side } from '../../src/fitting/words.ts';
import type { Point } from '../../src/geometry/point.ts';
import type { Mm } from '../../src/geometry/units.ts';
import type { NamesBeside } from '../../src/making/shownNames.ts';
import type { LaidLayer } from '../../src/stiffener/layers.ts';
import type { Walking } from '../../src/walk/walking.ts';

/** What counts where a field of the sheet is empty: a number in mm, degrees or percent, or a word. By the field's path. */
export type Used = Readonly<Record<string, number | string>>;

/** What the page asks of the worker. A design's sentences name lengths in `lengths`, whatever the sheet is written in; its numbers are not changed by it. Each ask carries a number that comes back with its answer; a newer ask makes an older one stale. */
export type Ask =
  | { readonly kind: 'design'; readonly id: number; readonly sheet: string; readonly paper: Paper; readonly lengths: LengthUnit; readonly chordGap: Mm; readonly extras: ExtrasAsked }
  | { readonly kind: 'files'; readonly id: number; readonly sheet: string }
  | { readonly kind: 'fields'; readonly id: number };

export type DeskAnswer =
  | { readonly kind: 'design'; readonly id: number; readonly outcome: Outcome }
  | { readonly kind: 'files'; readonly id: number; readonly files: readonly FileShown[] }
  | { readonly kind: 'fields'; readonly id: number; readonly fields: readonly FieldShown[] }
  | { readonly kind: 'failed'; readonly id: number; readonly text: string };

/** A sheet that must be corrected, measures that leave no shape, or a checked pair ready to be looked at. */
export type Outcome =
  | { readonly kind: 'faults'; readonly faults: readonly FaultShown[] }
  | { readonly kind: 'troubles'; readonly troubles: readonly TroubleWords[] }
  | { readonly kind: 'shown'; readonly shown: Shown };

/** A fault, and the field or group that may be taken off the sheet to be rid of it. */
export interface FaultShown extends Fault { readonly leaveOut?: string }

export interface Shown {
  readonly side: SvgShown;
  /** Only where the hand rests. */
  readonly plan?: PlanShown;
  readonly handles: readonly Handle[];
  /** Where each shoe stands on the side drawing. */
  readonly places: readonly { readonly side: Side; readonly view: View }[];
  readonly shoes: readonly ShoeShown[];
  /** Only where the hand rests. */
  readonly used?: Used;
  readonly findings: readonly Finding[];
  /** Codes of the findings that are about what is made besides the soles: some wait while a hand drags. */
  readonly besides: readonly string[];
  readonly mouldFaults: readonly Fault[];
  /** What is ordered besides the soles, is made, and can be looked at as a solid. Only where the hand rests. */
  readonly beside?: readonly NamesBeside[];
  /** Only where it is asked for and the hand rests. */
  readonly walking?: WalkShown;
  /** The stiffener of each shoe that rolls. Only where it is asked for and the hand rests. */
  readonly stiffeners?: readonly StiffenerShown[];
}

/** The stiffener of one shoe: its thickness, and where more is known of it how it is laid and bends. */
export interface StiffenerShown {
  readonly side: Side;
  readonly thickness: Mm;
  /** Whether the sheet tells what the client weighs: without it no pack can be sought. */
  readonly massKnown: boolean;
  readonly pack?: PackShown;
}

export interface PackShown {
  /** As laid or as found, how it is laid in short, and how stiff it is. */
  readonly by: string;
  readonly laid: string;
  readonly grade: string;
  /** From the last down. Mm and degrees besides the words. */
  readonly layers: readonly (LayerWords & Pick<LaidLayer, 'what'> & { readonly thick: Mm; readonly turned?: number; readonly over?: readonly [Mm, Mm] })[];
  readonly thick: string;
  readonly plate: { readonly from: Mm; readonly to: Mm; readonly ball: Mm; readonly heel: Mm };
  readonly loads: readonly LoadShown[];
  /** [along in mm, bend stiffness in N·m², strain in walking in %], from heel to toe; and what strain it is to keep below. */
  readonly along: readonly (readonly [x: Mm, stiffness: number, strain: number])[];
  readonly strainAtMost: number;
  /** Behind numbers that rest on an estimate. */
  readonly est: string;
}

/** A stiffener under a load: both of the bench card, the hardest moment of walking, a stumble. */
export interface LoadShown {
  readonly of: 'finished shoe' | 'bare pack' | 'walking' | 'stumble';
  /** In few words: what it is called, what it does, and how much it is; then all of it in sentences. */
  readonly name: string;
  readonly does: string;
  readonly load: string;
  readonly words: string;
  /** Where it acts, mm from the heel. */
  readonly at: Mm;
  /** [along, height at rest, how far it moved towards the foot], from heel to toe, mm; none where it is far too soft to be told. */
  readonly shape: readonly (readonly [Mm, Mm, Mm])[];
  /** On the bench: where the clamp ends, mm from the heel, what hangs at the load line, and how far that goes down. */
  readonly clamp?: { readonly at: Mm; readonly hung: string; readonly droop: string };
}

/** The pair as it walks: what lays each shoe on the floor at any moment of a step, what the shoes look like, and the step in figures. */
export interface WalkShown {
  readonly walking: Walking;
  /** In the order of the shoes that walk. */
  readonly shoes: readonly ShoeWalkShown[];
  /** How each rocker stands. */
  readonly standing: readonly StandShown[];
  /** What drives the roll and where that comes from, in sentences. */
  readonly told: readonly string[];
  /** Figures of the pair: how one step differs from the other. */
  readonly differences: readonly FigureRow[];
}

/** One shoe as it is walked on, at rest. Its pictures are the text of SVG paths, [along the walking line, height] with y down, mm; its tip is where its upper face ends, y up. */
export interface ShoeWalkShown {
  readonly side: Side;
  /** A sole that rolls as it is cut, and the lines of its layers; a shoe that bends is drawn after its walk's own shape. */
  readonly cut?: { readonly outline: string; readonly layers: string; readonly tip: Point };
  readonly estimated: boolean;
  /** Told of its own step and, where it rolls, of an ordinary shoe in its place. */
  readonly columns: readonly string[];
  readonly figures: readonly FigureRow[];
}

/** A picture of one rocker standing still, each mark as the text of its SVG, and what it says in words. */
export interface StandShown { readonly side: Side; readonly paper: Paper; readonly marks: readonly string[]; readonly words: string }

/** A figure with a value for each column, in words; empty where it does not apply. */
export interface FigureRow { readonly label: string; readonly cells: readonly string[] }

/** The side drawing, each mark as the text of its SVG: a page takes that in faster than the marks themselves. */
export interface SvgShown {
  readonly paper: Paper;
  readonly title: string;
  readonly marks: readonly string[];
  /** Only what is thick: enough to lay under another drawing. */
  readonly outlines: string;
}

/** The plan as the text of its marks, and what a footprint is laid out by. */
export interface PlanShown { readonly drawing: Omit<SvgShown, 'outlines'>; readonly soles: readonly SoleSeen[] }

/** One sole from above, [x forward from the heel, y to the wearer's left], mm. */
export interface SoleSeen {
  readonly side: Side;
  /** Where it lies on the paper of the plan. */
  readonly view: View;
  /** The foot from its back to its longest toe: where each lies along the sole. */
  readonly foot: readonly [heel: Mm, toe: Mm];
  /** From the inner to the outer toe joint. */
  readonly ball: readonly [inner: Point, outer: Point];
  /** Around the bottom of the last, closed. */
  readonly outline: readonly Point[];
}

export interface ShoeShown {
  readonly side: Side;
  readonly kind: 'rocker' | 'match';
  readonly figures: readonly Figure[];
  /** Thickness of the stiffener on the foam, mm. */
  readonly stiffener: Mm;
  /** Those of the sole, and those asked for besides. */
  readonly solids: readonly SolidShown[];
  /** Only where the hand rests. */
  readonly ordinary?: OrdinaryShown;
}

/** A plain sole under the same outline, and how high the face it is glued to is above the floor at the centre of the seat. */
export interface OrdinaryShown { readonly solids: readonly SolidShown[]; readonly seatHeight: Mm }

/** What is worked out only while it is looked at: solids, the walk and the stiffeners; what is made besides the sole, the walk and the stiffeners only where the hand rests. */
export interface ExtrasAsked { readonly beside: readonly MakingName[]; readonly foot: boolean; readonly walk?: boolean; readonly packs?: boolean }

export type SolePart = 'whole sole' | 'foam' | 'outsole' | 'foot';
/** A part of what is made besides the sole is called after its thing too. */
export type PartName = SolePart | `${MakingName}: ${string}`;

/** A closed body as it stands in the world: x forward, y to the wearer's left, z up, ground at 0, mm. A right shoe is mirrored already. */
export interface SolidShown {
  readonly part: PartName;
  /** x, y, z of each corner. */
  readonly positions: Float32Array;
  /** Three corners a facet, outside out. */
  readonly triangles: Uint32Array;
}

export interface FileShown { readonly name: string; readonly bytes: Uint8Array }

/** A place on the side drawing that can be dragged or moved with the arrow keys, and the field of the sheet it moves. */
export interface Handle {
  readonly id: string;
  readonly label: string;
  /** On the paper of the side drawing, mm from its upper left corner, y down. */
  readonly at: readonly [Mm, Mm];
  readonly moves: 'along' | 'up';
  /** The field, like `right.order.apex`, what else must be set (or, null, taken out) with it, and the value now in the sheet's own unit. */
  readonly path: string;
  readonly also?: Readonly<Record<string, string | null>>;
  readonly value: number;
  readonly unit: string;
  /** How much the value grows for each mm of paper along or up, and for each mm on the shoe. */
  readonly perPaper: number;
  readonly perMm: number;
  readonly least: number;
  readonly most: number;
}

/** A field of the sheet as the page asks for it. */
export interface FieldShown {
  /** Like `left.foot.pivotForward`. */
  readonly path: string;
  readonly label: string;
  readonly help: string;
  /** `length` follows the units of the sheet. */
  readonly unit: string;
  readonly kind: 'number' | 'word' | 'ticks' | 'text' | 'lines' | 'date' | 'yes' | 'list';
  readonly words?: readonly string[];
  /** Of ticks: one of them is needed. */
  readonly some?: boolean;
  /** May say how it was taken, and that it was taken twice. */
  readonly measured?: boolean;
  /** May say how surely. */
  readonly accuracy?: boolean;
  /** Asked only for a shoe of this kind. */
  readonly forKind?: 'rocker' | 'match';
  /** Of what is told either as a number or as a group of fields: where, and for which of both it is asked. */
  readonly either?: { readonly at: string; readonly as: 'number' | 'group' };
  /** Of a word in whose place a number may be told, never both: where that is, how it is chosen, and what each word stands for to begin with. The number's own field is `inPlaceOf` the word's. */
  readonly orNumber?: { readonly at: string; readonly words: string; readonly from: Readonly<Record<string, number>> };
  readonly inPlaceOf?: string;
  /** Of a list: what is told in each row, its path going on from that of the row, like `.thickness` or `[0]`; and what a row is called. */
  readonly columns?: readonly FieldShown[];
  readonly row?: string;
  /** Of a column: a row must have it. */
  readonly required?: boolean;
}

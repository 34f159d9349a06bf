import type { Mm } from '../geometry/units.ts';
import type { CastName, FoamName } from '../materials/materials.ts';
import type { BlockFaces, Closing, CutterEnd, JigFace, MouldMaker, MouldPart, PaperSize, ShoreScale, WayOfMaking } from './words.ts';

/** What the workshop has, and what it wants made besides the soles: each thing only where it is ordered. */
export interface Making {
  /** Largest gap between a flat facet and the true surface, mm. */
  readonly chordGap: Mm;
  readonly tool?: Tool;
  readonly printBed?: Bed;
  readonly board: BoardOrder;
  readonly rack: readonly RackSheet[];
  readonly mould?: MouldOrder;
  readonly block?: BlockOrder;
  readonly print?: PrintOrder;
  readonly jig?: JigOrder;
  readonly gauges?: GaugeOrder;
  readonly stack?: StackOrder;
  readonly plies?: PliesOrder;
  readonly templates?: TemplateOrder;
  readonly wedges?: WedgeOrder;
  readonly card?: CardOrder;
}

/** The cutter of the router. Reach: from its tip to where the holder begins. */
export interface Tool { readonly diameter: Mm; readonly reach: Mm; readonly end: CutterEnd }

export interface Bed { readonly x: Mm; readonly y: Mm; readonly z: Mm }

/** The board that jigs, gauges and wedges are cut from, and the machine that cuts it. */
export interface BoardOrder {
  /** As measured on the board itself; a label is up to 10 % off. */
  readonly thickness: Mm;
  /** False where nobody measured it, and the usual one is taken. */
  readonly measured: boolean;
  readonly length: Mm;
  readonly width: Mm;
  /** Width of the cut: of the beam, or of the cutter. */
  readonly kerf: Mm;
  /** How much wider a slot is than the board that goes in. */
  readonly clearance: Mm;
  /** Least distance between two parts, and from a part to the board's edge. */
  readonly apart: Mm;
}

/** A sheet of foam, cork or rubber in the rack. */
export interface RackSheet {
  readonly name: string;
  /** Of what it is, where the rack says so. */
  readonly material?: FoamName;
  /** As measured. */
  readonly thickness: Mm;
  readonly hardness?: { readonly value: number; readonly scale: ShoreScale };
  /** g/cm³. */
  readonly density: number;
  /** Per m², in the workshop's own money. */
  readonly price?: number;
  readonly length: Mm;
  readonly width: Mm;
  /** True where the sheet does not say, and the usual rack is taken. */
  readonly usual: boolean;
}

export interface MouldOrder {
  readonly part: MouldPart;
  /** What is cast: its density once set, g/cm³, and what that and the shrink rest on. */
  readonly cast: { readonly name: CastName; readonly density: number; readonly densityBasis: string; readonly shrinkBasis: string };
  readonly by: MouldMaker;
  readonly closing: Closing;
  /** Diameter of the bolt holes, and width that the jaws of the clamps want, mm. */
  readonly bolt: Mm;
  readonly ledge: Mm;
  /** Radians the walls must lean in for the part to come out. */
  readonly draft: number;
  /** Stretch along length, width and height, e.g. 1.012 for 1.2 % shrink. */
  readonly shrink: readonly [number, number, number];
  /** Width of the rim round the cavity, mm. */
  readonly rim: Mm;
  /** Least thickness under the cavity, and of the lid, mm. */
  readonly floor: Mm;
  readonly dowel: Mm;
  readonly pourHole: Mm;
  readonly ventHole: Mm;
  /** Cavity split along the long axis into two halves, for walls that flare. */
  readonly split: boolean;
}

/** The block a foam body is cut from: glued up from sheets of one thickness. */
export interface BlockOrder {
  readonly length: Mm;
  readonly width: Mm;
  /** Thickness of one sheet, and how many are glued up; as many as are needed where left open. */
  readonly sheet: Mm;
  readonly sheets?: number;
  readonly faces: BlockFaces;
  /** Foam left between the part and whatever else there is in the block. */
  readonly margin: Mm;
  readonly dowel: Mm;
  readonly tab: { readonly width: Mm; readonly height: Mm };
  /** Ridge that a ball end may leave between two passes. */
  readonly scallop: Mm;
}

/** @property split in two parts at the waist, held by a key and pins */
export interface PrintOrder { readonly part: MouldPart; readonly split: boolean; readonly pin: Mm; readonly clearance: Mm }

/** A cradle for the lasted shoe, upside down, and rails along which its sole is cut. */
export interface JigOrder {
  /** Which face the rails carry. */
  readonly face: JigFace;
  /** Largest distance between two ribs. */
  readonly ribsApart: Mm;
  /** Room beside the sole for the upper and its padding. */
  readonly room: Mm;
  /** How far the upper hangs down from its feather line. */
  readonly depth: Mm;
  /** Guide bush and cutter of a router that runs along the rails. */
  readonly bush?: { readonly diameter: Mm; readonly cutter: Mm };
}

/** @property depth how far the body of a gauge reaches beyond the line it is held to */
export interface GaugeOrder { readonly depth: Mm }

/**
 * @property trim left standing all round for the grinding wheel
 * @property layerSaves thickness of foam over the whole sole that a layer more must save
 * @property apart least distance between two layers on a sheet and to its edge
 * @property heel name of the sheet in the rack that all layers under the heel but the first are of
 * @property forepart the same ahead of the ball
 */
export interface StackOrder { readonly glueLine: Mm; readonly trim: Mm; readonly layerSaves: Mm; readonly apart: Mm; readonly heel?: string; readonly forepart?: string }

/**
 * Plies of the stiffener, cut and laid by hand.
 * @property rollWidth of the cloth
 * @property stagger how far the edges of any two plies keep from each other
 * @property spare share of resin mixed beyond what stays in the plies
 * @property hardener g to 100 g of resin
 */
export interface PliesOrder { readonly rollWidth: Mm; readonly stagger: Mm; readonly spare: number; readonly hardener: number }

export interface TemplateOrder { readonly paper: PaperSize; readonly overlap: Mm }

/** @property step how far the apex moves either way  @property flat standing flat of those that have one */
export interface WedgeOrder { readonly step: Mm; readonly flat: Mm }

/** @property way how the soles are made; from what else is ordered where left open */
export interface CardOrder { readonly way?: WayOfMaking }

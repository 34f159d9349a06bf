import { CHORD_GAP } from '../geometry/tolerances.ts';
import { degrees } from '../geometry/units.ts';
import { CASTS, FOAMS } from '../materials/materials.ts';
import type { Readable } from './checkShape.ts';
import type { Bed, BlockOrder, BoardOrder, CardOrder, GaugeOrder, JigOrder, Making, MouldOrder, PliesOrder, PrintOrder, RackSheet, StackOrder, TemplateOrder, Tool, WedgeOrder } from './making.ts';
import type { RawSheet } from './schema.ts';
import { given } from './taken.ts';
import { MAKINGS, type MakingName } from './words.ts';

type RawMaking = Readable<NonNullable<RawSheet['making']>>;
type RawGroup<Name extends keyof RawMaking> = NonNullable<RawMaking[Name]>;

/** What is usual in a workshop, common practice of the trade; mm, and radians. */
const BOARD: Omit<BoardOrder, 'measured'> = { thickness: 6, length: 600, width: 400, kerf: 0.15, clearance: 0.1, apart: 5 };
const MOULD = { by: 'routed', draft: degrees(3), floor: 12, dowel: 8, pourHole: 12, ventHole: 3, split: false, bolt: 6.6, ledge: 20 } as const;
/** Round a cavity that is poured; pressed foam wants room for the flash groove as well. */
const RIM = { poured: 20, pressed: 28 };
/** A rim narrower than this has no room for the washers of usual bolts. */
const RIM_FOR_BOLTS = 13;
const BLOCK = { length: 380, width: 170, sheet: 20, faces: 'both faces', margin: 10, dowel: 8, scallop: 0.1 } as const;
const TAB = { width: 7, height: 2.5 };
const PRINT: PrintOrder = { part: 'foam body', split: false, pin: 6, clearance: 0.25 };
const JIG: JigOrder = { face: 'ground face', ribsApart: 35, room: 12, depth: 100 };
const GAUGES: GaugeOrder = { depth: 30 };
const STACK: StackOrder = { glueLine: 0.15, trim: 2.5, layerSaves: 1, apart: 3 };
/** Spare and hardener by weight; whoever makes the resin decides on the hardener. */
export const USUAL_PLIES: PliesOrder = { rollWidth: 1000, stagger: 1, spare: 0.15, hardener: 30 };
export const USUAL_TEMPLATES: TemplateOrder = { paper: 'A4', overlap: 10 };
const WEDGES: WedgeOrder = { step: 5, flat: 30 };

/** Sheets that most workshops have, as their labels say. */
const USUAL_RACK: readonly RackSheet[] = [3, 6, 10, 12, 20].map((thickness) => ({
  name: `EVA ${thickness}`, thickness, hardness: { value: 50, scale: 'Shore A' }, density: FOAMS['firm EVA'].density, length: 1150, width: 950, usual: true,
}));

/** What the workshop has and wants, with what is usual filled in. */
export function readMaking(raw: RawMaking): Making {
  return {
    chordGap: raw.chordGap ?? CHORD_GAP, board: boardOf(raw.board ?? {}), rack: raw.rack?.map(rackSheetOf) ?? USUAL_RACK,
    ...given({ tool: raw.tool && toolOf(raw.tool), printBed: raw.printBed && bedOf(raw.printBed) }),
    ...given({
      mould: raw.mould && mouldOf(raw.mould), block: raw.block && blockOf(raw.block), print: raw.print && filled(PRINT, raw.print), jig: raw.jig && jigOf(raw.jig),
      gauges: raw.gauges && filled(GAUGES, raw.gauges), stack: raw.stack && filled(STACK, raw.stack), plies: raw.plies && filled(USUAL_PLIES, raw.plies), templates: raw.templates && filled(USUAL_TEMPLATES, raw.templates),
      wedges: raw.wedges && filled(WEDGES, raw.wedges), card: raw.card && cardOf(raw.card),
    }),
  };
}

const filled = <Order extends object>(usual: Order, asked: { readonly [K in keyof Order]?: Order[K] | undefined }): Order => ({ ...usual, ...given(asked) });

const boardOf = (raw: RawGroup<'board'>): BoardOrder => ({ ...BOARD, ...given(raw), measured: raw.thickness !== undefined });
const toolOf = ({ diameter = NaN, reach = NaN, end = 'ball' }: RawGroup<'tool'>): Tool => ({ diameter, reach, end });
const bedOf = ({ x = NaN, y = NaN, z = NaN }: RawGroup<'printBed'>): Bed => ({ x, y, z });
const cardOf = ({ way }: RawGroup<'card'>): CardOrder => given({ way });

const rackSheetOf = ({ name, material, thickness, hardness, density, price, length, width }: RawGroup<'rack'>[number]): RackSheet =>
  ({ name, thickness, density, length, width, usual: false, ...given({ material, hardness, price }) });

function mouldOf({ part = 'foam body', material = 'self-skinning PU', density, shrink = {}, ...rest }: RawGroup<'mould'>): MouldOrder {
  const { way, density: usual, basis, shrink: all, shrinkBasis } = CASTS[material], { length = all, width = all, height = all } = shrink;
  const rim = rest.rim ?? RIM[way], closing = rest.bolt === undefined && rim < RIM_FOR_BOLTS ? 'clamps' : 'bolts';
  const own = [shrink.length, shrink.width, shrink.height].filter((value) => value !== undefined).length;
  return {
    closing, ...MOULD, ...given(rest), rim, part, shrink: [1 + length, 1 + width, 1 + height],
    cast: { name: material, density: density ?? usual, densityBasis: density === undefined ? basis : AS_ON_SHEET, shrinkBasis: own === 3 ? AS_ON_SHEET : own > 0 ? `${AS_ON_SHEET} where it says; else ${shrinkBasis}` : shrinkBasis },
  };
}
const AS_ON_SHEET = 'as on the sheet';

function blockOf({ tabWidth = TAB.width, tabHeight = TAB.height, sheets, ...rest }: RawGroup<'block'>): BlockOrder {
  return { ...BLOCK, ...given(rest), ...given({ sheets }), tab: { width: tabWidth, height: tabHeight } };
}

function jigOf({ bush, ...rest }: RawGroup<'jig'>): JigOrder {
  return { ...JIG, ...given(rest), ...(bush && { bush: { diameter: bush.diameter ?? NaN, cutter: bush.cutter ?? NaN } }) };
}

/** The same, with things ordered besides: each as is usual, unless the sheet orders it already. */
export function withMakings(making: Making, names: readonly MakingName[]): Making {
  const usual = readMaking(Object.fromEntries(names.map((name) => [name, {}])));
  return { ...Object.fromEntries(MAKINGS.flatMap((name) => usual[name] ? [[name, usual[name]]] : [])), ...making };
}

import type { Point } from '../geometry/point.ts';

/**
 * Everything a DXF R2000 file (AC1015) must hold around its entities: header, tables, the two blocks, the root dictionary.
 * Source: ezdxf documentation, "DXF File Structure" (the required parts); group codes from memory of the published DXF reference.
 */

/** A trade word in capitals, such as FEATHER_LINE. */
export type DxfLayer = string;
type DxfLineType = 'CONTINUOUS' | 'CENTER' | 'HIDDEN';
/** Colour is a number of DXF's colour index, 1 to 255: 1 red, 3 green, 5 blue, 7 black on white. */
export interface DxfLayerStyle { readonly name: DxfLayer; readonly colour: number; readonly lineType: DxfLineType }
export interface Box { readonly least: Point; readonly most: Point }

/** The smallest piece of a DXF file: a code that says what the value means, and the value. */
export type Group = readonly [code: number, value: string | number];

/** Coordinates and radii. Neighbouring arcs must meet within 1e-7 mm to be taken as one outline; this leaves room. */
const LENGTH_DECIMALS = 12;
/** Drawings for a shoe are far smaller; a larger number is a mistake. */
const LARGEST = 1e9;

/** A number with fixed decimals: never an exponent, never minus nought.
 *  @throws RangeError for a number that is not finite or too large for a drawing */
export function decimals(value: number, places: number): string {
  if (!(Math.abs(value) < LARGEST)) throw new RangeError(`a number in a DXF file must lie within ±${LARGEST}, got ${value}`);
  const text = value.toFixed(places);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

/** Codes 10 to 59 carry reals; other numbers here are whole. */
const valueText = ([code, value]: Group): string =>
  typeof value === 'number' && code >= 10 && code < 60 ? decimals(value, LENGTH_DECIMALS) : String(value);

export const written = (groups: readonly Group[]): string =>
  groups.map((group) => `${String(group[0]).padStart(3)}\r\n${valueText(group)}\r\n`).join('');

/** Handles are hexadecimal. */
export const hex = (handle: number): string => handle.toString(16).toUpperCase();

/** A point in the drawing plane: x under the code given, y ten higher, z twenty higher. */
export const at = (code: number, [x, y]: Point): Group[] => [[code, x], [code + 10, y], [code + 20, 0]];

/** The owner of all entities. */
export const MODEL_SPACE = 0x1f;
const PAPER_SPACE = 0x1b;
const ROOT = 0x0c;
const GROUPS = 0x0d;
const FIRST_LINE_TYPE = 0x22;
const FIRST_LAYER = 0x30;
/** The two blocks every file has. Model space holds the drawing, paper space stays empty. */
const SPACES: readonly { name: string; record: number; begin: number; onPaper: readonly Group[] }[] = [
  { name: '*MODEL_SPACE', record: MODEL_SPACE, begin: 0x20, onPaper: [] },
  { name: '*PAPER_SPACE', record: PAPER_SPACE, begin: 0x1c, onPaper: [[67, 1]] },
];
const LAYER_ZERO: DxfLayerStyle = { name: '0', colour: 7, lineType: 'CONTINUOUS' };

/** Handles from here on are free for the entities of a drawing with these layers. */
export const firstEntity = (layers: readonly DxfLayerStyle[]): number => FIRST_LAYER + layers.length + 1;

export const section = (name: string, groups: readonly Group[]): Group[] =>
  [[0, 'SECTION'], [2, name], ...groups, [0, 'ENDSEC']];

/** @param seed the first handle no object has */
export function header({ least, most }: Box, seed: number): Group[] {
  const plane = ([x, y]: Point): Group[] => [[10, x], [20, y]];
  const variables: Record<string, Group[]> = {
    ACADVER: [[1, 'AC1015']], DWGCODEPAGE: [[3, 'ANSI_1252']], INSBASE: at(10, [0, 0]), EXTMIN: at(10, least), EXTMAX: at(10, most),
    LIMMIN: plane(least), LIMMAX: plane(most), LTSCALE: [[40, 1]], TEXTSTYLE: [[7, 'STANDARD']], CLAYER: [[8, '0']],
    CELTYPE: [[6, 'BYLAYER']], CECOLOR: [[62, 256]], DIMSTYLE: [[2, 'STANDARD']],
    LUNITS: [[70, 2]], LUPREC: [[70, 4]], AUNITS: [[70, 0]], AUPREC: [[70, 4]], ANGBASE: [[50, 0]], ANGDIR: [[70, 0]],
    // Points are shown as crosses 2 mm across: a single dot is lost on paper.
    PDMODE: [[70, 3]], PDSIZE: [[40, 2]],
    HANDSEED: [[5, hex(seed)]], TILEMODE: [[70, 1]], MEASUREMENT: [[70, 1]], INSUNITS: [[70, 4]],
  };
  return section('HEADER', Object.entries(variables).flatMap(([name, value]): Group[] => [[9, `$${name}`], ...value]));
}

interface Entry { readonly handle: number; readonly name: string; readonly groups: readonly Group[] }
/** The kind of a table, the middle of its subclass mark, and its handle. */
interface TableKind { readonly name: string; readonly mark: string; readonly handle: number }

function table({ name, mark, handle }: TableKind, entries: readonly Entry[]): Group[] {
  const dimensions = name === 'DIMSTYLE';
  return [
    [0, 'TABLE'], [2, name], [5, hex(handle)], [330, '0'], [100, 'AcDbSymbolTable'], [70, entries.length],
    ...(dimensions ? [[100, 'AcDbDimStyleTable'] as const] : []),
    ...entries.flatMap((entry): Group[] => [
      // Code 5 was taken when dimension styles got handles.
      [0, name], [dimensions ? 105 : 5, hex(entry.handle)], [330, hex(handle)],
      [100, 'AcDbSymbolTableRecord'], [100, `AcDb${mark}TableRecord`], [2, entry.name], ...entry.groups,
    ]),
    [0, 'ENDTAB'],
  ];
}

/** Dashes (positive) and gaps (negative), mm as they lie on a 1:1 print. */
const LINE_TYPES: Record<DxfLineType, readonly number[]> = { CONTINUOUS: [], CENTER: [15, -3, 3, -3], HIDDEN: [4, -2] };

function lineTypes(layers: readonly DxfLayerStyle[]): Entry[] {
  const used = (Object.keys(LINE_TYPES) as DxfLineType[])
    .filter((name) => name === 'CONTINUOUS' || layers.some((layer) => layer.lineType === name));
  const patterns = [
    { name: 'BYBLOCK', dashes: [] }, { name: 'BYLAYER', dashes: [] }, ...used.map((name) => ({ name, dashes: LINE_TYPES[name] })),
  ];
  return patterns.map(({ name, dashes }, i) => ({
    name, handle: FIRST_LINE_TYPE + i,
    groups: [
      [70, 0], [3, ''], [72, 65], [73, dashes.length], [40, dashes.reduce((sum, dash) => sum + Math.abs(dash), 0)],
      ...dashes.flatMap((dash): Group[] => [[49, dash], [74, 0]]),
    ],
  }));
}

const layerEntries = (layers: readonly DxfLayerStyle[]): Entry[] => [LAYER_ZERO, ...layers].map(({ name, colour, lineType }, i) =>
  ({ name, handle: FIRST_LAYER + i, groups: [[70, 0], [62, colour], [6, lineType]] }));

/** The view a program opens with: the whole drawing with a little room around it. */
function view({ least: [x0, y0], most: [x1, y1] }: Box): Entry {
  const shape = 1.5, height = Math.max(y1 - y0, (x1 - x0) / shape, 1) * 1.1;
  return {
    name: '*ACTIVE', handle: 0x10,
    groups: [
      [70, 0], [10, 0], [20, 0], [11, 1], [21, 1], [12, (x0 + x1) / 2], [22, (y0 + y1) / 2], [13, 0], [23, 0], [14, 10], [24, 10],
      [15, 10], [25, 10], [16, 0], [26, 0], [36, 1], [17, 0], [27, 0], [37, 0], [40, height], [41, shape], [42, 50], [43, 0], [44, 0],
      [50, 0], [51, 0], [71, 0], [72, 1000], [73, 1], [74, 3], [75, 0], [76, 0], [77, 0], [78, 0],
    ],
  };
}

export function tables(layers: readonly DxfLayerStyle[], box: Box): Group[] {
  const letters: Group[] = [[70, 0], [40, 0], [41, 1], [50, 0], [71, 0], [42, 2.5], [3, 'txt'], [4, '']];
  return section('TABLES', [
    ...table({ name: 'VPORT', mark: 'Viewport', handle: 8 }, [view(box)]),
    ...table({ name: 'LTYPE', mark: 'Linetype', handle: 5 }, lineTypes(layers)),
    ...table({ name: 'LAYER', mark: 'Layer', handle: 2 }, layerEntries(layers)),
    ...table({ name: 'STYLE', mark: 'TextStyle', handle: 3 }, [{ name: 'STANDARD', handle: 0x11, groups: letters }]),
    ...table({ name: 'VIEW', mark: 'View', handle: 6 }, []),
    ...table({ name: 'UCS', mark: 'UCS', handle: 7 }, []),
    ...table({ name: 'APPID', mark: 'RegApp', handle: 9 }, [{ name: 'ACAD', handle: 0x12, groups: [[70, 0]] }]),
    ...table({ name: 'DIMSTYLE', mark: 'DimStyle', handle: 0x0a }, [{ name: 'STANDARD', handle: 0x13, groups: [[70, 0]] }]),
    ...table({ name: 'BLOCK_RECORD', mark: 'Block', handle: 1 }, SPACES.map(({ name, record }) => ({ name, handle: record, groups: [[340, '0']] }))),
  ]);
}

export const blocks = (): Group[] => section('BLOCKS', SPACES.flatMap(({ name, record, begin, onPaper }): Group[] => {
  const owned = (handle: number): Group[] => [[5, hex(handle)], [330, hex(record)], [100, 'AcDbEntity'], ...onPaper, [8, '0']];
  return [
    [0, 'BLOCK'], ...owned(begin), [100, 'AcDbBlockBegin'], [2, name], [70, 0], ...at(10, [0, 0]), [3, name], [1, ''],
    [0, 'ENDBLK'], ...owned(begin + 1), [100, 'AcDbBlockEnd'],
  ];
}));

export const objects = (): Group[] => section('OBJECTS', [
  [0, 'DICTIONARY'], [5, hex(ROOT)], [330, '0'], [100, 'AcDbDictionary'], [281, 1], [3, 'ACAD_GROUP'], [350, hex(GROUPS)],
  [0, 'DICTIONARY'], [5, hex(GROUPS)], [330, hex(ROOT)], [100, 'AcDbDictionary'], [281, 1],
]);

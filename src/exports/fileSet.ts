import { mirrored, type Mesh } from '../geometry/mesh.ts';
import type { Side } from '../fitting/words.ts';
import type { Booleans } from '../making/booleans.ts';
import { madeFor, type ShoeMould } from '../making/made.ts';
import type { Stacks } from '../making/stack/stack.ts';
import { partsOf, type Shoe, type SoleParts } from '../pair/shoe.ts';
import type { Design } from '../checks/design.ts';
import { stopsLeft } from '../checks/overrides.ts';
import { cuttingListPdf, sheetFileName } from './cuttingList.ts';
import { designJson } from './designJson.ts';
import type { Paper } from './drawing.ts';
import { outlineSheet, outsoleSheet, sideSheet } from './dxfSheets.ts';
import { jobCardPdf } from './jobCard.ts';
import { jobSheetPdf } from './jobSheet.ts';
import { mouldSheet } from './mouldSheet.ts';
import { printFiles } from './printFiles.ts';
import { sha256 } from './sha256.ts';
import { sideDrawing } from './sideDrawing.ts';
import { stackSheet } from './stackSheets.ts';
import { stlBytes } from './stl.ts';
import { svgText } from './svg.ts';
import { templateFiles } from './templates.ts';

/** A file by its name in the folder of the job. */
export interface NamedFile { readonly name: string; readonly bytes: Uint8Array }

/** The drawing for the screen: as wide as A3, so that it prints there in scale. */
const SCREEN: Paper = { width: 420, height: 215 };

/**
 * Every file of a job: solids and outlines of each shoe, all that the sheet orders besides, the drawing, the numbers,
 * and last the job sheet that lists them all with their checksums. Same design, same bytes.
 * @param kernel the one that drills and splits solids; needed where needsKernel says so
 * @throws RangeError while there are stops that nobody took on his own name; without a kernel that is needed, or for a
 *   mould the sole could not leave
 */
export function filesFor(design: Design, kernel?: Booleans): readonly NamedFile[] {
  requireNoStops(design);
  const { job: { reference }, making: { templates, card } } = design.fitting, made = madeFor(design, kernel);
  const files = [
    ...design.shoes.flatMap((shoe) => shoeFiles(shoe, reference)),
    ...made.moulds.flatMap((mould) => mouldFiles(mould, reference)),
    ...(templates ? templateFiles(design, templates) : []), ...(card ? [{ name: `${reference}_job-card.pdf`, bytes: jobCardPdf(design, made) }] : []),
    ...printFiles(made.prints, reference, design.fitting.making),
    text(`${reference}_drawing.svg`, svgText(sideDrawing(design, SCREEN))),
    text(`${reference}_design.json`, designJson(design, made)),
  ];
  const sums = files.map(({ name, bytes }) => ({ name, sha256: sha256(bytes) }));
  return [...files, { name: `${reference}_job-sheet.pdf`, bytes: jobSheetPdf(design, sums, made) }];
}

function requireNoStops({ findings }: Design): void {
  const left = stopsLeft(findings).map(({ code, side }) => side ? `${code} (${side})` : code);
  if (left.length > 0) throw new RangeError(`nothing may be made while there are stops that nobody took on his own name, got ${left.join(', ')}; change the sheet, or override them there by name`);
}

const text = (name: string, letters: string): NamedFile => ({ name, bytes: new TextEncoder().encode(letters) });

function shoeFiles(shoe: Shoe, reference: string): NamedFile[] {
  const parts = partsOf(shoe), stem = `${reference}_${shoe.side}`, name = `${reference} ${shoe.side}`;
  return parts ? [...solidFiles(shoe.side, parts, stem), ...outlineFiles(shoe, parts, stem, name)] : [];
}

const solidFiles = (side: Side, { solids: { whole, foam, outsole } }: SoleParts, stem: string): NamedFile[] =>
  [solidFile(side, `${stem}_sole`, whole), solidFile(side, `${stem}_foam`, foam), solidFile(side, `${stem}_outsole`, outsole)];

function mouldFiles(one: ShoeMould, reference: string): NamedFile[] {
  const { side, mould: { cavity, lid } } = one, stem = `${reference}_${side}_mould`;
  return [...[...cavity, ...lid].map(({ name, mesh }) => solidFile(side, `${stem}-${name}`, mesh)), text(`${stem}.dxf`, mouldSheet(one, `${reference} ${side}`))];
}

const stackFiles = (design: Design, stack: Stacks, { reference } = design.fitting.job): NamedFile[] => [
  ...stack.sheets.map((sheet) => text(sheetFileName(reference, sheet.number), stackSheet(sheet, reference))),
  { name: `${reference}_cutting-list.pdf`, bytes: cuttingListPdf(design, stack) },
];

/** Shapes are those of a left shoe: a right one is mirrored here, as it leaves. */
const solidFile = (side: Side, name: string, mesh: Mesh): NamedFile =>
  ({ name: `${name}.stl`, bytes: stlBytes(side === 'right' ? mirrored(mesh) : mesh, name) });

function outlineFiles(shoe: Shoe, { shape }: SoleParts, stem: string, name: string): NamedFile[] {
  return [
    text(`${stem}_side.dxf`, sideSheet(shoe, shape, name)),
    text(`${stem}_outlines.dxf`, outlineSheet(shoe, shape, name)),
    text(`${stem}_outsole-flat.dxf`, outsoleSheet(shoe, shape, name)),
  ];
}

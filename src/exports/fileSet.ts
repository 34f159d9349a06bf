import type { Side } from '../fitting/words.ts';
import type { Booleans } from '../making/booleans.ts';
import { madeFor } from '../making/made.ts';
import { partsOf, type Shoe, type SoleParts } from '../pair/shoe.ts';
import type { Design } from '../checks/design.ts';
import { stopsLeft } from '../checks/overrides.ts';
import { targetsOn } from '../targets/shoeTargets.ts';
import { allFiguresPdf } from './allFigures.ts';
import { filesBeside } from './besides.ts';
import { designJson } from './designJson.ts';
import type { Paper } from './drawing.ts';
import { outlineSheet, outsoleSheet, sideSheet } from './dxfSheets.ts';
import type { Checksum } from './figureSections.ts';
import { jobSheetPdf } from './jobSheet.ts';
import { solidFile, textFile, type NamedFile } from './namedFile.ts';
import { rollFiles } from './rollFiles.ts';
import { sha256 } from './sha256.ts';
import { sideDrawing } from './sideDrawing.ts';
import { bandsOf } from './spreadSection.ts';
import { svgText } from './svg.ts';
import { onA6, tradeOffSheet } from './tradeOffDrawing.ts';

export type { NamedFile };

/** The drawing for the screen: as wide as A3, so that it prints there in scale. */
const SCREEN: Paper = { width: 420, height: 215 };

/**
 * Every file of a job: solids and outlines of each shoe, all that the sheet orders besides, the drawing, the numbers,
 * the job sheet, and last the paper with all figures that lists them all with their checksums. Same design, same bytes.
 * @param kernel the one that drills and splits solids; needed where needsKernel says so
 * @throws RangeError while there are stops that nobody took on his own name; without a kernel that is needed, or for a
 *   mould the sole could not leave
 */
export function filesFor(design: Design, kernel?: Booleans): readonly NamedFile[] {
  requireNoStops(design);
  const { reference } = design.fitting.job, made = madeFor(design, kernel);
  const files = [
    ...design.shoes.flatMap((shoe) => shoeFiles(shoe, reference)),
    ...filesBeside(design, made),
    ...targetsOn(design.fitting).map((one) => textFile(`${reference}_${one.curve.side}_trade-off.svg`, svgText(tradeOffSheet(one, reference, onA6(design.fitting.units)).drawing))),
    textFile(`${reference}_drawing.svg`, svgText(sideDrawing(design, SCREEN, undefined, bandsOf(design)))),
    ...rollFiles(design),
    textFile(`${reference}_design.json`, designJson(design, made)),
  ];
  const sums = files.map(summed), sheet = { name: `${reference}_job-sheet.pdf`, bytes: jobSheetPdf(design, sums) };
  return [...files, sheet, { name: `${reference}_all-figures.pdf`, bytes: allFiguresPdf(design, [...sums, summed(sheet)], made) }];
}

const summed = ({ name, bytes }: NamedFile): Checksum => ({ name, sha256: sha256(bytes) });

function requireNoStops({ findings }: Design): void {
  const left = stopsLeft(findings).map(({ code, side }) => side ? `${code} (${side})` : code);
  if (left.length > 0) throw new RangeError(`nothing may be made while there are stops that nobody took on his own name, got ${left.join(', ')}; change the sheet, or override them there by name`);
}

function shoeFiles(shoe: Shoe, reference: string): NamedFile[] {
  const parts = partsOf(shoe), stem = `${reference}_${shoe.side}`, name = `${reference} ${shoe.side}`;
  return parts ? [...solidFiles(shoe.side, parts, stem), ...outlineFiles(shoe, parts, stem, name)] : [];
}

const solidFiles = (side: Side, { solids: { whole, foam, outsole } }: SoleParts, stem: string): NamedFile[] =>
  [solidFile(side, `${stem}_sole`, whole), solidFile(side, `${stem}_foam`, foam), solidFile(side, `${stem}_outsole`, outsole)];

function outlineFiles(shoe: Shoe, { shape }: SoleParts, stem: string, name: string): NamedFile[] {
  return [
    textFile(`${stem}_side.dxf`, sideSheet(shoe, shape, name)),
    textFile(`${stem}_outlines.dxf`, outlineSheet(shoe, shape, name)),
    textFile(`${stem}_outsole-flat.dxf`, outsoleSheet(shoe, shape, name)),
  ];
}

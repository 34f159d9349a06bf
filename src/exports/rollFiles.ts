import type { Design } from '../checks/design.ts';
import type { Drawing, Paper } from './drawing.ts';
import { textFile, type NamedFile } from './namedFile.ts';
import { footMarks, overFoot } from './pageFoot.ts';
import { pdfBytes } from './pdf.ts';
import { rollStrip } from './rollStrip.ts';
import { svgText } from './svg.ts';

/** Sheets lying down. Source: ISO 216. */
const A4_DOWN: Paper = { width: 297, height: 210 }, A3_DOWN: Paper = { width: 420, height: 297 };

/** How the pair rolls through a step: a drawing, and the same on one page. */
export function rollFiles(design: Design): NamedFile[] {
  const { reference, date } = design.fitting.job;
  return [textFile(`${reference}_rolling.svg`, svgText(rollStrip(design, A3_DOWN))), { name: `${reference}_rolling.pdf`, bytes: pdfBytes([rollPage(design)], `Rolling ${reference}`, date) }];
}

function rollPage(design: Design): Drawing {
  const drawing = rollStrip(design, overFoot(design, A4_DOWN));
  return { ...drawing, paper: A4_DOWN, marks: [...drawing.marks, ...footMarks(design, A4_DOWN, { n: 1, of: 1 })] };
}

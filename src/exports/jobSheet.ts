import { cautionInShort } from '../checks/cautions.ts';
import type { Design } from '../checks/design.ts';
import type { Mm } from '../geometry/units.ts';
import { mm } from '../checks/say.ts';
import { levelInWords } from '../pair/level.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { CHECK, checkBar } from './checkBar.ts';
import { drawn, LETTERS, polyline, stroke, words, type Box, type Drawing, type Mark, type Paper } from './drawing.ts';
import type { Checksum } from './figureSections.ts';
import { fitted, linesOf } from './fitted.ts';
import { keyNumbers } from './jobSheetNumbers.ts';
import { rollInSmall } from './jobSheetRoll.ts';
import { sheetDrawing } from './jobSheetSide.ts';
import { inShort, sayIn } from './jobSheetWords.ts';
import { LIMITS } from './pageFoot.ts';
import { pdfBytes } from './pdf.ts';
import { stopsTaken } from './sheetFrame.ts';

/** Lying down. Source: ISO 216. */
const A4_DOWN: Paper = { width: 297, height: 210 };
const SHEET: Box = { left: 10, top: 9, right: 289, bottom: 204 };
/** The head, the side drawing, and the gap between columns. */
const HEAD: Mm = 17, DRAWN: Mm = 86, APART: Mm = 5;

/**
 * The paper that walks with the shoes through the workshop: one page, whatever the job. Drawings first, then the numbers a
 * maker sets by, what to know before cutting and what to measure again. All the rest stands in the paper with all figures.
 * @param files other files of the job with their checksums: the numbers' one tells which version this is
 */
export function jobSheetPdf(design: Design, files: readonly Checksum[]): Uint8Array {
  const { reference, date } = design.fitting.job;
  return pdfBytes([jobSheet(design, files)], `Job sheet ${reference}`, date);
}

/** The page itself. */
export function jobSheet(design: Design, files: readonly Checksum[]): Drawing {
  const { left, right, top } = SHEET, more = `${design.fitting.job.reference}_all-figures.pdf`;
  const bands = bandsAbove(design, SHEET.bottom - 5), drawing = sheetDrawing(design, { left, right, top: top + HEAD + 1, bottom: top + HEAD + DRAWN });
  return {
    paper: A4_DOWN, title: `${design.fitting.job.reference}: job sheet`,
    marks: [
      ...checkMarks(), ...headMarks(design, files, drawing.by), ...drawing.marks, ...columns(design, { left, right, top: top + HEAD + DRAWN + 2, bottom: bands.top - 2 }, more),
      ...bands.marks, ...footMarks(design),
    ],
  };
}

function columns(design: Design, { left, right, top, bottom }: Box, more: string): Mark[] {
  const rockers = design.shoes.filter((shoe): shoe is RockerShoe => shoe.kind === 'rocker'), inches = design.fitting.units === 'in', rollWide = inches ? 64 : 74, numbersWide = design.shoes.length > 1 ? (inches ? 112 : 94) : 84;
  const numbers = left + rollWide + APART, said = numbers + numbersWide + APART;
  return [
    ...rockers.flatMap((shoe, i) => rollInSmall(shoe, design.fitting, shareOf({ left, right: left + rollWide, top, bottom }, i, rockers.length))),
    ...keyNumbers(design, { left: numbers, right: numbers + numbersWide, top, bottom }),
    ...sayIn(inShort(design, more), { left: said, right, top, bottom }, more),
  ];
}

/** Pictures stand one over the other where that leaves each room enough, else beside each other. */
function shareOf({ left, right, top, bottom }: Box, i: number, of: number): Box {
  const tall = (bottom - top - APART * (of - 1)) / of, wide = (right - left - APART * (of - 1)) / of;
  return tall < LEAST_TALL && of > 1
    ? { left: left + i * (wide + APART), right: left + i * (wide + APART) + wide, top, bottom }
    : { left, right, top: top + i * (tall + APART), bottom: top + i * (tall + APART) + tall };
}
const LEAST_TALL: Mm = 36;

/** Two lines of 100 mm that prove the print, in the margins. */
const checkMarks = (): Mark[] => [...checkBar([SHEET.left, 5.5], 'level'), ...checkBar([5, SHEET.top], 'upright'), words(`${CHECK} mm on paper, both ways: else the print is not to scale`, [SHEET.left + CHECK + 3, 6.4], { size: 2.5 })];

interface Field { readonly caption: string; readonly value: string; readonly share: number }

/** What the sheet is of. Fields after ISO 7200, and the version: figures and letters that change with the design. */
function headMarks({ fitting: { version, job, wearer, units }, shoes }: Design, files: readonly Checksum[], by: number): Mark[] {
  const mark = files.find(({ name }) => name === `${job.reference}_design.json`)?.sha256.slice(0, 8);
  const client = [wearer.sex, wearer.mass && `${wearer.mass.value.toFixed(0)} kg`, wearer.stature && `${mm(wearer.stature.value, 0)} tall`].filter(Boolean).join(', ');
  const upper: Field[] = [
    { caption: 'job', value: job.reference, share: 0.22 }, { caption: 'side, what is made', value: shoes.map(({ side, kind }) => `${side} ${kind === 'rocker' ? 'rocker' : 'matched'}`).join(', '), share: 0.24 },
    { caption: 'client', value: client || 'not told', share: 0.22 }, { caption: 'date', value: job.date, share: 0.1 },
    { caption: 'version', value: `sheet ${version}${mark ? `, ${mark}` : ''}`, share: 0.14 }, { caption: 'drawn in mm', value: `1 : ${by}`, share: 0.08 },
  ];
  const lower: Field[] = [
    { caption: 'maker', value: job.maker ?? '', share: 0.2 }, { caption: 'prescribed by', value: [job.prescriber, job.prescribed].filter(Boolean).join(', '), share: 0.2 },
    { caption: 'note', value: job.note ?? '', share: 0.31 }, { caption: 'both feet', value: `${levelInWords(wearer.legDifference)}${units === 'in' ? ' Sheet in inches.' : ''}`, share: 0.29 },
  ];
  const { left, right, top } = SHEET, middle = top + HEAD / 2;
  return [frame({ ...SHEET, bottom: top + HEAD }), stroke([left, middle], [right, middle], 'thin', 'ink'), ...fieldsIn(upper, top, LETTERS.heading), ...fieldsIn(lower, middle, LETTERS.label)];
}

const frame = ({ left, right, top, bottom }: Box): Mark => drawn(polyline([[left, top], [right, top], [right, bottom], [left, bottom]], true), 'visible');

function fieldsIn(fields: readonly Field[], top: Mm, size: Mm): Mark[] {
  let x = SHEET.left;
  return fields.flatMap(({ caption, value, share }, i): Mark[] => {
    const from = x, width = (SHEET.right - SHEET.left) * share;
    x += width;
    return [
      ...(i === 0 ? [] : [stroke([from, top], [from, top + HEAD / 2], 'thin', 'ink')]),
      words(caption, [from + 1.2, top + 2.8], { size: 2.5, ink: 'pencil' }), fitted(value, [from + 1.2, top + HEAD / 2 - 1.3], width - 2.4, { size, bold: true }),
    ];
  });
}

interface Bands { readonly top: Mm; readonly marks: readonly Mark[] }
const PAD: Mm = 1.6, STOPS_MOST = 3, CAUTION_MOST = 6;

/** Over the foot, each in a frame over the whole width: stops that somebody took on his own name, and the caution, once. */
function bandsAbove(design: Design, bottom: Mm): Bands {
  const { text, loud = false } = cautionInShort(design.fitting), taken = stopsTaken(design), width = SHEET.right - SHEET.left - 4;
  const caution = band([text], { size: loud ? 4 : LETTERS.label, bold: true }, bottom, width, CAUTION_MOST);
  if (taken.length === 0) return caution;
  const shown = taken.length > STOPS_MOST ? [...taken.slice(0, STOPS_MOST - 1), `And ${taken.length - STOPS_MOST + 1} more stops taken by name: see ${design.fitting.job.reference}_all-figures.pdf.`] : taken;
  const stops = band(shown, { size: LETTERS.label, bold: true }, caution.top - 1, width, 2);
  return { top: stops.top, marks: [...caution.marks, ...stops.marks] };
}

/** @param most lines that one of the texts may take */
function band(texts: readonly string[], lettering: { readonly size: Mm; readonly bold: boolean }, bottom: Mm, width: Mm, most: number): Bands {
  const lines = texts.flatMap((text) => linesOf(text, width, lettering, most)), high = lettering.size * 1.3, top = bottom - lines.length * high - PAD;
  return { top, marks: [frame({ ...SHEET, top, bottom }), ...lines.map((line, i) => words(line, [SHEET.left + 2, top + PAD / 2 + (i + 0.76) * high], lettering))] };
}

function footMarks({ fitting: { job: { reference, date } } }: Design): Mark[] {
  const { left, right, bottom } = SHEET, y = bottom - 0.5;
  return [fitted(`${reference}   ${date}`, [left, y], 86, { size: 3.2, bold: true }), words(LIMITS, [(left + right) / 2, y], { anchor: 'middle' }), words('sheet 1 of 1', [right, y], { anchor: 'end', bold: true })];
}

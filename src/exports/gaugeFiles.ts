import type { Design } from '../checks/design.ts';
import { flatSolid } from '../making/cut/flatSolid.ts';
import { onBoards } from '../making/cut/onBoards.ts';
import type { FlatPart } from '../making/flatPart.ts';
import type { Made } from '../making/made.ts';
import type { Mm } from '../geometry/units.ts';
import { cutSheets } from './cutSheets.ts';
import { solidFile, textFile, type NamedFile } from './namedFile.ts';
import { repairCardPdf } from './repairCard.ts';
import { stlBytes } from './stl.ts';
import { trialRecordPdf } from './trialRecord.ts';

/** The gauges of each shoe: laid on boards to cut, each as a solid for a printer, and the card for whoever repairs the shoe. */
export const gaugeFiles = (design: Design, { gauges }: Made): NamedFile[] => gauges.flatMap((one) => {
  const { reference } = design.fitting.job, stem = `${reference}_${one.side}`;
  return [
    ...boardFiles(design, `${stem}_gauges`, `${reference} ${one.side} gauges`, one.parts),
    ...one.parts.map((part) => flatFile(design, `${stem}_${fileName(part.name, one.side, reference)}`, part)),
    { name: `${stem}_repair-card.pdf`, bytes: repairCardPdf(design, one) },
  ];
});

/** The trial wedges of each shoe: base and wedges as solids, all of them from the side to be sawn, and the record of the walk. */
export const wedgeFiles = (design: Design, { wedges }: Made): NamedFile[] => wedges.flatMap((one) => {
  const { reference } = design.fitting.job, { side } = one, stem = `${reference}_${side}_trial`;
  return [
    solidFile(side, `${stem}-base`, one.base), ...one.wedges.map(({ variant: { number }, mesh }) => solidFile(side, `${stem}-wedge-${number}`, mesh)),
    ...boardFiles(design, `${stem}-templates`, `${reference} ${side} trial templates`, one.parts),
    { name: `${stem}-record.pdf`, bytes: trialRecordPdf(design, one) },
  ];
});

/** One drawing a board; only a second board is counted in its name. */
function boardFiles({ fitting: { making } }: Design, stem: string, name: string, parts: readonly FlatPart[]): NamedFile[] {
  const { placed, board } = onBoards(parts, making.board), sheets = cutSheets(name, placed, board);
  return sheets.map((text, i) => textFile(`${stem}${sheets.length > 1 ? `-${i + 1}` : ''}.dxf`, text));
}

const flatFile = ({ fitting: { making: { board, chordGap } } }: Design, name: string, part: FlatPart): NamedFile =>
  ({ name: `${name}.stl`, bytes: stlBytes(flatSolid(part, board.thickness, Math.min(chordGap, GAUGE_GAP)), name) });

/** A gauge is cut finer than what it measures. */
const GAUGE_GAP: Mm = 0.01;

/** A part's own name without job and side, which the file's name has already: "left profile gauge, inner side" as "profile-gauge-inner-side". */
const fileName = (name: string, side: string, reference: string): string =>
  name.replace(`${reference} `, '').replace(`${side} `, '').replace(/[^a-z -]/g, '').replaceAll(' ', '-');

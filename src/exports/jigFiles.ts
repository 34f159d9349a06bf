import type { Design } from '../checks/design.ts';
import type { Made } from '../making/made.ts';
import type { ShoeJig } from '../making/jig/ordered.ts';
import { jigSolid } from '../making/jig/solid.ts';
import { cutSheets } from './cutSheets.ts';
import { jigPaper } from './jigPaper.ts';
import { solidFile, textFile, type NamedFile } from './namedFile.ts';
import { pdfBytes } from './pdf.ts';

/** What a jig is cut and put together from: a drawing for each board, the whole as a solid to look at, and its paper. */
export const jigFiles = (design: Design, { jigs }: Pick<Made, 'jigs'>): NamedFile[] => jigs.flatMap((jig) => filesOf(design, jig));

function filesOf(design: Design, made: ShoeJig): NamedFile[] {
  const { side, jig, boards, board } = made, { job: { reference, date }, making: { chordGap } } = design.fitting, stem = `${reference}_${side}_jig`;
  const sheets = cutSheets(`${reference} ${side} ${date} jig`, boards.placed, boards.board), solid = jigSolid(jig, board.thickness, chordGap);
  return [
    ...sheets.map((text, i) => textFile(`${stem}-board-${i + 1}.dxf`, text)), solidFile(side, stem, solid),
    { name: `${stem}.pdf`, bytes: pdfBytes(jigPaper(design, made), `Jig ${reference} ${side}`, date) },
  ];
}

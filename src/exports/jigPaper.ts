import type { Design } from '../checks/design.ts';
import type { Mm } from '../geometry/units.ts';
import type { ShoeJig } from '../making/jig/ordered.ts';
import { A4, type Drawing } from './drawing.ts';
import { pagesOf } from './flow.ts';
import { jigDrawing } from './jigDrawing.ts';
import { jigText } from './jigText.ts';
import { footMarks, overFoot, writtenRoom } from './pageFoot.ts';
import { WIDTH } from './textPaper.ts';

const SIDE: Mm = 12, TOP: Mm = 12;

/** The paper that goes with a jig to the bench: how it stands, its parts, how it is used. */
export function jigPaper(design: Design, made: ShoeJig): Drawing[] {
  const written = pagesOf(jigText(design, made), writtenRoom(design, { left: SIDE, top: TOP, width: WIDTH })), of = written.length + 1;
  const first = { ...jigDrawing(design, made, overFoot(design, A4), { n: 1, of }), paper: A4 };
  return [first, ...written.map((marks): Drawing => ({ paper: A4, title: first.title, marks }))].map((page, i) => ({ ...page, marks: [...page.marks, ...footMarks(design, A4, { n: i + 1, of })] }));
}

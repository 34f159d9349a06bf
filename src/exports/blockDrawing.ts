import { rounded } from '../checks/say.ts';
import type { Design } from '../checks/design.ts';
import type { Path } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { laid } from '../making/block/lie.ts';
import type { ShoeBlock } from '../making/made.ts';
import { sweptSurface } from '../solid/soleShape.ts';
import { blockLines } from './blockLines.ts';
import { levelDimension, uprightDimension, type Dimension } from './dimension.ts';
import { clearWords, drawn, filled, LETTERS, polyline, stroke, words, type Drawing, type Mark, type Paper, type Words } from './drawing.ts';
import { checkLines, drawingBox, sheetFrame, stopMarks, type SheetNumber } from './sheetFrame.ts';
import { onPaper, scaleFor, spot, type View } from './view.ts';

/** Room on paper: left and right of a block for dimensions and heights, over and under each view, and for the check lines. */
const LEFT: Mm = 24, RIGHT: Mm = 42, OVER: Mm = 9, UNDER: Mm = 21, BETWEEN: Mm = 7, CORNER: Mm = 10;

/** A block from above in each set-up, and from the side, on one sheet. */
export function blockDrawing(design: Design, shoe: ShoeBlock, paper: Paper, sheet: SheetNumber): Drawing {
  const { plan: { length, width, height }, setUps } = shoe.block, box = drawingBox(paper, design), plans = setUps.length;
  const tall = (scale: number): Mm => CORNER + plans * (width * scale + OVER + BETWEEN) + UNDER + height * scale + OVER;
  const by = scaleFor((scale) => length * scale + LEFT + RIGHT <= box.right - box.left && tall(scale) <= box.bottom - box.top), scale = 1 / by;
  const title = `${shoe.side === 'left' ? 'Left' : 'Right'} shoe: foam body in its block`, gap = Math.max(0, (box.bottom - box.top - tall(scale)) / (plans + 2));
  let y = box.top + CORNER + gap;
  const x = box.left + LEFT + Math.max(0, (box.right - box.left - LEFT - RIGHT - length * scale) / 2);
  const placed = (high: Mm, below: Mm): View => { const view: View = { scale, zero: [x, y + OVER + high * scale] }; y += OVER + high * scale + below + gap; return view; };
  const marks: Mark[] = [];
  setUps.forEach((_, i) => {
    const { zero } = placed(width, i === 0 ? UNDER : BETWEEN);
    marks.push(...planMarks(shoe, i, { scale, zero: [zero[0], zero[1] - (width / 2) * scale] }));
    if (i === 0) marks.push(...sideMarks(shoe, placed(height, BETWEEN)));
  });
  return { paper, title: `${design.fitting.job.reference}: ${title}`, marks: [...sheetFrame(design, paper, title, by, sheet), ...checkLines([box.left + 4, box.top + 5]), ...stopMarks(design, box), ...marks] };
}

const number = (value: Mm): string => rounded(value, 1);
const dimensioned = ({ marks, label }: Dimension): Mark[] => [...marks, ...clearWords(label)];
const name = (text: string, [x, y]: Point): Mark => words(text, [x, y - 3], { bold: true });

function planMarks(shoe: ShoeBlock, setUp: number, view: View): Mark[] {
  const { block, pocket, edge, ground, dowels, tabs } = blockLines(shoe, setUp), { plan, setUps } = shoe.block, { length, width } = plan, half = width / 2;
  const on = (path: Path): Path => onPaper(view, path), at = (x: Mm, y: Mm): Point => spot(view, [x, y]);
  return [
    name(`SET-UP ${setUp + 1}: ${setUps[setUp]!.face} up, seen from above`, at(0, half)),
    ...tabs.map((tab) => filled(on(tab), 'foam')), filled(on(edge), 'foam'),
    drawn(on(block), 'visible'), drawn(on(pocket), 'thin', 'ink'), ...tabs.map((tab) => drawn(on(tab), 'thin', 'ink')), drawn(on(edge), 'visible'), ...(ground ? [drawn(on(ground), 'hidden')] : []),
    ...dowels.map((dowel) => drawn(on(dowel), 'visible')), ...crosses(plan.dowels.map(({ at: [x, y] }): Point => [x, y]), view),
    stroke(at(-length * 0.02, 0), at(length * 1.03, 0), 'centre', 'computed'), ...datum(at(0, 0)), ...dowelNames(plan, view),
    ...sideNames(shoe, setUp, view), ...(setUp === 0 ? planDimensions(shoe, view) : []),
  ];
}

const crosses = (places: readonly Point[], view: View): Mark[] => places.flatMap((place) => {
  const [x, y] = spot(view, place);
  return [stroke([x - 2.5, y], [x + 2.5, y], 'centre', 'computed'), stroke([x, y - 2.5], [x, y + 2.5], 'centre', 'computed')];
});

/** Zero of x and y: a filled triangle on the edge, as a datum is drawn. Source: ISO 5459 (from memory). */
const datum = ([x, y]: Point): Mark[] =>
  [filled(polyline([[x, y], [x - 3, y - 1.7], [x - 3, y + 1.7]], true), 'ink'), ...clearWords(words('X0 Y0', [x - 3.6, y + 1.1], { anchor: 'end', size: 2.7, bold: true }))];

/** Each pair of dowels, written beside its upper hole. */
function dowelNames({ dowels, length }: ShoeBlock['block']['plan'], view: View): Mark[] {
  return dowels.filter(({ at: [, y] }) => y >= 0).flatMap(({ at: [x, y], diameter }) => {
    const [px, py] = spot(view, [x, y]), atHeel = x < length / 2, radius = (diameter / 2) * view.scale;
    return clearWords(words(`Ø ${number(diameter)}, Y ${y === 0 ? '0' : `±${number(y)}`}`, [px + (atHeel ? radius + 1.6 : -radius - 1.6), py + 3.2], { size: 2.7, anchor: atHeel ? 'start' : 'end' }));
  });
}

/** Which side is which, and whose shoe it is, written on the part. */
function sideNames({ side, block: { plan: { lie, walls } } }: ShoeBlock, setUp: number, view: View): Mark[] {
  const up = (side === 'right') !== (setUp === 1) ? -1 : 1, length = Math.max(...walls.map(({ on: [x] }) => x));
  const place = (x: Mm, y: Mm): Point => { const [bx, by] = laid(lie, [x, y, 0]); return spot(view, [bx, by * up]); };
  const written = (text: string, x: Mm, y: Mm, size: Mm = LETTERS.label, bold = false): Words => { const [px, py] = place(x, y); return words(text, [px, py + size * 0.35], { anchor: 'middle', size, bold }); };
  return [
    ...[written(`${side.toUpperCase()} shoe`, length * 0.42, lie.turn === 0 ? 14 : 0, LETTERS.heading, true)].flatMap((label) => (lie.turn === 0 ? [label] : clearWords(label))),
    written('heel', length * 0.1, 12), written('toe', length * 0.9, 12), written('outer side', length * 0.72, 26), written('inner side', length * 0.72, -26),
  ];
}

function planDimensions({ block: { plan } }: ShoeBlock, view: View): Mark[] {
  const { length, width, dowels, walls } = plan, half = width / 2, low = spot(view, [0, -half])[1], at = (x: Mm, y: Mm): Point => spot(view, [x, y]);
  const xs = walls.flatMap(({ top, bottom }) => [top[0], bottom[0]]), rear = Math.min(...xs), front = Math.max(...xs), [firstDowel] = dowels, lastDowel = dowels.at(-1);
  const level = (from: Mm, to: Mm, row: number): Dimension => levelDimension(at(from, -half), at(to, -half), low + row * 6.2, number(to - from));
  const toDowel = firstDowel && lastDowel ? [leftOf(level(0, firstDowel.at[0], 1), at(0, 0)), level(firstDowel.at[0], lastDowel.at[0], 1)] : [], row = toDowel.length ? 2 : 1;
  const all = [...toDowel, level(0, rear, row), level(rear, front, row), level(0, length, row + 1), uprightDimension(at(length, -half), at(length, half), at(length, 0)[0] + 9, number(width))];
  // Numbers last: they are written clear of the lines of the other rows.
  return [...all.flatMap(({ marks }) => marks), ...all.flatMap(({ label }) => clearWords(label))];
}

/** A number that has no room between its arrows, written on their left, clear of the next dimension. */
const leftOf = ({ marks, label }: Dimension, [left]: Point): Dimension =>
  ({ marks, label: label.anchor === 'start' ? { ...label, at: [left - 1, label.at[1]], anchor: 'end' } : label });

/** The block cut open along the middle of the part, as it lies in set-up 1. */
function sideMarks({ parts: { shape, bodies: { foam } }, block: { plan } }: ShoeBlock, view: View): Mark[] {
  const { length, height, lie, walls, tabs: { tabs }, glueLines, floors } = plan, under = sweptSurface(foam.lower, shape.line);
  const axis = walls.filter(({ on: [, y] }, i) => y > 0 !== walls.at(i - 1)!.on[1] > 0).map(({ on: [x] }) => x), from = Math.min(...axis), to = Math.max(...axis), steps = Math.ceil((to - from) / 2);
  const along = (face: (x: Mm, y: Mm) => Mm): Point[] => Array.from({ length: steps + 1 }, (_, i) => { const x = from + ((to - from) * i) / steps, [bx, , bz] = laid(lie, [x, 0, face(x, 0)]); return [bx, bz]; });
  const upper = along(foam.upper), lower = along(under), body = polyline([...lower, ...[...upper].reverse()], true), ends = [polyline([lower[0]!, upper[0]!]), polyline([lower.at(-1)!, upper.at(-1)!])], on = (path: Path): Path => onPaper(view, path), at = (x: Mm, z: Mm): Point => spot(view, [x, z]);
  const level = (z: Mm, line: 'hidden' | 'centre' | 'thin'): Mark => stroke(at(0, z), at(length, z), line, 'ink');
  return [
    name('SET-UP 1 from the side, cut open', at(0, height)),
    filled(on(body), 'foam'), drawn(on(polyline([[0, 0], [length, 0], [length, height], [0, height]], true)), 'visible'),
    ...glueLines.map((z) => level(z, 'thin')), ...[floors.fromAbove, ...(floors.fromBelow === undefined ? [] : [floors.fromBelow])].filter((z) => z > 0).map((z) => level(z, 'hidden')),
    ...[polyline(upper), ...ends].map((line) => drawn(on(line), 'visible')), drawn(on(polyline(lower)), floors.fromBelow === undefined ? 'hidden' : 'visible'), ...tabs.map(({ at: [x], width, from: low, to: high }) => drawn(on(polyline([[x - width / 2, low], [x + width / 2, low], [x + width / 2, high], [x - width / 2, high]], true)), 'thin', 'ink')),
    filled(polyline([at(0, 0), [at(0, 0)[0] - 1.7, at(0, 0)[1] + 3], [at(0, 0)[0] + 1.7, at(0, 0)[1] + 3]], true), 'ink'), words('Z0: on the bed', [at(0, 0)[0] + 3, at(0, 0)[1] + 3.4], { size: 2.7, bold: true }),
    ...dimensioned(uprightDimension(at(0, 0), at(0, height), at(0, 0)[0] - 8, number(height))), ...heights(plan, view),
  ];
}

/** Heights over the bed, written one over the other beside the block with a leader each. */
function heights({ length, height, low, high, glueLines, floors }: ShoeBlock['block']['plan'], view: View): Mark[] {
  const all = [
    { z: height, text: 'top of the block' }, { z: high, text: 'part, highest' }, { z: low, text: 'part, lowest' }, ...glueLines.map((z) => ({ z, text: 'line of glue' })),
    { z: floors.fromAbove, text: floors.fromAbove > 0 ? 'pocket, set-up 1' : 'pocket, through' }, ...(floors.fromBelow === undefined ? [] : [{ z: floors.fromBelow, text: 'pocket, set-up 2' }]),
  ].sort((a, b) => b.z - a.z);
  const row = 3.9, ideal = all.map(({ z }) => spot(view, [length, z])), rows: Mm[] = [];
  const spare = (all.length - 1) * row - (ideal.at(-1)![1] - ideal[0]![1]);
  ideal.forEach(([, y], i) => rows.push(Math.max(i === 0 ? y - Math.max(0, spare) / 2 : rows[i - 1]! + row, y - Math.max(0, spare) / 2)));
  return all.flatMap(({ z, text }, i): Mark[] => {
    const [x, y] = ideal[i]!, to: Point = [x + 8, rows[i]!];
    return [stroke([x + 0.8, y], to), words(`${number(z)}  ${text}`, [to[0] + 0.8, to[1] + 1], { size: 2.7 })];
  });
}

import type { Design } from '../checks/design.ts';
import { figuresOf, type FigureKey } from '../checks/figures.ts';
import { mm, rounded } from '../checks/say.ts';
import type { Mm } from '../geometry/units.ts';
import { routerReach, type RouterReach } from '../making/jig/routerReach.ts';
import { offsetFor } from '../making/jig/bush.ts';
import { letterOf } from '../making/jig/letters.ts';
import type { ShoeJig } from '../making/jig/ordered.ts';
import { planPoint } from '../profile/rollLine.ts';
import { heightsOf } from '../profile/groundFace.ts';
import { bridgePlaces } from '../making/jig/jig.ts';
import { foamFace } from '../solid/soleShape.ts';
import { heading, introduction, paragraph, table, type Block } from './flow.ts';
import { jigSize } from './jigDrawing.ts';
import { bold } from './figureSections.ts';
import { WIDTH } from './textPaper.ts';

const say = (value: Mm): string => `${Number(rounded(value, 2))} mm`;
const numbered = (steps: readonly string[]): Block[] => steps.map((step, i) => paragraph(`${i + 1}. ${step}`, WIDTH));

/** What is done at the cutter stands on one page with what is measured there. */
const withNext = (block: Block): Block => ({ ...block, staysWithNext: true });

/** How a jig is cut, put together and used, and what to look out for. */
export const jigText = (design: Design, made: ShoeJig): Block[] => [
  heading(`Jig for the ${made.side} shoe`), paragraph(`The lasted shoe lies in it on its upper, sole up, and what runs on the two rails cuts the sole to its arcs. ${jigSize(made)}. All that is lettered with the same letter goes together.`, WIDTH),
  ...partsTable(made), heading('Rails'), ...railLines(design, made), heading('Cautions'), ...numbered(CAUTIONS), heading('Putting it together'), ...numbered(together(made)),
  heading('Laying in and cutting'), ...numbered(cutting(made)).map(withNext), heading('Before the last pass'), ...leftTable(design, made),
];

function partsTable({ jig: { parts, frame }, boards, board }: ShoeJig): Block[] {
  const ribs = parts.filter(({ kind }) => kind === 'rib').length, last = letterOf(ribs - 1), count = 1 + Math.max(...boards.placed.map(({ sheet }) => sheet));
  return table([{ title: 'Part', width: 40 }, { title: 'How many', width: 22 }, { title: 'Goes with', width: WIDTH - 62 }], [
    { cells: [bold('ribs'), `${ribs}, A to ${last}`, `A behind the heel and ${last} ahead of the toe are the stops; slots of ${say(frame.slot)}`] },
    { cells: [bold('stringers'), '2', 'under the ribs, slots up, letters as the ribs'] },
    { cells: [bold('rails'), '2', 'over the ribs, slots down, letters as the ribs; scribed face to the shoe'] },
    { cells: [bold('bridges'), '2', 'laid across the rails at the lines seat and ball, to set the last; taken off before cutting'] },
    { cells: [bold('board'), `${count}`, `${say(board.thickness)} thick, ${board.measured ? 'as measured' : 'NOT MEASURED: measure it before cutting'}; ${mm(boards.board.length, 0)} by ${mm(boards.board.width, 0)}; cut ${say(board.kerf)} wide, taken into the lines`] },
  ]);
}

/** Behind a number as sure as a figure of the shoe that rests on an estimate. */
function guessed({ shoes, fitting }: Design, side: ShoeJig['side'], key: FigureKey | undefined): string {
  const shoe = shoes.find((one) => one.side === side);
  return shoe && figuresOf(shoe, fitting).some((figure) => figure.key === key && figure.estimated) ? ' (est.)' : '';
}

const RADIUS: Readonly<Record<string, FigureKey>> = { 'heel arc': 'radiusHeel', 'mid arc, rear': 'radiusMid', 'mid arc, front': 'radiusMid', 'toe arc': 'radiusToe' };

function railLines(design: Design, { side, jig: { frame, bush }, order, shape }: ShoeJig): Block[] {
  const radii = frame.rails.pieces.flatMap((piece) => (piece.kind === 'arc' ? [`${piece.name} ${mm(piece.radius)}${guessed(design, side, RADIUS[piece.name])}`] : []));
  const edge = order.face === 'foam body' ? `The foam body, ${say(shape.outsole)} inside the ground face: the outsole comes on after.` : `The ground face. The outsole of ${say(shape.outsole)} comes on after, so the foam is cut ${say(shape.outsole)} lower: set the cutter that much below its runners. A guide bush, a hot wire or a sanding block cannot be set lower; for them order rails for the foam body (making.jig.face).`;
  const guided = bush ? `A guide bush of ${say(bush.diameter)} with a cutter of ${say(bush.cutter)} runs along the edge, so the edge lies (bush - cutter) / 2 = ${say(offsetFor(bush))} inside the line that is cut, towards the foot. No other bush, no sled.` : 'A sled, a hot wire or a sanding block touches the edge itself; for a guide bush the rails must be made anew (making.jig.bush).';
  return [paragraph(edge, WIDTH), paragraph(guided, WIDTH), paragraph(`Radii of the edge: ${radii.join(', ')}. Beyond both ends of the sole it runs on straight.`, WIDTH)];
}

const together = ({ board, jig: { frame } }: ShoeJig): string[] => [
  `Cut a slot of ${say(frame.slot)} in a piece of the board first: the board must slide in by hand and not rattle. If it does not, change clearance or kerf (making.board), not the board.`,
  `Stand both stringers on a flat board, slots up. Press the ribs on, A at the heel, the face that says so to the toe. Press the rails on, scribed faces to each other.`,
  `Lay a straight edge across both rails at heel, ankle, apex and tip: it must lie on both over their whole thickness of ${say(board.thickness)}, level. Then glue, and screw the jig to a board that can be clamped.`,
];

const cutting = ({ jig: { bush, frame }, order, shape, board: { thickness } }: ShoeJig): string[] => [
  'Set the bridges on the rails at the lines seat and ball, the face that says so to the toe. Pad the notches (felt, foam, a bag of sand), lay the lasted shoe in on its upper, its heel at the line heel, its long axis at the marks of the bridges.',
  'Wedge it until the bottom of the last touches both bridges over their whole width: that is its pitch, and level across. Strap it down, look once more, take the bridges off. Where foam is on already, bring its upper edge to the line scribed on both rails. The last alone does as well, with the foam body fixed on it by double-sided tape.',
  'Build up until the foam stands above both rails everywhere.',
  ...(bush ? guidedSteps(routerReach(frame, thickness)) : [`${order.face === 'foam body' ? 'Cutter level with the runners' : `Cutter ${say(shape.outsole)} below the runners`}. The runners are straight and reach over both rails; they touch each rail in one place only. Rock the sled so that this place is under the cutter; away from it the cutter stands too high, never too low. Go along the shoe, 2 to 3 mm at a time.`]),
];

/** The router on its side, and how far its bush and its cutter stand out. */
const guidedSteps = ({ railFrom, railTo, fromBase, fromBush }: RouterReach): string[] => [
  `Hold the router on its side, spindle level and square across the shoe: its base slides flat on the outer ends of the ribs, its bush runs on the edge of the rail. The rail lies ${say(railFrom)} to ${say(railTo)} from the base, so the bush must stand out ${say((railFrom + railTo) / 2)} at least; the cutter must stand out ${mm(Math.ceil(fromBase), 0)} from the base, ${mm(Math.ceil(fromBush), 0)} beyond a bush that ends with the rail. Where bush or cutter is shorter, do not tilt the router: order rails without a bush and cut with a sled.`,
  'Cut from the outer side to a little past the middle, then from the inner side, each time 1 to 2 mm at most, toe to heel and back, both hands on the router: a cutter that stands out far whips. Slowest turns that its maker allows; try it in the air first.',
];

/** What must be left under the last, straight down, where the bridges stand. */
function leftTable(design: Design, { side, shape }: ShoeJig): Block[] {
  const foam = heightsOf(foamFace(shape)), ground = heightsOf(shape.face), places = bridgePlaces(shape), keys = ['seatThickness', 'thicknessTread'] as const;
  const rows = places.map(({ name, x }, i) => {
    const upper = shape.upper(...planPoint(shape.line, x, 0)) + shape.build, left = (face: typeof ground): string => `${mm(upper - face(x))}${guessed(design, side, keys[i])}`;
    return { cells: [name, `${mm(x, 0)} from the heel`, left(foam), left(ground)] };
  });
  return [
    introduction('Push an awl through at both places, or measure at the sides, before the last 1 mm is taken off. If it differs by more than 1 mm, the shoe has moved: set it anew. Stiffener included.', WIDTH),
    ...table([{ title: 'Where', width: 30 }, { title: 'Along the walking line', width: 50 }, { title: 'Thick without the outsole', width: 53, right: true }, { title: 'Thick with the outsole', width: 53, right: true }], rows),
  ];
}

const CAUTIONS = [
  'Clamp the jig to the bench and strap the shoe: what comes loose under a cutter is thrown. No hand between the rails while it turns.',
  'Eyes, ears and lungs: goggles, ear muffs, extraction and a mask against dust of board and foam. Let the cutter stop before anything is touched.',
  'A hot wire gives off fumes: only in foam whose maker allows it, under extraction, never where foam was glued with solvent that has not dried out.',
  'The instructions of the machine, the safety sheets of board, foam and cement, and local codes hold before this paper.',
] as const;

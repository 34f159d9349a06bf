import { windowRound } from '../geometry/clip.ts';
import { pointAlong, pointOn, type Path, type PathLine, type PathPiece } from '../geometry/path.ts';
import { between, type Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import type { FigureKey } from '../checks/figures.ts';
import { sentences } from '../checks/say.ts';
import { FILL_RIM, PLY_INSET, rimRoundPlies } from '../making/plies.ts';
import { setOut } from '../making/setOut.ts';
import { foamOutlines } from '../making/templates/foamOutlines.ts';
import { acrossOutline, planMarks, type PlanMarkName } from '../making/templates/planMarks.ts';
import { flatOutsole, flatPlace, TRIM, unrolledOutsole } from '../making/unrolled.ts';
import type { Shoe, SoleParts } from '../pair/shoe.ts';
import { groundLine } from '../solid/groundLine.ts';
import type { SoleShape } from '../solid/soleShape.ts';
import type { Ink, LineKind } from './drawing.ts';
import { bare, bareMeasure, type FigureBook } from './numbers.ts';
import { together, type Part } from './picture.ts';
import { onSide } from './planLines.ts';
import { isDrawn } from './sideProfile.ts';
import { lettering, line, namedLine, tied, type Template } from './template.ts';

/** The templates of a sole that are seen from above. */

/** What the templates of one sole are drawn from; `name` is job and date, as lettered within. */
export interface Sole { readonly shoe: Shoe; readonly parts: SoleParts; readonly book: FigureBook; readonly name: string }

/** @param plies of the stiffener, where it is known what it is laid of */
export function planTemplates(sole: Sole, plies?: readonly Template[]): Template[] {
  const rocker = sole.shoe.kind === 'rocker', plain = rocker && sole.parts.shape.stiffener > 0 ? [stiffener(sole)] : [];
  return [...(rocker ? [insole(sole)] : []), foamBody(sole), ...(plies ?? plain), outsole(sole)];
}

export const SEEN = 'Seen from above, toe to the right: turn it over for the other face.';
const SEAT_END = 'Seat end: where the breast of a heel would stand; this sole runs through.';

function insole(sole: Sole): Template {
  const { feather } = sole.parts.shape;
  return template(sole, 'insole', 'insole', ['Cut on the feather line as the last has it. Nothing is taken off for the upper that is lasted over it: take off its thickness where your way of lasting needs it.', SEAT_END, SEEN], together([
    outlined(sole, feather), within(sole, feather, 'insole'), marksOn(sole, feather, FOOT),
  ]));
}

function foamBody(sole: Sole): Template {
  const { shoe, parts: { shape } } = sole, { upper, lower } = foamOutlines(shape), upright = upper === lower;
  return template(sole, 'foam-body', 'foam body', [
    upright ? 'Its walls are upright: one outline above and below.' : 'Full line: upper outline, under the stiffener. Broken line: outline below, on the outsole. Cut outside both, then lean the wall from one to the other.',
    SEAT_END, SEEN,
  ], together([
    outlined(sole, upper), ...(upright ? [] : [line(turned(shoe, lower), 'hidden'), tiedTo(shoe, lower, 'outline below', 0.62)]),
    within(sole, upper, 'foam body'), marksOn(sole, upper, [...FOOT, ...GROUND]),
  ]));
}

function stiffener(sole: Sole): Template {
  const { shoe, parts: { shape, shape: { feather } } } = sole, plies = setOut(feather, -PLY_INSET);
  return template(sole, 'stiffener', 'stiffener plies', [
    `Plain inset of ${PLY_INSET} mm from the feather line (broken): only the thickness of the stiffener is known, not what it is laid of.`,
    sentences(`Beyond it ${rimRoundPlies(shape)}`, FILL_RIM),
    'Number the plies in the order of use before any resin is mixed.', SEEN,
  ], together([
    outlined(sole, plies), line(turned(shoe, feather), 'hidden'), within(sole, plies, 'stiffener plies'), marksOn(sole, plies, FOOT), tiedTo(shoe, plies, 'cut here', 0.62),
  ]));
}

/** The lines of the plan bend where the face is rolled out, so they are laid flat point by point. */
function outsole(sole: Sole): Template {
  const { shoe, parts: { shape } } = sole, ground = groundLine(shape), onFlat = flatPlace(shape);
  const lay = ({ from, to }: PathLine): Path => bent(Array.from({ length: PIECES + 1 }, (_, i) => onFlat(between(from, to, i / PIECES))));
  return template(sole, 'outsole', 'outsole, laid flat', [
    `Full line: with ${TRIM} mm left all round to be trimmed when it is on. Broken line: the net outline. Lay the apex and seat lines on those of the foam and press from the middle outwards.`,
    'Upper side up: the side that is glued.', SEEN,
  ], together([
    line(turned(shoe, unrolledOutsole(shape)), 'visible'), line(turned(shoe, flatOutsole(shape)), 'hidden'),
    namedAxis(sole, lay({ kind: 'line', from: [0, 0], to: [shape.last.length, 0] })),
    within(sole, flatOutsole(shape), 'outsole'), marksOn(sole, ground, [...FOOT, ...GROUND], lay),
  ]));
}
const PIECES = 24;

export const template = ({ shoe: { side } }: Sole, stem: string, part: string, notes: readonly string[], picture: Part): Template => ({ side, stem, part, notes, picture, fixed: [] });

export const turned = ({ side }: Pick<Shoe, 'side'>, path: Path): Path => onSide(side, path.filter(isDrawn));
const bent = (points: readonly Point[]): Path => points.slice(1).map((to, i): PathPiece => ({ kind: 'line', from: points[i]!, to }));

/** A closed outline with the long axis through it. */
export function outlined(sole: Sole, outline: Path): Part {
  const { least, most } = windowRound([outline]);
  return together([line(turned(sole.shoe, outline), 'visible'), namedAxis(sole, [{ kind: 'line', from: [least[0] - PAST, 0], to: [most[0] + PAST, 0] }])]);
}
/** How far the long axis runs out of an outline, so that it is found again when that is cut. */
const PAST: Mm = 4;
const namedAxis = ({ shoe }: Sole, path: Path): Part => together([line(turned(shoe, path), 'centre', 'computed'), lettering('centre line', [pointOn(path[0]!, 0)[0] + 28, 2])]);

/** Name, sides, and where to look: inside the outline, for what lies outside is cut away. */
export function within({ shoe: { side, last }, name }: Sole, outline: Path, part: string): Part {
  const { least, most } = windowRound([outline]), at = (share: number): Mm => least[0] + (most[0] - least[0]) * share, out = side === 'left' ? 1 : -1;
  const half = Math.min(last.heelWidth, last.ballWidth) / 2;
  return together([
    lettering(`${side.toUpperCase()} ${part}`, [at(0.45), 8], { size: 6, bold: true }), lettering(name, [at(0.45), -10], { bold: true }),
    lettering('outer side', [at(0.6), out * half * 0.7]), lettering('inner side', [at(0.6), -out * half * 0.7]),
    lettering('toe', [at(0.93), 5], { bold: true }, -1), lettering('heel', [at(0.07), 5], { bold: true }, 1),
  ]);
}

export function tiedTo(shoe: Shoe, path: Path, text: string, share: number): Part {
  const at = pointAlong(path, share * path.length), [, y] = at, [x, turnedY] = shoe.side === 'left' ? at : [at[0], -y];
  return tied(text, [x, turnedY], turnedY > 0 ? 1 : -1);
}

const FOOT: readonly PlanMarkName[] = ['seat end', 'ankle', 'ball', 'standing point', 'apex'];
const GROUND: readonly PlanMarkName[] = ['flat begins', 'flat ends', 'strike point'];

interface Look { readonly kind: LineKind; readonly ink: Ink; readonly figure?: FigureKey }
const LOOKS: Readonly<Record<PlanMarkName, Look>> = {
  'seat end': { kind: 'thin', ink: 'ink' }, ankle: { kind: 'centre', ink: 'computed', figure: 'pivotX' }, ball: { kind: 'phantom', ink: 'ink' },
  'standing point': { kind: 'centre', ink: 'computed', figure: 'standingPoint' }, 'flat begins': { kind: 'hidden', ink: 'computed' }, 'flat ends': { kind: 'hidden', ink: 'computed' },
  apex: { kind: 'centre', ink: 'governs', figure: 'apex' }, 'strike point': { kind: 'hidden', ink: 'computed' },
};

/** The lines across, each with its name and its place from the heel. @param lay where a line of the plan lies on the template, LEFT shoe */
export function marksOn(sole: Sole, outline: Path, wanted: readonly PlanMarkName[], lay: (path: PathLine) => Path = (path) => [path]): Part {
  const { shoe, parts: { shape } } = sole;
  return together(planMarks(shoe, shape).filter(({ of }) => wanted.includes(of)).flatMap((mark): Part[] => {
    const across = acrossOutline(outline, mark), { kind, ink } = LOOKS[mark.of];
    return across ? [namedLine(nameOf(sole, mark.of), turned(shoe, lay(across)), kind, ink)] : [];
  }));
}

function nameOf({ shoe, book, parts: { shape } }: Sole, of: PlanMarkName): string {
  const figure = LOOKS[of].figure && book(LOOKS[of].figure), crest = book('crestAngle');
  const name = of === 'apex' && crest && isTurned(shape) ? `crest ${bare(crest)}°, apex` : of === 'ball' ? 'ball line' : of;
  return of === 'seat end' ? `${name} ${bareMeasure(shoe.fitting.last.seatLength)}` : figure ? `${name} ${bare(figure)}` : name;
}

const isTurned = ({ line: { turn } }: SoleShape): boolean => Math.abs(turn) > 1e-9;

import { deg, inUnitOf, mm, rounded } from '../checks/say.ts';
import { boughtWords, spanOf, standSeen, type FlatBought, type StandSeen } from '../checks/standSeen.ts';
import type { Fitting } from '../fitting/fitting.ts';
import { pointOn } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import { inDegrees, type Mm } from '../geometry/units.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import type { OnSlope } from '../roll/slopes.ts';
import type { Reach } from '../roll/sway.ts';
import { arrowHead, circle, drawn, filled, polyline, stroke, words, type Mark, type Words } from './drawing.ts';
import type { Block } from './flow.ts';
import { fitted, linesOf } from './fitted.ts';
import { sideOutline, sideProfile } from './sideProfile.ts';
import { onPaper, spot, type View } from './view.ts';

/** How large the picture is: its width, and its letters, which everything else keeps to. */
export interface StandSize { readonly width: Mm; readonly size: Mm }
/** What is drawn, from the upper left corner at zero, and how high it is. */
export interface StandPicture { readonly height: Mm; readonly marks: readonly Mark[] }

/** People do more than soles. */
const NO_BALANCE = 'People stand by their muscles: this compares soles and says nothing of a person\'s balance.';

/**
 * How a rocker stands, drawn: the sole on the level floor with what of it touches and how far the weight may go, where it stands
 * on slopes, and what a standing flat buys. One place along the sole lies at one place across the picture from top to bottom.
 */
export function standPicture(shoe: RockerShoe, fitting: Fitting, look: StandSize, said: Said = (text) => inUnitOf(fitting.units, text)): StandPicture {
  const marks: Mark[] = [];
  let y = 0;
  for (const part of partsOf(shoe, fitting, look, said)) { marks.push(...part.marks(y)); y += part.height; }
  return { height: y, marks };
}

/** The same as strips of a page, which goes on where a part of it ends. */
export const standBlocks = (shoe: RockerShoe, fitting: Fitting, look: StandSize): Block[] => partsOf(shoe, fitting, look, (text) => inUnitOf(fitting.units, text))
  .map(({ height, marks }) => ({ height, marks: (left, top) => marks(0).map((mark) => movedTo(mark, [left, top])) }));

/** Turns the lengths of a sentence into those that are read. */
type Said = (text: string) => string;

function partsOf(shoe: RockerShoe, fitting: Fitting, look: StandSize, said: Said): readonly Part[] {
  const seen = standSeen(shoe, fitting), layout = layOut(shoe, look), rows = rowsOf(seen, said, layout), floor = layout.view.zero[1] + 1.1 * look.size;
  const standing: Part = { height: floor + rows.height, marks: (top) => [...onFloor(seen, shoe, layout).map((mark) => movedTo(mark, [0, top])), ...rows.marks(top + floor)] };
  return [standing, slopesOf(seen, layout), boughtOf(seen.bought, fitting, said, layout)];
}

function movedTo(mark: Mark, [dx, dy]: Point): Mark {
  const to = ([x, y]: Point): Point => [x + dx, y + dy];
  if (mark.kind === 'text') return { ...mark, at: to(mark.at) };
  return { ...mark, path: mark.path.map((piece) => (piece.kind === 'line' ? { ...piece, from: to(piece.from), to: to(piece.to) } : { ...piece, centre: to(piece.centre) })) };
}

interface Layout extends StandSize { readonly view: View; readonly across: (along: Mm) => Mm; readonly line: Mm }
/** A part of the picture under the floor. */
interface Part { readonly height: Mm; readonly marks: (top: Mm) => readonly Mark[] }

/** Room at both sides, for the names of the slopes and for what is said of them, in letter sizes. */
const LEFT = 6, RIGHT = 10.5;

function layOut({ shape }: RockerShoe, look: StandSize): Layout {
  const { size, width } = look, outline = sideOutline(sideProfile(shape)).flatMap((piece) => [pointOn(piece, 0), pointOn(piece, 1)]), xs = outline.map(([x]) => x), from = Math.min(...xs);
  const scale = (width - (LEFT + RIGHT) * size) / (Math.max(...xs) - from), high = Math.max(...outline.map(([, z]) => z)) * scale;
  const view: View = { zero: [LEFT * size - from * scale, 4 * size + high], scale };
  return { ...look, view, across: (along) => spot(view, [along, 0])[0], line: 1.45 * size };
}

/** The sole at rest, the plumb line from the hip, and the floor. */
function onFloor({ side, under, estimated, touching }: StandSeen, { shape }: RockerShoe, { view, across, size, width }: Layout): Mark[] {
  const profile = sideProfile(shape), outline = onPaper(view, sideOutline(profile)), x = across(under), ground = view.zero[1];
  return [
    words(`${side === 'left' ? 'Left' : 'Right'} shoe, standing${estimated ? ' (est.)' : ''}`, [0, 1.1 * size], { size: 1.15 * size, bold: true }),
    filled(outline, 'foam'), drawn(outline, 'visible'), stroke([0, ground], [width, ground], 'visible', 'ink'),
    stroke([x, 1.7 * size], [x, ground], 'centre', 'computed'), arrowHead([x, ground], [0, 1], 'computed'), words('weight', [x + 0.4 * size, 2.6 * size], { size, ink: 'computed' }),
    ...touching.map(({ from, to }, i) => filled(polyline([[across(from), ground], [across(to), ground], [across(to), ground + (2 - i) * 0.35 * size], [across(from), ground + (2 - i) * 0.35 * size]], true), i === 0 ? 'rubber' : 'ink')),
  ];
}

/** What touches, and how far the weight may go: a bar for each, where it lies along the sole, with its words over it. */
function rowsOf({ touching, under, sway, bought }: StandSeen, said: Said, { size, width, line, across }: Layout): Part {
  const bar = (from: Mm, to: Mm, y: Mm): Mark => filled(polyline([[across(from), y], [across(to), y], [across(to), y + 0.4 * size], [across(from), y + 0.4 * size]], true), 'rubber');
  const reach = ({ back, front }: Reach, y: Mm): Mark[] => { const a = across(under - back), b = across(under + front); return [stroke([a, y], [b, y], 'visible', 'computed'), ...[a, b].map((x) => stroke([x, y - 0.4 * size], [x, y + 0.4 * size], 'visible', 'computed'))]; };
  const room = (name: string, of: Reach): { readonly text: string; readonly mark: (y: Mm) => readonly Mark[] } => ({ text: `${name}: ${said(mm(of.back))} back, ${said(mm(of.front))} forward`, mark: (y) => reach(of, y + 0.2 * size) });
  const rows = [
    ...touching.map(({ words: foam, from, to, length, depth }) => ({ text: `Touches on one foot, ${foam}: ${said(mm(length, 0))} long, ${said(mm(depth))} deep`, mark: (y: Mm) => [bar(from, to, y)] })),
    ...(bought?.ordered ? [room('Weight may go before the shoe rolls, on its flat', sway.flat)] : []), room('and on the mid arc', sway.mid), room('and to the ends of the sole', sway.sole),
  ];
  const high = line + 0.9 * size;
  return { height: rows.length * high + 0.5 * size, marks: (top) => rows.flatMap(({ text, mark }, i) => [fitted(text, [0, top + i * high + size], width, { size }), ...mark(top + i * high + line)]) };
}

/** A row for each slope, uphill first: a dot where the shoe stands with the leg held as on the level, a ring where it comes to rest leaning. */
function slopesOf({ slopes, mid, under }: StandSeen, { size, width, line, across }: Layout): Part {
  const told = linesOf('On a slope. Dot: where it stands with the leg held as on the level. Ring: where it rests, the whole body leaning. Lines: ends of the mid arc.', width, { size }), step = 1.25 * size, head = told.length * line + 0.3 * size;
  const rows = [...slopes].reverse(), height = head + rows.length * step + 0.8 * size, foot = (top: Mm): Mm => top + head + rows.length * step;
  return { height, marks: (top) => [
    ...told.map((text, i) => words(text, [0, top + (i + 0.75) * line], { size })),
    ...[...mid].map((x) => stroke([across(x), top + head], [across(x), foot(top)], 'thin', 'ink')), stroke([across(under), top + head], [across(under), foot(top)], 'centre', 'computed'),
    ...rows.flatMap((row, i) => slopeRow(row, top + head + (i + 0.5) * step, { size, across, width })),
  ] };
}

function slopeRow({ slope, contact, leaning }: OnSlope, y: Mm, { size, across, width }: Pick<Layout, 'size' | 'across' | 'width'>): Mark[] {
  const angle = inDegrees(slope), r = 0.32 * size, text = (said: string, x: Mm, anchor: Words['anchor']): Mark => words(said, [x, y + 0.32 * size], { size, anchor });
  return [
    ...(leaning ? [drawn(circle([across(leaning.contact[0]), y], 1.35 * r), 'thin', 'ink')] : []), filled(circle([across(contact[0]), y], r), 'ink'),
    text(Math.round(angle) === 0 ? 'level' : `${rounded(Math.abs(angle), 0)}° ${angle > 0 ? 'up' : 'down'}`, 0, 'start'), text(leaning ? leanWords(inDegrees(leaning.tilt)) : 'sole ends before', width, 'end'),
  ];
}

const leanWords = (tilt: number): string => (Math.abs(tilt) < 0.05 ? 'upright' : `leans ${deg(Math.abs(tilt))} ${tilt > 0 ? 'forward' : 'back'}`);

/** What the flat buys, in words and as bars from the softest to the hardest foam; at 1 a stiff body just stays up. */
function boughtOf(bought: FlatBought | undefined, { wearer: { mass } }: Fitting, said: Said, { size, width, line }: Layout): Part {
  const text = [...(bought ? boughtWords(bought).map(said) : ['The apex leaves no room for a standing flat.']), ...(mass ? [] : ['Squash and push back are left out: no body mass on the sheet (wearer.mass).']), ...(bought?.holds ? ['Line over the bars: 1, as hard as it just needs.'] : []), NO_BALANCE];
  const lines = text.flatMap((one) => linesOf(one, width, { size })), holds = bought?.holds, rows = holds ? [['with the flat', holds.with], ['without', holds.without]] as const : [], high = 1.7 * size;
  const left = 8.5 * size, right = width - 9 * size, most = Math.max(1.2, ...rows.flatMap(([, values]) => values)), at = (value: number): Mm => left + ((right - left) * value) / most;
  return { height: lines.length * line + 1.8 * size + rows.length * high, marks: (top) => {
    const under = top + lines.length * line + 0.3 * size;
    return [
      ...lines.map((one, i) => words(one, [0, top + (i + 0.75) * line], { size })),
      ...rows.flatMap(([name, values], i): Mark[] => {
        const y = under + (i + 0.5) * high, [least, best] = [Math.min(...values), Math.max(...values)];
        const box = (from: Mm, to: Mm): Point[] => [[from, y - 0.5 * size], [to, y - 0.5 * size], [to, y + 0.5 * size], [from, y + 0.5 * size]];
        return [
          words(name, [0, y + 0.32 * size], { size }), filled(polyline(box(left, at(least)), true), 'rubber'), filled(polyline(box(at(least), at(best)), true), 'foam'), drawn(polyline(box(left, at(best)), true), 'thin', 'ink'),
          words(`${spanOf(values)} times`, [width, y + 0.32 * size], { size, anchor: 'end' }),
        ];
      }),
      ...(rows.length ? [stroke([at(1), under], [at(1), under + rows.length * high], 'visible', 'governs')] : []),
    ];
  } };
}

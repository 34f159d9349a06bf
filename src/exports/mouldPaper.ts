import { cubic, deg, grams, mm, rounded } from '../checks/say.ts';
import type { Making } from '../fitting/making.ts';
import { boundsOf } from '../geometry/mesh.ts';
import { inDegrees } from '../geometry/units.ts';
import type { ShoeMould } from '../making/made.ts';
import type { MouldPiece } from '../making/mould.ts';
import { cuttingOf } from '../making/mould/cutter.ts';
import { isPressed } from '../making/mould/groove.ts';
import { mixFor, onScale } from '../making/mould/mix.ts';
import { wallsOf } from '../making/mould/walls.ts';
import { heading, introduction, subheading, table, type Block } from './flow.ts';
import { bold, ruled, WIDTH } from './figureSections.ts';
import type { Line } from './orderWords.ts';

const percent = (factor: number): string => `${rounded((factor - 1) * 100, 1)} %`;

/** What a mould is built with, how much goes into it, and how it is cut, closed and opened. */
export function mouldSection(moulds: readonly ShoeMould[], making: Making): Block[] {
  if (moulds.length === 0) return [];
  return [
    heading('Mould'),
    introduction('A cavity in one piece leans out by the draft at least, one in halves takes the walls as they are. The cast of the first comes out wider by the draft at the face under the last: trim it there to the feather line, or to the edge where the sole stands out beyond it. What is weighed out stands under each shoe: by what the part weighs once set, not by what the mix weighs as it is poured.', WIDTH),
    ...table(
      [{ title: 'Shoe', width: 14 }, { title: 'Part', width: 26 }, { title: 'Draft', width: 16, right: true }, { title: 'Shrink length, width, height', width: 56, right: true }, { title: 'Cavity holds', width: 29, right: true }, { title: 'of it draft', width: WIDTH - 141, right: true }],
      moulds.map(({ side, order, mould }) => ({ cells: [bold(side), order.part, deg(inDegrees(order.draft)), order.shrink.map(percent).join(', '), cubic(mould.fill), order.split ? 'none' : cubic(mould.wedge)] })),
    ),
    ...moulds.flatMap((one) => [subheading(`Mould of the ${one.side} shoe`), ...ruled(linesOf(one, making))]),
  ];
}

function linesOf(one: ShoeMould, making: Making): Line[] {
  const { order, mould: { layout, draft } } = one, walls = wallsOf(layout, order);
  return [
    ['Cast of', castWords(one)], ['Weigh out', mixWords(one)],
    ['Split line', splitWords(one)], ['Closed by', closingWords(one)],
    ['Least draft found', `${deg(inDegrees(draft.least))} over ${draft.facets} facets of the walls, ${mm(draft.at[0], 0)} from the heel${order.split ? '; the halves part sideways' : ''}`],
    ['Least walls', `round the cavity ${mm(walls.side)}, under it and in the lid ${mm(walls.floor)}, beside dowels and bolts ${mm(walls.bores)}`],
    ['Made', order.by === 'routed' ? routedWords(one, making) : printedWords(one)],
  ];
}

const castWords = ({ order: { cast, shrink } }: ShoeMould): string =>
  `${cast.name}, ${rounded(cast.density, 2)} g/cm³ once set (${cast.densityBasis}); shrink ${shrink.map(percent).join(', ')} (${cast.shrinkBasis}). The maker's data sheet or a weighed and measured trial piece goes before these.`;

function mixWords({ order, mould: { fill, layout } }: ShoeMould): string {
  const { cast, holes, lost, total } = onScale(mixFor(fill, layout, order));
  return isPressed(order.cast.name)
    ? `${grams(total)} of foam: ${grams(cast)} for the part, ${grams(lost)} for the flash groove (common practice, 5 %)`
    : `${grams(total)} of mix: ${grams(cast)} in the cavity, ${grams(holes)} in pour hole and vents, ${grams(lost)} left in the cup (common practice, 5 %, 10 g at least). Gloves, eyes covered, extraction; the safety sheets of the makers hold.`;
}

function splitWords({ order: { split, cast }, mould: { layout: { cuts } } }: ShoeMould): string {
  const across = cuts.cavity.length ? ` Cut across for the bed: cavity ${cuts.cavity.map((x) => mm(x, 0)).join(', ')}, lid ${cuts.lid.map((x) => mm(x, 0)).join(', ')} from the heel; dowels along the shoe in the joints of the cavity.` : '';
  const holes = isPressed(cast.name) ? ' No pour hole: the foam is laid in warm and pressed; what is too much runs into the groove round the cavity.' : ` Poured through a hole over the heel, vents over toe and heel, all in the lid: raise the toe end until foam shows in the vents.`;
  return `Along the edge of the face under the last: the lid carries that face, the cavity all below it.${split ? ' The cavity parts along the long axis into an inner and an outer half.' : ''}${across}${holes}`;
}

function closingWords({ order: { closing, bolt, ledge, dowel }, mould: { layout: { bolts, dowels } } }: ShoeMould): string {
  const found = `${dowels.length} dowels of ${mm(dowel)} find the lid`;
  return closing === 'bolts' ? `${bolts.length} bolts through holes of ${mm(bolt)}, washers on both sides; ${found}` : `clamps with jaws of ${mm(ledge, 0)} on the rim all round; ${found}`;
}

/** A block as it is bought: whole millimetres, upwards. */
function blockWords(pieces: readonly MouldPiece[]): string {
  const boxes = pieces.map(({ mesh }) => boundsOf(mesh)), over = (k: 0 | 1 | 2): number => Math.ceil(Math.max(...boxes.map(({ most }) => most[k])) - Math.min(...boxes.map(({ least }) => least[k])) - 1e-6);
  return `${over(0)} × ${over(1)} × ${over(2)} mm`;
}

function routedWords({ order, mould: { cavity, lid, layout, draft } }: ShoeMould, { tool }: Making): string {
  const blocks = `Routed: cavity from a block of ${blockWords(cavity)}, lid from ${blockWords(lid)}, flat faces down.${draft.least < 0 ? ' Walls flare: cut each half lying on its border, joint up.' : ''}`;
  if (!tool) return `${blocks} No cutter on the sheet (making.tool): reach and corners not checked.`;
  const { corner, fillet, depth } = cuttingOf(layout, tool, order.draft);
  return `${blocks} ${mm(depth)} deep; tightest corner in plan ${mm(corner.radius)} radius, ${mm(corner.at[0], 0)} from the heel, cutter radius ${mm(tool.diameter / 2)}. ${fillet > 0
    ? `The ball end leaves ${mm(fillet)} standing where floor meets wall.` : 'The flat end cuts the corner at the floor sharp and leaves steps on the floor, which are rubbed down.'}`;
}

const printedWords = ({ mould: { cavity, lid, draft } }: ShoeMould): string =>
  `Printed: ${[...cavity, ...lid].map((piece) => `${piece.name} ${blockWords([piece])}`).join(', ')}. Cavity as it stands, lid turned over, each on its flat face: ${draft.least < 0 ? `walls hang over by ${deg(inDegrees(-draft.least))}, which prints` : 'nothing hangs over'}. Several walls and a close filling, or it gives under the clamps.`;

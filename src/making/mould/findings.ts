import type { Finding } from '../../checks/finding.ts';
import { over, under } from '../../checks/seen.ts';
import { deg, grams, mm, rounded } from '../../checks/say.ts';
import { PRACTICE } from '../../checks/sources.ts';
import type { Making, MouldOrder } from '../../fitting/making.ts';
import { rangeOf } from '../../fitting/ranges.ts';
import type { Side } from '../../fitting/words.ts';
import { volumeOf } from '../../geometry/mesh.ts';
import { degrees, inDegrees, type Mm } from '../../geometry/units.ts';
import { FOAMS } from '../../materials/materials.ts';
import { partsOf, type Pair, type Shoe, type SoleParts } from '../../pair/shoe.ts';
import { bedFor, cavityShell, fillShell, mouldPart } from '../mould.ts';
import { mouldFaults } from '../mouldFaults.ts';
import { bedFindings } from './bedFindings.ts';
import { cuttingOf } from './cutter.ts';
import { draftFound } from './draft.ts';
import { worstHook } from './hooks.ts';
import { layoutOf, type MouldLayout } from './layout.ts';
import { mixFor } from './mix.ts';
import { wallsOf } from './walls.ts';

/** A mould as it is set out for one shoe. */
export interface SetOut { readonly side: Side; readonly order: MouldOrder; readonly making: Making; readonly parts: SoleParts; readonly layout: MouldLayout; readonly foam: Shoe['order']['foam'] }

/** What a careful maker would want to know of a mould before it is cut. One that cannot be is told by mouldFaults. */
export function mouldFindings(pair: Pair): Finding[] {
  const { fitting: { making }, shoes } = pair, { mould: order } = making;
  if (!order || mouldFaults(pair).length > 0) return [];
  const setOut = shoes.flatMap((shoe): SetOut[] => {
    const parts = partsOf(shoe);
    return parts ? [{ side: shoe.side, order, making, parts, layout: layoutFor(parts, order, making), foam: shoe.order.foam }] : [];
  });
  return [...lowDraft(order), ...ledge(order), ...setOut.flatMap((one) => [...draft(one), ...hooked(one), ...walls(one), ...besideBores(pair, one), ...cutter(one), ...bedFindings(one), ...weight(one)])];
}

const layoutFor = (parts: SoleParts, order: MouldOrder, { chordGap, printBed }: Making): MouldLayout =>
  layoutOf(mouldPart(parts, order).body, order, chordGap, bedFor(order, printBed));

const common = { unit: 'mm', where: 'mould', basis: PRACTICE } as const;

/** Less than this and the part drags along the wall as it comes out. */
const LEAST_DRAFT = degrees(2);

function lowDraft({ draft: asked, split }: MouldOrder): Finding[] {
  if (split || !under(asked, LEAST_DRAFT)) return [];
  return [{ ...common, code: 'MOULD_DRAFT', severity: 'warn', unit: 'deg', measured: inDegrees(asked), limit: inDegrees(LEAST_DRAFT),
    text: `Walls that lean out by ${deg(inDegrees(asked))} let the part go badly. Take ${deg(inDegrees(LEAST_DRAFT), 0)} to 3°, 5° is better (making.mould.draft), or a cavity in two halves (making.mould.split).` }];
}

function ledge({ closing, rim, ledge: asked }: MouldOrder): Finding[] {
  if (closing !== 'clamps' || !under(rim, asked)) return [];
  return [{ ...common, code: 'MOULD_LEDGE', severity: 'warn', measured: rim, limit: asked,
    text: `The rim is ${mm(rim)} wide and the jaws of the clamps want ${mm(asked)}. Make it that wide (making.mould.rim), or say how wide the jaws are (making.mould.ledge).` }];
}

/** Rounding of the facets themselves. */
const FACET = degrees(0.05);

/** The walls as they will be cut, held against what was asked. */
function draft({ side, order, layout }: SetOut): Finding[] {
  const { least, at } = draftFound(cavityShell(layout.rows, layout.base), layout);
  if (order.split || !under(least, order.draft - FACET)) return [];
  return [{ ...common, code: 'MOULD_DRAFT', severity: 'warn', side, unit: 'deg', measured: inDegrees(least), limit: inDegrees(order.draft), at: at[0],
    text: `A wall of the cavity leans out by ${deg(inDegrees(least))} only, ${deg(inDegrees(order.draft))} were asked for (making.mould.draft).` }];
}

/** A cast gives by so much at its tip or heel without being felt. Common practice. */
const GIVES: Mm = 1;

/** Halves part sideways; a tip that lies beside the long axis is held by the half that reaches round it. */
function hooked({ side, order, layout }: SetOut): Finding[] {
  if (!order.split) return [];
  const { end, half, by, at } = worstHook(layout);
  if (!over(by, GIVES)) return [];
  return [{ ...common, code: 'MOULD_HOOK', severity: 'warn', side, measured: by, limit: GIVES, where: end, at: at[0],
    text: `The ${end} lies ${mm(Math.abs(at[1]))} to the ${half} side of the plane that parts the halves, so the ${half} half reaches ${mm(by)} round it and holds the cast there, ${mm(at[0], 0)} from the heel. Take the other half off first, then draw the cast out of the ${half} one, its ${end} last and bent out: a stiff cast tears there, and wants a cavity in one piece (walls that do not flare, order.taper, and making.mould.split left out).` }];
}

/** Board thinner than this bows when the mould is closed; a print is stiffer. */
const LEAST_WALL: Record<MouldOrder['by'], Mm> = { routed: 8, printed: 4 };

function walls({ side, order, layout }: SetOut): Finding[] {
  const { side: round, floor } = wallsOf(layout, order), least = Math.min(round, floor), limit = LEAST_WALL[order.by], field = round < floor ? 'rim' : 'floor';
  if (!under(least, limit)) return [];
  return [{ ...common, code: 'MOULD_WALL', severity: 'warn', side, measured: least, limit,
    text: `The wall ${field === 'rim' ? 'round' : 'under'} the cavity is ${mm(least)} at its thinnest; ${order.by} it wants ${mm(limit, 0)} to stay straight when the mould is closed (making.mould.${field}).` }];
}

/** Less wall than this beside a dowel or a bolt breaks out. */
const LEAST_BESIDE: Mm = 3;

/** Where walls flare, the cavity reaches under the rim towards what stands in it. */
function besideBores(pair: Pair, one: SetOut): Finding[] {
  const { side, order, layout } = one, { bores } = wallsOf(layout, order);
  if (!under(bores, LEAST_BESIDE)) return [];
  const wider = widerRim(pair, one, bores), thinner = `thinner dowels${order.closing === 'bolts' ? ' or bolts' : ''} (making.mould.dowel${order.closing === 'bolts' ? ', making.mould.bolt' : ''})`;
  return [{ ...common, code: 'MOULD_BORES', severity: 'warn', side, measured: bores, limit: LEAST_BESIDE,
    text: `Beside a dowel or a bolt ${mm(bores)} of wall is left at its thinnest, and less than ${mm(LEAST_BESIDE, 0)} breaks out. Take ${wider === undefined ? '' : `a rim of ${mm(wider)} (making.mould.rim), or `}${thinner}.` }];
}

/** The narrowest rim, to half a millimetre, that leaves wall enough and that a mould can be made with. */
function widerRim(pair: Pair, { order, making, parts }: SetOut, bores: Mm): Mm | undefined {
  const first = Math.ceil(2 * (order.rim + 2 * (LEAST_BESIDE - bores))) / 2;
  return [0, 1, 2, 4].map((more) => first + more).find((rim) => {
    const mould = { ...order, rim };
    return rim <= rangeOf('making.mould.rim').limits[1] && !under(wallsOf(layoutFor(parts, mould, making), mould).bores, LEAST_BESIDE)
      && mouldFaults({ ...pair, fitting: { ...pair.fitting, making: { ...making, mould } } }).length === 0;
  });
}

/** The cutter must stick out this much further than the cavity is deep. */
const BEYOND: Mm = 5;
/** A corner rounded by less than this goes when the edge is rubbed down anyway. */
const FILLET: Mm = 0.5;

function cutter({ side, order, making: { tool }, layout }: SetOut): Finding[] {
  if (!tool || order.by !== 'routed') return [];
  const { corner, fillet, depth } = cuttingOf(layout, tool, order.draft), needed = depth + BEYOND, radius = tool.diameter / 2;
  return [
    ...(over(needed, tool.reach) ? [{ ...common, code: 'MOULD_REACH', severity: 'warn', side, measured: tool.reach, limit: needed,
      text: `The cavity is ${mm(depth)} deep and the cutter reaches ${mm(tool.reach)}; it needs ${mm(needed)} (depth and ${BEYOND} mm). Take one that reaches ${mm(Math.ceil(needed - 1e-9), 0)} (making.tool.reach).` } as const] : []),
    ...(under(corner.radius, radius) ? [{ ...common, code: 'MOULD_CORNER', severity: 'warn', side, measured: tool.diameter, limit: 2 * corner.radius, at: corner.at[0],
      text: `The cavity turns in a radius of ${mm(corner.radius)} ${mm(corner.at[0], 0)} from the heel, and a cutter of ${mm(tool.diameter)} does not go into it. Finish with one of ${mm(Math.floor(20 * corner.radius) / 10)} or less (making.tool.diameter).` } as const] : []),
    ...(over(fillet, FILLET) ? [{ ...common, code: 'MOULD_FILLET', severity: 'note', side, measured: fillet, limit: FILLET,
      text: `A ball end of ${mm(tool.diameter)} rounds the corner between floor and wall with a radius of ${mm(radius)} and leaves ${mm(fillet)} standing in it, all along the ground line: the cast's lower edge comes out that much blunt. A ball end of ${mm(Math.floor((10 * tool.diameter * FILLET) / fillet) / 10)} leaves ${mm(FILLET)}; a flat end cuts it sharp.` } as const] : []),
  ];
}

/** Cast, a foam body may weigh much more than the foam that the figures reckon with. */
function weight({ side, order, layout, foam }: SetOut): Finding[] {
  const { cast } = mixFor(volumeOf(fillShell(layout.rows)), layout, order), { density } = order.cast, ordered = FOAMS[foam].density;
  if (order.part !== 'foam body' || Math.abs(density / ordered - 1) < 0.1) return [];
  return [{ ...common, code: 'MOULD_WEIGHT', severity: 'note', side, unit: 'g', measured: cast, limit: (cast * ordered) / density,
    text: `Cast in ${order.cast.name} of ${rounded(density, 2)} g/cm³ the foam body weighs ${grams(cast)} untrimmed; the figures reckon with ${foam}, of which it would be ${grams((cast * ordered) / density)}. Count the difference of ${grams(Math.abs(cast - (cast * ordered) / density))} in.` }];
}

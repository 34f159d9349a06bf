import { figuresOf, type FigureKey } from '../../checks/figures.ts';
import { mm } from '../../checks/say.ts';
import type { BoardOrder, GaugeOrder } from '../../fitting/making.ts';
import type { Side } from '../../fitting/words.ts';
import type { Mm } from '../../geometry/units.ts';
import { partsOf, type Pair, type Shoe, type SoleParts } from '../../pair/shoe.ts';
import type { FlatPart } from '../flatPart.ts';
import { heelBlock } from './heelBlock.ts';
import { edgeHeights, heightGauge, type EdgeHeight } from './heightGauge.ts';
import { profileGauge } from './profileGauge.ts';
import { repairGauge } from './repairGauge.ts';
import { bandOf, sliceAt, type Slice } from './slice.ts';
import { toeEndOf } from './springByWedge.ts';
import { SPRING_WITHIN, toeWedge, type ToeEnd } from './toeWedge.ts';

/**
 * The gauges of one shoe. The parts are as they are cut and lettered for this side: a profile gauge is seen from the side
 * of the shoe it is held to.
 */
export interface ShoeGauges {
  readonly side: Side;
  readonly parts: readonly FlatPart[];
  /** Where the profile gauges and the repairer's gauge are held. */
  readonly slices: { readonly inner: Slice; readonly outer: Slice; readonly repair: Slice };
  /** What the step gauge and the wedge are cut to, mm above the ground. */
  readonly heights: readonly EdgeHeight[];
  readonly toeEnd: ToeEnd;
}

/** So far inside the wall that the board's whole thickness bears on the sole, where the sole has room for it. */
const IN_FROM_EDGE: Mm = 10;

/** Gauges for each sole that is made, where the sheet orders them. */
export function gaugesFor({ shoes, fitting, fitting: { making: { gauges, board }, job: { reference } } }: Pair): ShoeGauges[] {
  if (!gauges) return [];
  return shoes.flatMap((shoe) => {
    const parts = partsOf(shoe), figures = figuresOf(shoe, fitting), estimated = (...keys: readonly FigureKey[]): boolean => figures.some(({ key, estimated: so }) => so && keys.includes(key));
    return parts ? [gaugesOf(shoe, parts, { gauges, board, reference, estimated })] : [];
  });
}

interface Bench { readonly gauges: GaugeOrder; readonly board: BoardOrder; readonly reference: string; readonly estimated: (...keys: readonly FigureKey[]) => boolean }

function gaugesOf(shoe: Shoe, parts: SoleParts, { gauges: { depth }, board, reference, estimated }: Bench): ShoeGauges {
  const { side } = shoe, { shape } = parts, slices = slicesOf(parts), heights = edgeHeights(shape);
  const toeEnd = toeEndOf(parts), seat = shape.upper(shape.last.seatLength / 2, 0) + shape.build;
  const name = (what: string): string => `${side} ${what}`, own = (what: string): string => `${reference} ${side} ${what}`;
  const heightsGuessed = estimated('seatHeight', 'ballHeight');
  const profile = (where: 'inner' | 'outer'): FlatPart => profileGauge(shoe, parts, slices[where], {
    name: name(`profile gauge, ${where} side`), depth, heelLeft: (where === 'inner') === (side === 'left'),
    base: [own(`profile gauge, ${where} side`), heldWords(shape.line.turn !== 0, slices[where])],
  });
  return {
    side, slices, heights, toeEnd,
    parts: ([
      profile('inner'), profile('outer'), heightGauge(own('height gauge'), heights, heightsGuessed), ...(shoe.kind === 'rocker' ? heelBlock(own('heel block'), seat, board, heightsGuessed) : []),
      ...(toeEnd.height > SPRING_WITHIN ? [toeWedge(own('toe-spring wedge'), toeEnd, estimated('toeSpringOfShoe'))] : []),
      repairGauge(shoe, parts, slices.repair, depth, own("repairer's gauge"), heldWords(shape.line.turn !== 0, slices.repair)),
    ]).map((part) => sideInCapitals(side, part)),
  };
}

/** The side stands out in the lettering, as on every template. */
const sideInCapitals = (side: Side, part: FlatPart): FlatPart =>
  ({ ...part, letters: part.letters.map((one) => ({ ...one, text: one.text.split(' ').map((word) => (word === side ? side.toUpperCase() : word)).join(' ') })) });

/** Both profile gauges as far out as bears, the repairer's in the middle; where the sole is narrow they come nearer together. */
function slicesOf({ bodies: { whole: { rim } } }: SoleParts): ShoeGauges['slices'] {
  const { inner, outer } = bandOf(rim), inset = Math.min(IN_FROM_EDGE, (outer - inner) / 3);
  return { inner: sliceAt(rim, inner + inset), outer: sliceAt(rim, outer - inset), repair: sliceAt(rim, (inner + outer) / 2) };
}

/** Where a gauge is held: the walking line passes through the apex on the long axis. */
function heldWords(turned: boolean, { across }: Slice): string {
  const line = turned ? 'walking line' : 'long axis', aside = `${mm(Math.abs(across))} to the ${across < 0 ? 'inner' : 'outer'} side of the ${line}`;
  return turned ? `held square to the crest, ${aside}` : `held ${aside}`;
}

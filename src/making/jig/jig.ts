import type { BoardOrder, JigOrder } from '../../fitting/making.ts';
import { pointAlong } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import { partsOf, type Shoe } from '../../pair/shoe.ts';
import { rollX } from '../../profile/rollLine.ts';
import type { SoleShape } from '../../solid/soleShape.ts';
import type { FlatPart } from '../flatPart.ts';
import { bridge } from './bridge.ts';
import { bushWorks, offsetFor } from './bush.ts';
import { jigFrame, type JigFrame } from './frame.ts';
import { rail, stringer, type Place } from './rail.ts';
import { rib } from './rib.ts';
import { turnedOver } from './turnedOver.ts';

/**
 * How a part stands in the jig: along it (rails and stringers, `at` its middle across) or across it (ribs and bridges, `at` its
 * middle along). A part along is drawn heel left; with `heelRight` it is drawn from its other side.
 */
export interface Stand { readonly way: 'along' | 'across'; readonly at: Mm; readonly heelRight: boolean }
export interface JigPart { readonly part: FlatPart; readonly stand: Stand; readonly kind: 'rib' | 'rail' | 'stringer' | 'bridge' }

/** A jig for a LEFT shoe: its frame, and its parts as they are cut. */
export interface Jig { readonly frame: JigFrame; readonly parts: readonly JigPart[]; readonly places: readonly Place[]; readonly bush: JigOrder['bush'] }

/** @param label job, side and date, as lettered on every part */
export function jigOf(shoe: Shoe, order: JigOrder, board: BoardOrder, label: string): Jig | undefined {
  const shape = partsOf(shoe)?.shape;
  if (!shape) return undefined;
  const frame = jigFrame(shape, order, board), places = placesOn(shoe, shape), { thickness } = board, bush = bushWorks(shape, order) ? order.bush : undefined;
  const along = (kind: 'rail' | 'stringer', part: FlatPart, at: Mm, heelRight: boolean): JigPart => ({ kind, part: heelRight ? turnedOver(part) : part, stand: { way: 'along', at, heelRight } });
  const across = (kind: 'rib' | 'bridge', part: FlatPart, at: Mm): JigPart => ({ kind, part, stand: { way: 'across', at, heelRight: false } });
  const sides = [['outer side', 0, true], ['inner side', 1, false]] as const;
  return {
    frame, places, bush,
    parts: [
      ...frame.ribs.map((x, i) => across('rib', rib(i, shape, frame, order, board, label), x)),
      ...sides.map(([name, i, turn]) => along('rail', rail(frame, thickness, `rail, ${name}`, [`rail, ${name}: ${label}`, ...edgeWords(order, bush, shape)], places, featherBeside(shape, frame, i)), frame.railsAt[i], turn)),
      ...sides.map(([name, i, turn]) => along('stringer', stringer(frame, `stringer, ${name}`, `stringer, ${name}: ${label}`), frame.stringersAt[i], turn)),
      ...bridgePlaces(shape).map((place) => across('bridge', bridge(place, shape, frame, board, label), place.x)),
    ],
  };
}

const number = (value: Mm): string => String(Number(value.toFixed(2)));

/** What the edge of a rail is, as lettered on it. A bush cannot be set lower than the rail. */
export function edgeWords({ face }: JigOrder, bush: JigOrder['bush'], { outsole }: SoleShape): string[] {
  const cut = face === 'foam body' ? 'foam body, outsole not on' : 'ground face', later = face === 'foam body' || outsole === 0 ? [] : [bush ? `foam cut here stands ${number(outsole)} mm too high` : `foam is cut ${number(outsole)} mm lower: the outsole`];
  return bush ? [`edge ${number(offsetFor(bush))} mm inside the ${cut}: bush ${number(bush.diameter)}, cutter ${number(bush.cutter)}`, ...later] : [`edge: ${cut}`, ...later];
}

/** The bridges stand over the middle of the seat and over the tread, where the last bears. */
export const bridgePlaces = ({ last, line }: SoleShape): Place[] =>
  [{ of: 'SEAT', name: 'seat', x: rollX(line, [last.seatLength / 2, 0]) }, { of: 'BALL_LINE', name: 'ball', x: rollX(line, [last.tread, 0]) }];

function placesOn(shoe: Shoe, shape: SoleShape): Place[] {
  const { last, line } = shape, on = (x: Mm): Mm => rollX(line, [x, 0]);
  const ends = [{ of: 'HEEL', name: 'heel', x: on(0) }, { of: 'TIP', name: 'tip', x: on(last.length) }];
  if (shoe.kind === 'match') return [...ends, ...bridgePlaces(shape)];
  const { strikePoint, pivot, apex } = shoe.rocker;
  const rolled = [{ of: 'STRIKE', name: 'strike', x: strikePoint[0] }, { of: 'PIVOT', name: 'ankle', x: pivot[0] }, { of: 'APEX_LINE', name: 'apex', x: apex.point[0] }];
  return [...ends, ...bridgePlaces(shape), ...rolled];
}

const LOOKS = 6;

/** The feather line beside a rail, heel to toe, as it stands over the bench. */
function featherBeside({ feather, upper, build, line }: SoleShape, { zero }: JigFrame, side: 0 | 1): Point[] {
  const around = Array.from({ length: feather.length * LOOKS }, (_, i) => pointAlong(feather, i / LOOKS));
  return around.flatMap(([x, y]): Point[] => (y > 0 === (side === 0) && y !== 0 ? [[rollX(line, [x, y]), zero - upper(x, y) - build]] : [])).sort((a, b) => a[0] - b[0]);
}

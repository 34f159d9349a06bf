import { area, difference, FillRule, type Path64, type Paths64, type Point64 } from 'clipper2-ts';
import { windowRound, type Window } from '../../geometry/clip.ts';
import type { Path } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import { turnedBy, turnedPath } from '../../geometry/turned.ts';
import type { Mm, Rad } from '../../geometry/units.ts';
import { grown, opposite, sumLoops } from './noFit.ts';
import { NEAR, PER_MM, polygonNear } from './outline.ts';
import type { SheetSize } from './nest.ts';

/** A part turned one way, about its own origin. @property body near its outline, in whole thousandths  @property guard what others must stay off */
export interface Shape { readonly turn: Rad; readonly bounds: Window; readonly body: Path64; readonly guard: Path64 }
/** @property at where the origin of the shape lies on its sheet */
export interface Laid { readonly shape: Shape; readonly at: Point }

/** Bodies only lie near the true outlines, and places are rounded; whatever that may add up to is in the guard. */
const SPARE: Mm = 2 * NEAR + 0.01;

/** A part turned every way it may be. */
export function shapesOf(outline: Path, turns: readonly Rad[], apart: Mm): Shape[] {
  const body = polygonNear(outline), guard = grown(body, (apart + SPARE) * PER_MM);
  return turns.map((turn) => ({ turn, body: turned(body, turn), guard: turned(guard, turn), bounds: windowRound([turnedPath(outline, turn)]) }));
}

function turned(polygon: Path64, turn: Rad): Path64 {
  const round = turnedBy(turn);
  return polygon.map((point) => { const [x, y] = round([point.x, point.y]); return { x: Math.round(x), y: Math.round(y) }; });
}

/** The first sheet that has room for a shape, turned whichever way ends first along it. */
export function firstRoom(sheets: readonly (readonly Laid[])[], shapes: readonly Shape[], sheet: SheetSize, apart: Mm): { readonly sheet: number; readonly laid: Laid } | undefined {
  for (let i = 0; i < sheets.length; i++) {
    if (isFull(sheets[i]!, shapes, sheet)) continue;
    const laid = shapes.reduce<Laid | undefined>((best, shape) => better(best, roomFor(shape, sheets[i]!, best ? shorter(sheet, endOf(best) + apart) : sheet, apart)), undefined);
    if (laid) return { sheet: i, laid };
  }
  return undefined;
}

/** Where less of a sheet is left than the part covers no place need be looked for. */
const isFull = (laid: readonly Laid[], shapes: readonly Shape[], { length, width }: SheetSize): boolean =>
  laid.reduce((sum, { shape }) => sum + area(shape.body), area(shapes[0]!.body)) > (length * width + (laid.length + 1) * OFF) * PER_MM ** 2;
/** Bodies lie up to NEAR off the true outlines: less than this all round a part, mm². */
const OFF = 200;

/**
 * A part is fitted in among so many of those laid last on its sheet; what lies further back is closed, and nothing more is
 * laid beside it. On large sheets each part would else be held against all others in all its turns.
 */
const BESIDE_LAST = 16;

/** How far along its sheet a part reaches, and how far across. */
export const endOf = ({ shape, at }: Laid): Mm => at[0] + shape.bounds.most[0];
export const topOf = ({ shape, at }: Laid): Mm => at[1] + shape.bounds.most[1];
/** A place that ends further along than the best one yet need not be looked for. */
const shorter = (sheet: SheetSize, length: Mm): SheetSize => ({ ...sheet, length: Math.min(sheet.length, length) });

/** The one that ends first along the sheet; of those, the one nearest to its lower edge. */
const inOrder = (a: Laid, b: Laid): number => endOf(a) - endOf(b) || topOf(a) - topOf(b);
const better = (best: Laid | undefined, one: Laid | undefined): Laid | undefined => (!best || (one && inOrder(one, best) < 0) ? one ?? best : best);

/** Where a shape lies best: of the places where it touches what lies there already, or the edge, for the best place is always one of them. */
function roomFor(shape: Shape, all: readonly Laid[], { length, width }: SheetSize, apart: Mm): Laid | undefined {
  const laid = all.slice(-BESIDE_LAST), closed = Math.max(0, ...all.slice(0, -BESIDE_LAST).map(endOf));
  const { least, most } = shape.bounds, low: Point = [closed + apart - least[0], apart - least[1]], high: Point = [length - apart - most[0], width - apart - most[1]];
  if (high[0] < low[0] - HAIR || high[1] < low[1] - HAIR) return undefined;
  const away = opposite(shape.body), taken = laid.flatMap((other) => shifted(sumLoops(other.shape.guard, away), other.at));
  const within = (value: number, k: 0 | 1): Mm => Math.max(low[k], Math.min(high[k], value / PER_MM));
  const room = roomBetween(low, high), places = difference([room], taken, FillRule.NonZero).flat().filter((place) => isWithin(place, room));
  const choices = places.map((place) => ({ place, laid: { shape, at: [within(place.x, 0), within(place.y, 1)] as Point } })).sort((a, b) => inOrder(a.laid, b.laid));
  return choices.find(({ place }) => isFree(place, taken))?.laid;
}

/** A free place has free ground within this much of it, in whole thousandths. */
const BESIDE = 2, WAYS = [[1, 0], [0, 1], [-1, 0], [0, -1], [1, 1], [-1, 1], [-1, -1], [1, -1]] as const;

/** Where many edges cross in one spot the difference leaves slivers that are none: a place counts only if no loop goes round what lies beside it. */
const isFree = ({ x, y }: Point64, taken: Paths64): boolean => WAYS.some(([dx, dy]) => timesRound(taken, x + BESIDE * dx, y + BESIDE * dy) === 0);

/** How many times loops go round a point. */
function timesRound(loops: Paths64, x: number, y: number): number {
  let times = 0;
  for (const loop of loops) {
    let from = loop[loop.length - 1]!;
    for (const to of loop) {
      if (from.y <= y !== to.y <= y) {
        const aside = (to.x - from.x) * (y - from.y) - (x - from.x) * (to.y - from.y);
        if (to.y > from.y ? aside > 0 : aside < 0) times += to.y > from.y ? 1 : -1;
      }
      from = to;
    }
  }
  return times;
}

/** A part exactly as long as there is room still fits. */
const HAIR: Mm = 1e-6;

/** Room for the origin of a shape, a little wide, for an exact fit leaves a line. */
function roomBetween([x0, y0]: Point, [x1, y1]: Point): Path64 {
  const [left, low, right, high] = [Math.floor(x0 * PER_MM) - 1, Math.floor(y0 * PER_MM) - 1, Math.ceil(x1 * PER_MM) + 1, Math.ceil(y1 * PER_MM) + 1];
  return [{ x: left, y: low }, { x: right, y: low }, { x: right, y: high }, { x: left, y: high }];
}

/** The difference now and then has corners far outside what it is cut from; drawn in to the room they would lie anywhere. */
const isWithin = ({ x, y }: Point64, [least, , most]: Path64): boolean => x >= least!.x && x <= most!.x && y >= least!.y && y <= most!.y;

function shifted(loops: Paths64, [x, y]: Point): Paths64 {
  const [dx, dy] = [Math.round(x * PER_MM), Math.round(y * PER_MM)];
  return loops.map((loop) => loop.map((point) => ({ x: point.x + dx, y: point.y + dy })));
}

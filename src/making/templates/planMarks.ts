import { crossings } from '../../geometry/crossings.ts';
import type { Path, PathLine } from '../../geometry/path.ts';
import { cross, subtract, type Point } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import type { Shoe } from '../../pair/shoe.ts';
import { rollX, type RollLine } from '../../profile/rollLine.ts';
import type { SoleShape } from '../../solid/soleShape.ts';

/** A straight line across a sole that is drawn on its templates: the places of the plan where a measure is nought, LEFT shoe. */
export interface PlanMark { readonly of: PlanMarkName; readonly measure: (at: Point) => Mm }
export type PlanMarkName = 'seat end' | 'ankle' | 'ball' | 'standing point' | 'flat begins' | 'flat ends' | 'apex' | 'strike point';

/** Lines by which the foot is found again, then those of the ground face. */
export function planMarks(shoe: Shoe, { last, line, feather }: SoleShape): readonly PlanMark[] {
  const atX = (of: PlanMarkName, x: Mm): PlanMark => ({ of, measure: ([px]) => px - x });
  const foot = [atX('seat end', last.seatLength), ballMark(feather, last.innerBall, last.outerBall)];
  return shoe.kind === 'match' ? foot : [...foot, atX('ankle', shoe.rocker.stance.pivot[0]), ...rollMarks(shoe.rocker, line)];
}

/** Marks of the ground face lie along the crest. */
function rollMarks({ mid, apex, hip, strikePoint }: Extract<Shoe, { kind: 'rocker' }>['rocker'], line: RollLine): PlanMark[] {
  const along = (of: PlanMarkName, place: Mm): PlanMark => ({ of, measure: (at) => rollX(line, at) - place });
  const flat = mid.frontX > mid.rearX ? [along('flat begins', mid.rearX), along('flat ends', mid.frontX)] : [];
  return [along('standing point', hip[0]), ...flat, along('apex', apex.point[0]), along('strike point', strikePoint[0])];
}

/** Through the inner and the outer toe joint on the feather line. */
function ballMark(feather: Path, innerBall: Mm, outerBall: Mm): PlanMark {
  const on = (x: Mm, sign: 1 | -1): Point => crossings(feather, ([px]) => px - x).find(([, y]) => y * sign > 0)!;
  const inner = on(innerBall, -1), run = subtract(on(outerBall, 1), inner), size = Math.hypot(...run);
  return { of: 'ball', measure: (at) => cross(subtract(at, inner), run) / size };
}

/** From edge to edge of an outline, inner side first; none where it does not reach so far. */
export function acrossOutline(outline: Path, { measure }: PlanMark): PathLine | undefined {
  const found = crossings(outline, measure).sort((a, b) => a[1] - b[1]), from = found[0], to = found.at(-1);
  return from && to && from !== to ? { kind: 'line', from, to } : undefined;
}

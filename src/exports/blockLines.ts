import { mirroredPath, type Path } from '../geometry/path.ts';
import { linesInBlock } from '../making/block/plan.ts';
import { tabCorners } from '../making/block/setUps.ts';
import type { ShoeBlock } from '../making/made.ts';
import type { SoleShape } from '../solid/soleShape.ts';
import { circle, polyline } from './drawing.ts';

/** The lines of a block, as paths in the frame of one set-up: a right shoe mirrored, a block turned over seen from its new upper side. */
export interface BlockLines {
  readonly block: Path;
  readonly pocket: Path;
  readonly edge: Path;
  /** Where the walls end below; none where they are upright, for it would lie on the edge. */
  readonly ground: Path | undefined;
  readonly dowels: readonly Path[];
  readonly tabs: readonly Path[];
}

const leans = ({ taper }: SoleShape): boolean => Object.values(taper).some((lean) => lean !== 0);

/** @param setUp 0 for the first, 1 for the second */
export function blockLines({ side, parts: { shape }, block: { plan } }: ShoeBlock, setUp: number): BlockLines {
  const { length, width, pocket, dowels, tabs, pocketWidth } = plan, half = width / 2, { edge, ground } = linesInBlock(plan, shape);
  const mirror = (side === 'right') !== (setUp === 1), on = (line: Path): Path => (mirror ? mirroredPath(line) : line);
  return {
    block: polyline([[0, -half], [length, -half], [length, half], [0, half]], true), pocket: on(pocket), edge: on(edge), ground: leans(shape) ? on(ground) : undefined,
    dowels: dowels.map(({ at, diameter }) => on(circle(at, diameter / 2))), tabs: tabs.tabs.map((tab) => on(polyline(tabCorners(tab, pocketWidth), true))),
  };
}

import { directionOn, lengthOf, pointOn, type Path } from '../../geometry/path.ts';
import { add, scale, turnLeft } from '../../geometry/point.ts';
import type { Mm } from '../../geometry/units.ts';
import type { FlatPart } from '../flatPart.ts';
import { fromPath } from '../setOut.ts';

/**
 * The widest cut with which every edge of a part can still be reached, mm, down to a hundredth: a slot takes no cutter wider
 * than itself. Judged in the middle of each piece of the edge.
 * @param kerf the cut there is; returned as it is where it does
 */
export function widestKerf({ outline, holes }: FlatPart, kerf: Mm): Mm {
  return Math.min(...[outline, ...holes].map((edge) => (reachesAll(edge, kerf) ? kerf : narrowed(edge, kerf))));
}

const STEP: Mm = 0.01;

function narrowed(edge: Path, kerf: Mm): Mm {
  let good = 0, bad = Math.ceil(kerf / STEP);
  while (bad - good > 1) { const middle = (good + bad) >> 1; if (reachesAll(edge, middle * STEP)) good = middle; else bad = middle; }
  return good * STEP;
}

/** Pieces shorter than this are joints and roundings, not edges that anything seats on. */
const SHORT: Mm = 0.5;
/** A slot as wide as the cut is cut in one pass; its walls are then the same last digit away. */
const TOUCHING: Mm = 1e-6;

function reachesAll(edge: Path, kerf: Mm): boolean {
  return edge.every((piece) => {
    if (lengthOf(piece) < SHORT) return true;
    const away = add(pointOn(piece, 0.5), scale(turnLeft(directionOn(piece, 0.5)), -kerf / 2));
    return fromPath(edge, away) >= kerf / 2 - TOUCHING;
  });
}

import { lowestBetween } from '../geometry/solve.ts';
import type { Point } from '../geometry/point.ts';
import { degrees, type Mm, type Rad } from '../geometry/units.ts';
import { cos, sin } from '../geometry/trig.ts';

/** How a flat outline lies on a table. */
interface Laid {
  readonly fits: boolean;
  /** Turn of its long axis from the table's x side, 0 to a right angle either way. */
  readonly turn: Rad;
}

/** A square table, by its side, and how an outline is turned on it. */
export interface Square { readonly side: Mm; readonly turn: Rad }

/** Room taken along the table's two sides when an outline is turned. */
function extent(outline: readonly Point[], turn: Rad): Point {
  const cosine = cos(turn), sine = sin(turn);
  let left = Infinity, right = -Infinity, near = Infinity, far = -Infinity;
  for (const [x, y] of outline) {
    const along = x * cosine - y * sine, across = x * sine + y * cosine;
    left = Math.min(left, along); right = Math.max(right, along);
    near = Math.min(near, across); far = Math.max(far, across);
  }
  return [right - left, far - near];
}

const STEP: Rad = degrees(1);

/** The turn at which a measure of the outline is least; an outline turned by half a circle takes the same room. */
function bestTurn(measure: (turn: Rad) => number): Rad {
  let best = 0, least = Infinity;
  for (let i = 0; i < 180; i++) {
    const value = measure(i * STEP);
    if (value < least) { least = value; best = i * STEP; }
  }
  const finer = lowestBetween(measure, best - STEP, best + STEP, 1e-6);
  return measure(finer) < least ? finer : best;
}

const acute = (turn: Rad): Rad => Math.min(Math.abs(turn), Math.abs(Math.PI - turn));

/** Lays an outline on a table, straight where it goes, else turned. @param margin kept free all round */
export function layOn(outline: readonly Point[], table: { readonly x: Mm; readonly y: Mm }, margin: Mm): Laid {
  const beyond = (turn: Rad): Mm => { const [x, y] = extent(outline, turn); return Math.max(x + 2 * margin - table.x, y + 2 * margin - table.y); };
  const turn = [0, Math.PI / 2].find((straight) => beyond(straight) <= 0) ?? bestTurn(beyond);
  return { fits: beyond(turn) <= 0, turn: acute(turn) };
}

/** The smallest square table that takes an outline. @param margin kept free all round */
export function smallestSquare(outline: readonly Point[], margin: Mm): Square {
  const side = (turn: Rad): Mm => Math.max(...extent(outline, turn)) + 2 * margin, turn = bestTurn(side);
  return { side: side(turn), turn: acute(turn) };
}

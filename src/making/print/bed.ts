import { layOn } from '../../checks/bedFit.ts';
import type { Bed } from '../../fitting/making.ts';
import { hullOf } from '../../geometry/hull.ts';
import { boundsOf, type Mesh } from '../../geometry/mesh.ts';
import type { Point } from '../../geometry/point.ts';
import type { Mm, Rad } from '../../geometry/units.ts';
import { after, heading, turned, type Turn } from './turns.ts';

/** Kept free round a part on the bed, between parts, and above. */
export const MARGIN: Mm = 5;

/** How a part lies on the bed: whether it goes on, and the heading it wants, to the left. */
export interface Laid { readonly fits: boolean; readonly heading: Rad }

/** A part seen from above. */
const planOf = ({ positions }: Mesh): Point[] => Array.from({ length: positions.length / 3 }, (_, i): Point => [positions[i * 3]!, positions[i * 3 + 1]!]);

/** Lays a part on the bed, straight where it goes, else turned, up to corner to corner. @param mesh as it is turned to be printed */
export function laidOn(mesh: Mesh, bed: Bed): Laid {
  const plan = hullOf(planOf(mesh)), laid = layOn(plan, bed, MARGIN), tall = boundsOf(mesh), high = tall.most[2] - tall.least[2] + MARGIN <= bed.z;
  const goes = (angle: Rad): boolean => { const [x, y] = roomOf(mesh, heading(angle)); return x + 2 * MARGIN <= bed.x + 1e-6 && y + 2 * MARGIN <= bed.y + 1e-6; };
  return { fits: laid.fits && high, heading: [laid.turn, -laid.turn].find(goes) ?? laid.turn };
}

function roomOf(mesh: Mesh, turn: Turn): Point {
  const { least, most } = boundsOf(turned(mesh, turn));
  return [most[0] - least[0], most[1] - least[1]];
}

/** A part with the turn it is printed in. */
export interface Part { readonly mesh: Mesh; readonly turn: Turn }
/** Where a part stands: the bed, counted from 0, and what it is moved by once turned. */
export interface Placed<Of extends Part> { readonly part: Of; readonly bed: number; readonly by: readonly [Mm, Mm, Mm] }

/** Stands parts beside each other, row behind row, and on further beds where one does not take them all. */
export function placedOn<Of extends Part>(parts: readonly Of[], bed: Bed | undefined): Placed<Of>[] {
  let x = MARGIN, y = MARGIN, deep = 0, count = 0;
  return parts.map((part) => {
    const { least, most } = boundsOf(turned(part.mesh, part.turn)), [long, wide] = [most[0] - least[0], most[1] - least[1]];
    if (x > MARGIN && (!bed || x + long + MARGIN > bed.x)) { x = MARGIN; y += deep + MARGIN; deep = 0; }
    if (bed && y > MARGIN && y + wide + MARGIN > bed.y) { x = MARGIN; y = MARGIN; deep = 0; count++; }
    const placed: Placed<Of> = { part, bed: count, by: [x - least[0], y - least[1], -least[2]] };
    x += long + MARGIN;
    deep = Math.max(deep, wide);
    return placed;
  });
}

export const turnedBy = (angle: Rad, turn: Turn): Turn => after(heading(angle), turn);

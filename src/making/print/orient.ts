import { boundsOf, type Mesh } from '../../geometry/mesh.ts';
import type { Point3 } from '../../geometry/point.ts';
import { cos } from '../../geometry/trig.ts';
import { degrees, type Mm } from '../../geometry/units.ts';
import type { Booleans } from '../booleans.ts';
import { after, applied, centreOf, corners, dot3, facing, isOver, onBed, toDown, turned, type Turn } from './turns.ts';

/** A way to lay a part on the bed, by what faces the bed. Areas mm², volume mm³. */
export interface Orientation {
  readonly name: OrientationName;
  readonly turn: Turn;
  /** Facets that face down more steeply than a printer holds up by itself. */
  readonly overhang: number;
  /** What lies between them and the bed: a breakaway wedge, or supports. */
  readonly under: number;
  /** What lies in the first layer. */
  readonly contact: number;
  readonly height: Mm;
  /** Whether it stands firm while it is printed: what is tall and narrow sways. */
  readonly firm: boolean;
}

const DOWN = {
  'ground face down': [0, 0, -1], 'upper face down': [0, 0, 1], 'on its inner edge': [0, -1, 0], 'on its outer edge': [0, 1, 0],
  'toe end up': [-1, 0, 0],
} as const satisfies Record<string, Point3>;
export type OrientationName = keyof typeof DOWN;

/** A part without a flat end would not stand on it. */
const LYING: readonly OrientationName[] = ['upper face down', 'ground face down', 'on its inner edge', 'on its outer edge'];

/** Every way to lay a part, each settled as it would come to rest. @param cutFlat whether its heel end was cut flat, so that it can stand on it */
export function orientationsOf(mesh: Mesh, kernel: Booleans, cutFlat = false): Orientation[] {
  const names = [...LYING, ...(cutFlat ? ['toe end up'] as const : [])];
  const rests = restsOf(kernel.hull(mesh), centreOf(mesh));
  return names.map((name) => {
    const turn = settled(DOWN[name], rests);
    return { name, turn, ...judged(onBed(turned(mesh, turn))) };
  });
}

/** First the way it is meant to lie, then the little that it tips until it rests: so its heading stays. */
function settled(down: Point3, rests: readonly Point3[]): Turn {
  const laid = toDown(down), rest = rests.reduce((best, one) => (dot3(one, down) > dot3(best, down) ? one : best), rests[0] ?? down);
  return after(toDown(applied(laid, rest)), laid);
}

/** Directions in which a solid rests: facets of its hull with the centre of mass over them. */
function restsOf(hull: Mesh, centre: Point3): Point3[] {
  const rests: Point3[] = [];
  for (let i = 0; i < hull.triangles.length; i += 3) {
    const facet = corners(hull, i), face = facing(facet);
    if (face && isOver(facet, face.normal, centre)) rests.push(face.normal);
  }
  return rests;
}

/** Beyond this a layer has nothing to lie on. Common practice of printing, 45 to 50 degrees off upright. */
const STEEPEST = degrees(45);
/** What is lower than this lies in the first layer. */
const LAYER: Mm = 0.3;

/** As many times as high as it is wide a soft part may stand. Common practice. */
const TALLEST = 4;

/** @param mesh as it stands on the bed */
export function judged(mesh: Mesh): Omit<Orientation, 'name' | 'turn'> {
  let overhang = 0, under = 0, contact = 0;
  for (let i = 0; i < mesh.triangles.length; i += 3) {
    const facet = corners(mesh, i), face = facing(facet);
    if (!face || face.normal[2] > -cos(STEEPEST) + 1e-9) continue;
    const middle = (facet[0][2] + facet[1][2] + facet[2][2]) / 3;
    if (middle <= LAYER) { contact += face.area; continue; }
    overhang += face.area;
    under += face.area * -face.normal[2] * middle;
  }
  const { least, most } = boundsOf(mesh), height = most[2] - least[2], narrow = Math.min(most[0] - least[0], most[1] - least[1]);
  return { overhang, under, contact, height, firm: height <= TALLEST * narrow };
}

/** The one with least to hold up, of those that go on the bed and stand firm, where any does. */
export function bestOf(orientations: readonly Orientation[], goes: (orientation: Orientation) => boolean): Orientation {
  const going = orientations.filter(goes), firm = going.filter((one) => one.firm);
  return (firm.length ? firm : going.length ? going : orientations).reduce((best, one) => (one.overhang < best.overhang - 1 ? one : best));
}

import { rounded } from '../checks/say.ts';
import { stationAt, type Station } from '../checks/stations.ts';
import type { Path } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import type { Mm } from '../geometry/units.ts';
import { jointSurface, type LayerJoint } from '../making/templates/layerJoint.ts';
import { stretches } from '../making/templates/stretches.ts';
import { foamFace, sweptSurface, type SoleShape } from '../solid/soleShape.ts';
import { polyline, words, type Words } from './drawing.ts';
import { part, together, type Part } from './picture.ts';
import { sideOutline, sideProfile, type SideProfile } from './sideProfile.ts';
import { bare } from './numbers.ts';
import { faint, lettering, line, namedLine, type Template } from './template.ts';
import type { Sole } from './templatePlans.ts';

/** The sole from the side in true size: what is held against the wall while it is ground. */

/** Every so far a line across with the heights of both faces. */
const STATION: Mm = 10;

export function sideTemplate(sole: Sole, joints: readonly LayerJoint[] = []): Template {
  const { shoe, parts: { shape } } = sole, profile = sideProfile(shape), { along, from, to } = profile;
  const stations = Array.from({ length: Math.floor(shape.last.length / STATION) + 1 }, (_, i) => stationAt(shape, i * STATION)).filter(({ x }) => x > from + 1 && x < to - 1);
  const turned = Math.abs(along(to) - along(from) - (to - from)) > 0.005;
  return {
    side: shoe.side, stem: 'side-profile', part: 'side profile',
    notes: [
      'Figures: below, mm from the heel and height of the ground face above the ground; above, height of the face the sole is glued to.',
      `Broken lines: ${profile.stiffener ? 'underside of the stiffener, ' : ''}underside of the foam${joints.length ? '; dash and two dots: joints of the layers' : ''}. Heel left for both shoes.`,
      ...(turned ? ['Seen square to the crest line: heights and arcs are true, lengths along the long axis stand shortened.'] : []),
    ],
    picture: together([
      line(sideOutline(profile), 'visible'), line(profile.foam, 'hidden'), ...(profile.stiffener ? [line(profile.stiffener, 'hidden')] : []),
      line([{ kind: 'line', from: [along(from) - 6, 0], to: [along(to) + 6, 0] }], 'thin'),
      ...joints.flatMap((joint) => jointLine(shape, profile, joint)), ...stations.map((station) => upright(along(station.x), station.ground, station.upper)), placesOf(sole, profile), nameOf(sole, profile, stations),
    ]),
    fixed: stations.flatMap((station) => heightWords(station, along(station.x))),
  };
}

/** Between two layers, where they lie over each other. */
function jointLine(shape: SoleShape, { along, from, to }: SideProfile, joint: LayerJoint): Part[] {
  const surface = jointSurface(shape, joint.depth), foam = sweptSurface(foamFace(shape), shape.line), start = Math.max(from, joint.from), end = Math.min(to, joint.to);
  const points = Array.from({ length: Math.max(0, Math.ceil(end - start)) + 1 }, (_, i): Point | undefined => {
    const x = Math.min(end, start + i), z = surface(x, 0);
    return z > foam(x, 0) ? [along(x), z] : undefined;
  });
  return stretches(points).map((run) => line(polyline(run), 'phantom'));
}

const upright = (x: Mm, low: Mm, high: Mm): Part => faint([{ kind: 'line', from: [x, low], to: [x, high] }]);

/** Letters of a station: narrower than the stations stand apart. */
const SMALL = 2.5;

function heightWords({ x, ground, upper }: Station, along: Mm): Words[] {
  const at = (text: string, y: Mm, bold = false): Words => words(text, [along, -y], { size: SMALL, anchor: 'middle', bold });
  return [at(rounded(upper, 1), upper + 1.2), at(rounded(ground, 1), -4), at(rounded(x, 0), -8, true)];
}

/** Ankle, standing point and apex: lines across the sole that leave out the figures and run on above them. */
function placesOf({ shoe, book }: Sole, { along }: SideProfile): Part {
  if (shoe.kind === 'match') return part({});
  const { shape, order, rocker: { stance } } = shoe, places = [['ankle', 'pivotX', stance.pivot[0]], ['standing', 'standingPoint', stance.standing], ['apex', 'apex', order.apexX]] as const;
  return together(places.map(([name, figure, x]) => {
    const { ground, upper } = stationAt(shape, x), across = (from: Mm, to: Mm): Path => [{ kind: 'line', from: [along(x), from], to: [along(x), to] }];
    return together([line(across(ground, upper), 'centre', 'computed'), namedLine(`${name} ${bare(book(figure)!)}`, across(upper + 5, upper + 30), 'centre', 'computed'), line(across(-10, -14), 'centre', 'computed')]);
  }));
}

function nameOf({ shoe: { side }, name }: Sole, { along }: SideProfile, stations: readonly Station[]): Part {
  const { x, ground: low, upper: high } = stations[Math.floor(stations.length / 3)] ?? { x: 0, ground: 0, upper: 0 };
  const at: Point = [along(x), (low + high) / 2];
  return together([lettering(`${side.toUpperCase()} side profile`, [at[0], at[1] + 1], { bold: true, size: 4.2 }), lettering(name, [at[0], at[1] - 4])]);
}

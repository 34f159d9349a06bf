import { BufferGeometry, Color, DoubleSide, Group, LineBasicMaterial, LineSegments, Mesh, MeshBasicMaterial, MeshLambertMaterial, Plane, Vector3, type DataTexture } from 'three';
import type { PartName, SolidShown } from '../../desk/protocol.ts';
import { cornerAt } from './body.ts';
import { fill } from './buffers.ts';
import { CREASE, creases, facetNormals, flatNormals, smoothNormals, spread } from './facets.ts';
import type { Palette } from './palette.ts';
import { placeOnStrip } from './shadeTexture.ts';
import { fillOf, hatchOf, outlineOn, standing } from './slices.ts';
import { isUpper, thicknessUnder } from './thickness.ts';

export interface Cut { readonly axis: 'x' | 'y'; readonly at: number }

/** One part of one shoe on the stage. It keeps its room from one mesh to the next. */
export interface SolidBody {
  readonly group: Group;
  /** What can be pressed when measuring. */
  readonly faces: readonly Mesh[];
  readonly show: (solid: SolidShown, fine: boolean) => void;
  /** What is told of the thickness of the sole this is a part of. @param above what lies on this part, mm */
  readonly shade: (by: 'material' | 'thickness', whole: SolidShown | undefined, above: number) => void;
  readonly cut: (cut: Cut | undefined, aside: number) => void;
  readonly dispose: () => void;
}

/** From line to line of the hatching, mm. What is as thin as an outsole is filled instead, as on a drawing. */
const HATCH = 6;

/** A drawn foot has folds all over; only where the leg is cut off is there an edge. */
const FOOT_CREASE = Math.PI / 2.6;

export function solidBody(part: PartName, palette: Palette, strips: { readonly steps: DataTexture; readonly rest: DataTexture }): SolidBody {
  const colour = palette.part(part), plane = new Plane(), push = part === 'whole sole' ? 2 : 1;
  const offset = { polygonOffset: true, polygonOffsetFactor: push, polygonOffsetUnits: push };
  const plain = new MeshLambertMaterial({ color: colour, side: DoubleSide, ...offset });
  const shaded = new MeshLambertMaterial({ color: colour, map: strips.rest, emissive: '#FFFFFF', emissiveMap: strips.steps, side: DoubleSide, ...offset });
  const inside = new Color(colour).lerp(new Color('#FFFFFF'), part === 'outsole' ? 0 : 0.45), filling = new MeshBasicMaterial({ color: inside, side: DoubleSide, ...offset });
  // The edges are cut away with the body, what is drawn on the cut is not.
  const ink = new LineBasicMaterial({ color: palette.ink }), rim = new LineBasicMaterial({ color: palette.ink }), thin = new LineBasicMaterial({ color: inside.clone().lerp(new Color(palette.ink), 0.6) });
  const body = new Mesh(new BufferGeometry(), plain), edges = new LineSegments(new BufferGeometry(), ink);
  const cap = new Mesh(new BufferGeometry(), filling), outline = new LineSegments(new BufferGeometry(), rim), hatch = new LineSegments(new BufferGeometry(), thin);
  const group = new Group(), all = [body, edges, cap, outline, hatch];
  for (const one of all) { one.frustumCulled = false; one.visible = false; group.add(one); }
  const put = (on: Mesh | LineSegments, positions: Float32Array): void => { on.visible = positions.length > 0; if (on.visible) fill(on.geometry, { position: [positions, 3] }); };
  const crease = part === 'foot' ? FOOT_CREASE : CREASE;
  let shown: SolidShown | undefined;

  return {
    group, faces: [body, cap],
    show: (solid, fine) => {
      shown = solid;
      const normals = facetNormals(solid), positions = spread(solid);
      body.visible = positions.length > 0;
      fill(body.geometry, { position: [positions, 3], normal: [fine ? smoothNormals(solid, normals, crease) : flatNormals(normals), 3], uv: [new Float32Array((positions.length / 3) * 2), 2] });
      put(edges, fine ? creases(solid, normals, crease) : new Float32Array());
    },
    shade: (by, whole, above) => {
      const byThickness = by === 'thickness' && (part === 'foam' || part === 'whole sole') && whole !== undefined;
      body.material = byThickness ? shaded : plain;
      if (!byThickness || !shown) return;
      body.geometry.getAttribute('uv').array.set(stripPlaces(shown, whole, above));
      body.geometry.getAttribute('uv').needsUpdate = true;
    },
    cut: (cut, aside) => {
      if (cut?.axis === 'x') plane.set(new Vector3(-1, 0, 0), cut.at);
      else if (cut) plane.set(new Vector3(0, 1, 0), -(cut.at + aside));
      for (const material of [plain, shaded, ink]) material.clippingPlanes = cut ? [plane] : [];
      if (!cut || !shown) { for (const one of [cap, outline, hatch]) one.visible = false; return; }
      const axis = cut.axis === 'x' ? 0 : 1, flat = outlineOn(shown, axis, cut.at), up = (places: Float32Array): Float32Array => standing(places, axis, cut.at);
      put(cap, up(fillOf(flat)));
      put(outline, up(flat));
      if (part !== 'outsole') put(hatch, up(hatchOf(flat, HATCH)));
    },
    dispose: () => {
      for (const one of all) one.geometry.dispose();
      for (const one of [plain, shaded, filling, ink, rim, thin]) one.dispose();
    },
  };
}

/** For each corner of each facet its place on the strips; the thickness is worked out once under each corner of the upper face. */
function stripPlaces(solid: SolidShown, whole: SolidShown, above: number): Float32Array {
  const under = thicknessUnder(whole, facetNormals(whole)), normals = facetNormals(solid), known = new Map<number, number>(), out = new Float32Array(2 * solid.triangles.length);
  solid.triangles.forEach((corner, i) => {
    if (!isUpper(normals, Math.floor(i / 3))) { out.set(placeOnStrip(undefined), 2 * i); return; }
    const thickness = known.get(corner) ?? under(cornerAt(solid, corner)) + above;
    known.set(corner, thickness);
    out.set(placeOnStrip(thickness), 2 * i);
  });
  return out;
}

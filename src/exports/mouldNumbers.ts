import type { MouldOrder } from '../fitting/making.ts';
import { boundsOf } from '../geometry/mesh.ts';
import { inDegrees } from '../geometry/units.ts';
import type { ShoeMould } from '../making/made.ts';
import type { MouldPiece } from '../making/mould.ts';
import { worstHook } from '../making/mould/hooks.ts';
import { mixFor } from '../making/mould/mix.ts';
import { wallsOf } from '../making/mould/walls.ts';

/** A mould as numbers for other programs: lengths in mm, angles in degrees, weights in g. */

export function mouldOrderOf({ part, cast, by, closing, bolt, ledge, draft, shrink, rim, floor, dowel, pourHole, ventHole, split }: MouldOrder): object {
  const [length, width, height] = shrink.map((factor) => (factor - 1) * 100);
  return {
    part, cast: { material: cast.name, densityGPerCm3: cast.density, densityBasis: cast.densityBasis, shrinkBasis: cast.shrinkBasis }, by, closing, boltMm: bolt, ledgeMm: ledge,
    draftDeg: inDegrees(draft), shrinkPercent: { length, width, height }, rimMm: rim, floorMm: floor,
    dowelMm: dowel, pourHoleMm: pourHole, ventHoleMm: ventHole, split,
  };
}

/** What the cavity holds, mm³, what the cast weighs once it has shrunk, g, and how the mould is put together. */
export function mouldNumbers({ order, mould }: ShoeMould): object {
  const { cavity, lid, fill, part, wedge, layout, draft } = mould, mix = mixFor(fill, layout, order), walls = wallsOf(layout, order);
  return {
    part: order.part, pieces: [...cavity, ...lid].map(({ name }) => name), sizesMm: [...cavity, ...lid].map(sizeOf), fillMm3: fill, partMm3: part, wedgeMm3: wedge,
    fillG: mix.cast, mixG: { cavity: mix.cast, holes: mix.holes, lost: mix.lost, total: mix.total },
    leastDraftDeg: inDegrees(draft.least), leastDraftFromHeelMm: draft.at[0], ...(order.split && { hook: hookNumbers(layout) }), leastWallMm: { side: walls.side, floor: walls.floor, bores: walls.bores },
    bolts: layout.bolts.length, dowels: layout.dowels.length, vents: layout.vents.length, cutAcrossMm: { cavity: layout.cuts.cavity, lid: layout.cuts.lid },
  };
}

/** How far a half reaches round the cast at its tip or heel. */
function hookNumbers(layout: Parameters<typeof worstHook>[0]): object {
  const { end, half, by, at } = worstHook(layout);
  return { end, half, byMm: by, fromHeelMm: at[0] };
}

function sizeOf({ mesh }: MouldPiece): number[] {
  const { least, most } = boundsOf(mesh);
  return most.map((value, k) => value - least[k as 0 | 1 | 2]);
}

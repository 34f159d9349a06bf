import type { Readable } from './checkShape.ts';
import type { PackOrder, PlyOrder } from './fitting.ts';
import type { RawShoe } from './schema.ts';
import { given } from './taken.ts';

type RawRocker = Extract<Readable<RawShoe['order']>, { readonly kind?: 'rocker' | undefined }>;
type RawGroup = Extract<RawRocker['stiffener'], object>;

/** Common practice of the trade; mm. */
const USUAL = { wanted: 'rigid', edges: 0, underFoam: false, thicknessAtMost: 8 } as const;
const CLOTH = 'carbon twill 200';

/** What is wanted of a stiffener, with what is usual filled in; NaN where a number could not be read, and then there is a fault to it. */
export function packOrderOf(raw: RawGroup): PackOrder {
  const { wanted = USUAL.wanted, edges = USUAL.edges, underFoam = USUAL.underFoam, thicknessAtMost = USUAL.thicknessAtMost, bendAtMost, resin, core, ownCore, coreThickness, camber, plies, bench } = raw;
  return {
    wanted, edges, underFoam, thicknessAtMost, ply: plyOrderOf(raw),
    ...given({
      bendAtMost, resin, coreThickness, camber,
      core: ownCore ? { name: ownCore.name ?? '', density: ownCore.density ?? NaN, modulus: ownCore.modulus ?? NaN, shear: ownCore.shear ?? NaN, shearStrength: ownCore.shearStrength ?? NaN } : core,
      plies: plies?.map(({ pack, angle = 0, from, to }) => ({ pack, angle, ...given({ from, to }) })),
      bench: bench && { mass: bench.mass ?? NaN, droop: bench.droop ?? NaN, ...given({ lever: bench.lever }) },
    }),
  };
}

function plyOrderOf({ cloth = CLOTH, ownCloth, measuredPly }: RawGroup): PlyOrder {
  if (measuredPly) {
    const { name = '', thickness = NaN, density = NaN, along = NaN, across = NaN, shear = NaN, poisson = NaN, pulled = NaN, pressed = NaN, sheared = NaN } = measuredPly;
    return { kind: 'measured', name, thickness, density, along, across, shear, poisson, pulled, pressed, sheared };
  }
  if (!ownCloth) return { kind: 'cloth', cloth };
  const { name = '', fibre = 'carbon', weave = 'twill', areal = NaN, thickness } = ownCloth;
  return { kind: 'own cloth', name, fibre, weave, areal, ...given({ thickness }) };
}

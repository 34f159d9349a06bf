import type { Readable } from './checkShape.ts';
import { CLOTHS, type ClothName } from '../materials/stiffeners.ts';
import type { OwnFibre, PackOrder, PlyOrder } from './fitting.ts';
import type { RawShoe } from './schema.ts';
import { given } from './taken.ts';

type RawRocker = Extract<Readable<RawShoe['order']>, { readonly kind?: 'rocker' | undefined }>;
type RawGroup = Extract<RawRocker['stiffener'], object>;

/** Common practice of the trade; mm. */
const USUAL = { wanted: 'rigid', edges: 0, underFoam: false, thicknessAtMost: 8, bond: 0, insole: 'leather board' } as const;
const CLOTH = 'carbon twill 200', OUTER = 'carbon twill 200';

/** Cloth that splits along its fibres; of a measured ply, one that is hardly stiff across. */
const runsOneWay = (ply: PlyOrder): boolean => (ply.kind === 'cloth' ? CLOTHS[ply.cloth].weave : ply.kind === 'own cloth' ? ply.weave : ply.across < ply.along / 2 ? 'unidirectional' : 'twill') === 'unidirectional';

/** What is wanted of a stiffener, with what is usual filled in; NaN where a number could not be read, and then there is a fault to it. */
export function packOrderOf(raw: RawGroup): PackOrder {
  const { wanted = USUAL.wanted, edges = USUAL.edges, underFoam = USUAL.underFoam, thicknessAtMost = USUAL.thicknessAtMost, bond = USUAL.bond, insole = USUAL.insole, shank, bendAtMost, resin, ownResin, outerCloth, core, ownCore, coreThickness, camber, plies, bench } = raw;
  const ply = plyOrderOf(raw), outer = outerOf(ply, outerCloth);
  return {
    wanted, edges, underFoam, thicknessAtMost, bond, insole, ply, ...given({ outerCloth: outer }),
    ...given({
      bendAtMost, resin, coreThickness, camber,
      shank: shank && { thickness: shank.thickness ?? NaN, width: shank.width ?? NaN, from: shank.from ?? NaN, to: shank.to ?? NaN },
      core: ownCore ? { name: ownCore.name ?? '', density: ownCore.density ?? NaN, modulus: ownCore.modulus ?? NaN, shear: ownCore.shear ?? NaN, shearStrength: ownCore.shearStrength ?? NaN, ...given({ bendsTo: ownCore.bendsTo, sheet: ownCore.sheet }) } : core,
      ownResin: ownResin && { name: ownResin.name ?? '', density: ownResin.density ?? NaN, modulus: ownResin.modulus ?? NaN, poisson: ownResin.poisson ?? NaN },
      plies: plies?.map(({ pack, angle = 0, from, to, cloth, resin: wet }) => ({ pack, angle, ...given({ from, to, cloth, ply: cloth === undefined ? undefined : plyNamed(cloth, raw), resin: wet }) })),
      bench: bench && { mass: bench.mass ?? NaN, droop: bench.droop ?? NaN, ...given({ lever: bench.lever, atTread: bench.atTread }) },
    }),
  };
}

/** Cloth of the outermost plies of what is sought: as the sheet says, else woven where the cloth would split. */
export function outerOf(ply: PlyOrder, typed?: ClothName | 'none'): ClothName | undefined {
  const outer = typed ?? (runsOneWay(ply) ? OUTER : 'none');
  return outer === 'none' ? undefined : outer;
}

/** What of all that stands on the sheet a ply may be laid of, by its name. */
const plyNamed = (name: string, { ownCloth, measuredPly }: RawGroup): PlyOrder | undefined =>
  (measuredPly?.name === name ? plyOrderOf({ measuredPly }) : ownCloth?.name === name ? plyOrderOf({ ownCloth }) : isClothName(name) ? { kind: 'cloth', cloth: name } : undefined);
const isClothName = (name: string): name is ClothName => Object.hasOwn(CLOTHS, name);

/** With plies that name their cloth several may stand on the sheet; those that name none are of the first. */
function plyOrderOf({ cloth, ownCloth, measuredPly }: Pick<RawGroup, 'cloth' | 'ownCloth' | 'measuredPly'>): PlyOrder {
  if (cloth !== undefined) return { kind: 'cloth', cloth };
  if (ownCloth) return ownClothOf(ownCloth);
  if (measuredPly) {
    const { name = '', thickness = NaN, density = NaN, along = NaN, across = NaN, shear = NaN, poisson = NaN, pulled = NaN, pressed = NaN, sheared = NaN } = measuredPly;
    return { kind: 'measured', name, thickness, density, along, across, shear, poisson, pulled, pressed, sheared };
  }
  return { kind: 'cloth', cloth: CLOTH };
}

function ownClothOf({ name = '', fibre = 'carbon', ownFibre, weave = 'twill', areal = NaN, thickness }: NonNullable<RawGroup['ownCloth']>): PlyOrder {
  return { kind: 'own cloth', name, fibre: ownFibre ? fibreOf(ownFibre) : fibre, weave, areal, ...given({ thickness }) };
}

const fibreOf = ({ density = NaN, along = NaN, across = NaN, shear = NaN, poisson = NaN, pulled = NaN, pressed = NaN }: NonNullable<NonNullable<RawGroup['ownCloth']>['ownFibre']>): OwnFibre => ({ density, along, across, shear, poisson, pulled, pressed });

import type { Design } from '../../src/checks/design.ts';
import { figuresOf } from '../../src/checks/figures.ts';
import { foundOrLaid, gradeWords, layerWords, packInShort, thickWords } from '../../src/checks/packWords.ts';
import type { Fitting } from '../../src/fitting/fitting.ts';
import type { RockerShoe } from '../../src/pair/shoe.ts';
import { WALKING_STRAIN } from '../../src/stiffener/grades.ts';
import { layersDown } from '../../src/stiffener/layers.ts';
import { packFor, type Pack } from '../../src/stiffener/pack.ts';
import { loadsShown } from './loadsShown.ts';
import type { PackShown, Shown, StiffenerShown } from './protocol.ts';

/** The stiffener of each shoe that rolls. Lengths are said in the unit the pair's checks speak in. */
export const packsShown = ({ shoes, fitting }: Design): Pick<Shown, 'stiffeners'> => ({ stiffeners: shoes.flatMap((shoe) => (shoe.kind === 'rocker' ? [stiffenerShown(shoe, fitting)] : [])) });

function stiffenerShown(shoe: RockerShoe, fitting: Fitting): StiffenerShown {
  const pack = packFor(shoe, fitting), estimated = figuresOf(shoe, fitting).find(({ key }) => key === 'packBend')?.estimated === true;
  return { side: shoe.side, thickness: shoe.shape.stiffener, massKnown: fitting.wearer.mass !== undefined, ...(pack ? { pack: packShown(pack, fitting, estimated ? ' (est.)' : '') } : {}) };
}

function packShown(pack: Pack, { units }: Fitting, est: string): PackShown {
  const { plate: { from, to, ball, heel }, assessed } = pack, laid = layersDown(pack);
  return {
    by: foundOrLaid(pack), laid: packInShort(pack, units), grade: gradeWords(pack, est), thick: thickWords(pack, units), plate: { from, to, ball, heel },
    layers: layerWords(pack, units).map((words, i) => {
      const { what, thickness, angle, over } = laid[i]!;
      return { ...words, what, thick: thickness, ...(angle === undefined ? {} : { turned: angle }), ...(over ? { over: [over.from, over.to] as const } : {}) };
    }),
    loads: loadsShown(pack, units, est),
    along: assessed.along.map(({ x, stiffness, strain }) => [x, stiffness, 100 * Math.abs(strain)] as const), strainAtMost: 100 * WALKING_STRAIN, est,
  };
}

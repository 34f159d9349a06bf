import { inDegrees } from '../geometry/units.ts';
import { alternativesTo } from '../stiffener/alternatives.ts';
import { assumptionsOf, leastToSpare, supposing, withoutEach, type Otherwise } from '../stiffener/decides.ts';
import { inShort, laidIn, layersDown } from '../stiffener/layers.ts';
import type { Pack } from '../stiffener/pack.ts';
import type { Reading } from '../stiffener/reading.ts';
import type { Tried } from '../stiffener/search.ts';
import { lesser, type Placed } from '../stiffener/strained.ts';
import { wouldKeep } from '../stiffener/wouldKeep.ts';

/** A stiffener that is wanted or laid, for design.json: from the last down, what it does, other ways to it, numbers along it. */
export function packNumbers(pack: Pack | undefined): object | undefined {
  if (!pack) return undefined;
  const { by, keeps, order: { wanted, bendAtMost }, thickness, plies, assessed, plate: { from, to, ball, heel }, test } = pack;
  return {
    by, keepsTo: keeps, wanted: bendAtMost === undefined ? wanted : undefined, bendAtMostDeg: bendAtMost === undefined ? undefined : inDegrees(bendAtMost), words: inShort(pack.stiffener, pack.underFoam, pack.plate),
    thicknessMm: thickness, plies, plateFromMm: from, plateToMm: to, ballMm: ball, heelMm: heel, ...weights(pack.grams), ...does(assessed),
    fromTheLastDown: layersDown(pack).map(({ what, name, thickness: thick, angle, fibres, over }) => ({ what, name, thicknessMm: thick, angleDeg: angle, fibres, fromMm: over?.from, toMm: over?.to })),
    test: test && { reckonedMm: test.reckoned, readMm: test.read, times: test.times, ...readingNumbers(test.reading) },
    leastToSpare: leastToSpare(assessed, pack.asked),
    alternatives: alternativesTo(pack).map(({ way, tried }) => ({ way, ...besides(tried, pack) })),
    wouldKeepTo: wouldKeep(pack, 'some').map(({ change, keeps: to, tried }) => ({ order: change, keepsTo: to, ...besides(tried, pack) })),
    without: withoutEach(pack).map((one) => ({ without: one.without, ...otherwise(one, pack) })),
    supposing: supposing(pack).map((one) => ({ what: one.what, value: one.value, ...otherwise(one, pack) })),
    assumptions: assumptionsOf(pack).map(({ of, text, bends: [worst, best], grades, softest: { walking, stumble } }) => ({
      of, text, bendWorstDeg: worst, bendBestDeg: best, gradeWorst: grades[0], gradeBest: grades[1], walkingStrainWorstPercent: Math.abs(walking.strain) * 100, firstPlyTimesWorst: times(stumble.firstPly),
    })),
    along: assessed.along.map(({ x, width, stiffness, deflection, strain, moment }) => ({ xMm: x, widthMm: width, stiffnessNm2: stiffness, benchDeflectionMm: deflection, walkingStrainPercent: strain * 100, walkingMomentNm: moment })),
  };
}

/** What a reading of the bench means, and the plies that are to be added for it. */
export const readingNumbers = (reading: Reading): object => ({ means: reading.means, ...(reading.means === 'add' ? { pliesOnTop: reading.add.onTop, pliesUnderneath: reading.add.underneath } : {}) });

/** All that `weightG` is made of; what a pack has none of, or is not known, is left out. */
const weights = ({ cloth, resin, core, glue, shank, pack }: Pack['grams']): object => ({ clothG: cloth, resinG: resin, coreG: core, glueG: glue, shankG: shank, weightG: pack });

const besides = (tried: Tried, { plate }: Pack): object => {
  const { plies, thickness, grams, keeps, assessed } = tried;
  return { words: laidIn(tried, plate), keepsTo: keeps, plies, thicknessMm: thickness, ...weights(grams), ...does(assessed) };
};

const otherwise = ({ tried, changes, plies, grams }: Otherwise, pack: Pack): object => ({ changes, pliesMore: plies, gramsMore: grams, ...besides(tried, pack) });

const does = ({ grade, bench, walking, stumble }: Pack['assessed']): object => ({
  grade, bendDeg: inDegrees(bench.bend), tipMm: bench.tip, walkingBendDeg: inDegrees(walking.bend), walkingEnergyJ: walking.energy, walkingStrainPercent: Math.abs(walking.strain) * 100,
  firstPlyTimes: times(stumble.firstPly), wrinklingTimes: times(lesser(walking.wrinkling, stumble.wrinkling)), coreShearTimes: times(lesser(walking.coreShear, stumble.coreShear)),
});

/** Nothing where it cannot happen at all. */
const times = ({ times: value }: Placed): number | undefined => (Number.isFinite(value) ? value : undefined);

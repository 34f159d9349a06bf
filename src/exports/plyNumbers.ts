import { inDegrees } from '../geometry/units.ts';
import { benchTestOf, type Hanging, type ReadingRow } from '../making/plies/bench.ts';
import type { ClothCut } from '../making/plies/cloths.ts';
import type { Layer } from '../making/plies/layers.ts';
import { directionWords } from '../stiffener/fibres.ts';
import type { Made } from '../making/made.ts';
import type { Side } from '../fitting/words.ts';
import { readingNumbers } from './packNumbers.ts';

/** The plies of a shoe; nothing where none are made. Layers in the order of laying, from the foot down. */
export function plyNumbers({ plies }: Made, side: Side): object {
  const one = plies?.shoes.find((each) => each.side === side);
  if (!one) return {};
  const { layers, stagger, amounts, pack, order: { spare, hardener } } = one, { cloth, inPlies, coat, glue, mixed, resin, weight, band, core } = amounts, bench = benchTestOf(pack);
  return {
    plies: {
      staggerMm: stagger, layers: layers.map((layer) => ofLayer(layer, side)),
      grams: { cloth, inPlies, coat, ...(glue > 0 ? { glue } : {}), mixed, resin, hardener: amounts.hardener, ...(core ? { core: core.weight } : {}), pack: weight, packLeast: band[0], packMost: band[1] },
      sparePercent: spare * 100, hardenerTo100: hardener, coverMm2: amounts.cover.area,
      ...(bench ? { bench: { bare: ofHanging(bench.bare), finished: ofHanging(bench.finished), readings: bench.rows.map(ofReading) } } : {}),
    },
  };
}

const ofReading = ({ span: { from, to, reading }, droop: [least, most], bend: [bendLeast, bendMost] }: ReadingRow): object => ({
  fromMm: least, toMm: finite(most), timesFrom: from, timesTo: finite(to), bendFromDeg: inDegrees(bendLeast), bendToDeg: finite(inDegrees(bendMost)), ...readingNumbers(reading),
});
/** What has no end is left out. */
const finite = (value: number): number | undefined => (Number.isFinite(value) ? value : undefined);

function ofLayer(layer: Layer, side: Side): object {
  const any = { number: layer.number, kind: layer.kind, insetMm: layer.inset, areaMm2: layer.area, ...(layer.over ? { fromMm: layer.over.from, toMm: layer.over.to } : {}) };
  return layer.kind === 'ply' ? { ...any, cloth: layer.ply.name, fibres: directionWords(layer, side), thicknessMm: layer.ply.thickness } : { ...any, material: layer.core.name, thicknessMm: layer.thickest };
}

const ofHanging = ({ clampAt, loadAt, mass, moment, strain, droop, band, atBall }: Hanging): object =>
  ({ clampAtMm: clampAt, loadAtMm: loadAt, massKg: mass, momentNm: moment, strainPercent: strain * 100, droopMm: droop, leastMm: band?.[0], mostMm: band?.[1], atBallMm: atBall });

/** Each roll that is cut from. */
export const clothNumbers = ({ plies }: Made): object[] | undefined => plies?.cloths.map(({ number, name, width, length, beside, waste, left }: ClothCut) =>
  ({ number, name, widthMm: width, lengthMm: length, besideMm: beside, wastePercent: waste * 100, notLaid: left }));

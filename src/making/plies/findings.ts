import type { Finding } from '../../checks/finding.ts';
import { mm, rounded } from '../../checks/say.ts';
import { PRACTICE } from '../../checks/sources.ts';
import { inDegrees, type Mm } from '../../geometry/units.ts';
import type { Pair, RockerShoe } from '../../pair/shoe.ts';
import { assess } from '../../stiffener/assess.ts';
import { gradeOf } from '../../stiffener/grades.ts';
import { hasRoom } from '../../stiffener/hung.ts';
import { mostStagger } from '../../stiffener/steps.ts';
import { END_STEP, LEAST_STRIP, type LaidPack } from './layers.ts';
import { packedShoes, plyParts, shoePlies, type ShoePlies } from './shoePlies.ts';
import { rollFor } from './turns.ts';

/** What stands in the way of cutting plies. */
export function plyFindings(pair: Pair): Finding[] {
  const order = pair.fitting.making.plies;
  if (!order) return [];
  const packed = packedShoes(pair), bare = pair.shoes.filter((shoe): shoe is RockerShoe => shoe.kind === 'rocker' && packed.every(({ shoe: known }) => known !== shoe));
  return [...bare.map(notKnown), ...packed.flatMap(({ shoe, pack }) => plyFindingsOf(shoePlies(shoe, pack, pair.fitting, order)))];
}

/** The same for one shoe. */
export const plyFindingsOf = (one: ShoePlies): Finding[] => [...beyondRoll(one), ...narrow(one), ...shortStrips(one), ...steppedSofter(one), ...notProved(one)];

/** Where what is found of plies is said to be. */
export const PLIES_WHERE = 'plies of the stiffener';
const notKnown = ({ side, order: { stiffener } }: RockerShoe): Finding => ({
  code: 'PLIES_NOT_KNOWN', severity: 'warn', side, unit: '', where: PLIES_WHERE, basis: PRACTICE,
  text: stiffener === 0 ? 'Plies are ordered (making.plies), but this shoe has no stiffener (order.stiffener is 0): give it one, or leave the plies out.'
    : `Plies are ordered (making.plies), but of the stiffener only its thickness is known (order.stiffener ${mm(stiffener)}): nothing is cut. Write into order.stiffener what is wanted of it, or what is laid.`,
});

/** Widths of roll are told in whole centimetres. */
const ROLLS: Mm = 10;

function beyondRoll(one: ShoePlies): Finding[] {
  const { side, order: { rollWidth } } = one, parts = plyParts(one).map((part) => ({ part, needs: rollFor(part) })), wide = parts.filter(({ needs }) => needs > rollWidth);
  if (wide.length === 0) return [];
  const limit = Math.ceil(Math.max(...parts.map(({ needs }) => needs)) / ROLLS) * ROLLS;
  return [{
    code: 'PLY_BEYOND_ROLL', severity: 'warn', side, measured: rollWidth, limit, unit: 'mm', where: PLIES_WHERE, basis: PRACTICE,
    text: `A roll ${mm(rollWidth, 0)} wide does not take ${wide.map(({ part: { layer: { number } } }) => `ply ${number}`).join(', ')} with the fibres the way they are to run: not laid out on the cloth. A roll of ${mm(limit, 0)} takes all plies (making.plies.rollWidth).`,
  }];
}

function narrow({ side, order, layers, stagger, pack: { plate } }: ShoePlies): Finding[] {
  if (stagger >= order.stagger) return [];
  const limit = mostStagger(plate, layers.length);
  return [{
    code: 'PLY_STAGGER', severity: 'warn', side, measured: order.stagger, limit, unit: 'mm', where: PLIES_WHERE, basis: PRACTICE,
    text: `With edges ${mm(order.stagger)} apart ${layers.length} layers would leave too little of the plate where it is narrowest; they are cut with ${mm(limit)} (making.plies.stagger).`,
  }];
}

const shortStrips = ({ side, short }: ShoePlies): Finding[] => short.map(({ number, length, least }) => ({
  code: 'PLY_TOO_SHORT', severity: 'warn', side, measured: length, limit: least, unit: 'mm', where: PLIES_WHERE, basis: PRACTICE,
  text: `Strip ${number} is ${mm(length, 0)} long: with its ends kept ${mm(END_STEP, 0)} from those of the others less than ${mm(LEAST_STRIP, 0)} would be left, so it ends where another does. Make it ${mm(Math.ceil(least), 0)} long, or let it begin and end somewhere else.`,
}));

/** Told from this share on. */
const SOFTER = 0.1;

/** Steps take width: the sole is reckoned with all plies as wide as the widest. */
function steppedSofter(one: ShoePlies): Finding[] {
  const { side, stagger, pack } = one, bend = bendWith(pack, 0), stepped = bendWith(pack, 2 * stagger * meanLevel(one));
  if (stepped === undefined || bend === undefined || stepped / bend - 1 < SOFTER) return [];
  const measured = inDegrees(stepped), worse = gradeOf(stepped) !== gradeOf(bend);
  return [{
    code: 'PLY_STEPS_SOFTER', severity: worse ? 'warn' : 'note', side, measured, limit: inDegrees(bend), unit: 'deg', where: PLIES_WHERE, basis: 'mechanics; every ply as narrow as those that bear are in the mean',
    text: `With edges that keep ${mm(stagger)} apart the sole bends ${rounded(measured, 2)}° instead of ${rounded(inDegrees(bend), 2)}° on the bench${worse ? `: ${gradeOf(stepped)} instead of ${gradeOf(bend)}` : ''}. Edges nearer to each other cost less (making.plies.stagger).`,
  }];
}

/** How many steps plies are set in, in the mean: with a core the outer ones bear nearly all; on a camber, or with foam between, all bear alike. */
function meanLevel({ layers }: ShoePlies): number {
  const thick = layers.map((layer) => (layer.kind === 'ply' ? layer.ply.thickness : layer.thickest)), whole = thick.reduce((sum, one) => sum + one, 0), cored = layers.some(({ kind }) => kind === 'core');
  let z = -whole / 2, bears = 0, steps = 0;
  layers.forEach((layer, i) => {
    const t = thick[i]!, weight = layer.kind === 'core' ? 0 : t * (cored ? (z + t / 2) ** 2 : 1);
    z += t; bears += weight; steps += weight * layer.level;
  });
  return steps / bears;
}

function bendWith({ stiffener, plate, asked, assessed: { lever } }: LaidPack, less: Mm): number | undefined {
  const read = assess(stiffener, { ...plate, width: (x) => Math.max(plate.width(x) - less, 1) }, { mass: asked.mass, wanted: asked.wanted, lever });
  return read.ok ? read.value.bench.bend : undefined;
}

const notProved = ({ side, pack }: ShoePlies): Finding[] => (hasRoom(pack) ? [] : [{
  code: 'PLY_NOT_PROVED', severity: 'note', side, unit: '', where: PLIES_WHERE, basis: PRACTICE,
  text: 'The pack is too short behind or ahead of the ball to be clamped and loaded: no bench test is given for it.',
}]);

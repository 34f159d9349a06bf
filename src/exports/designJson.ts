import { cautionsFor } from '../checks/cautions.ts';
import { figuresOf, measuresListed, stationsOf } from '../checks/figures.ts';
import { inputOf } from '../checks/inputs.ts';
import type { Fitting, SheetMatch, ToeOrder } from '../fitting/fitting.ts';
import type { Making } from '../fitting/making.ts';
import type { Measure } from '../fitting/measure.ts';
import { inDegrees } from '../geometry/units.ts';
import { levelInWords } from '../pair/level.ts';
import { partsOf, type MatchShoe, type RockerShoe, type Shoe } from '../pair/shoe.ts';
import type { GroundPiece } from '../profile/groundFace.ts';
import type { Design } from '../checks/design.ts';
import { linearSpread } from '../spread/linear.ts';
import type { Made } from '../making/made.ts';
import { numbersBeside, numbersOfPair } from './besides.ts';
import { blockOrderNumbers, toolNumbers } from './blockNumbers.ts';
import { jigOrderOf } from './jigNumbers.ts';
import { mouldOrderOf } from './mouldNumbers.ts';
import { jobLines, orderLines } from './orderWords.ts';
import { packFor } from '../stiffener/pack.ts';
import { packNumbers } from './packNumbers.ts';
import { rollNumbers } from './rollNumbers.ts';
import { targetNumbers } from './targetNumbers.ts';
import { spreadNumbers } from './spreadNumbers.ts';
import { walkNumbers, walkOfPair } from './walkNumbers.ts';

/** Raised when a field is renamed, moved or taken out; new fields come without it. */
const FORMAT_VERSION = 1;
const DIGITS = 6;

/**
 * Every number of a design as JSON for other programs: lengths in mm, angles in degrees, each figure with its unit.
 * Fields in a fixed order, numbers to six places, so that two designs can be compared line by line.
 * @param made all that the job orders besides the soles
 */
export function designJson(design: Design, made: Made): string {
  const { fitting, shoes, findings } = design, spreads = linearSpread(design);
  return `${JSON.stringify({
    format: 'rockerbench design', version: FORMAT_VERSION,
    job: Object.fromEntries(jobLines(fitting)), level: levelInWords(fitting.wearer.legDifference),
    wearer: wearerOf(fitting), chordGapMm: fitting.making.chordGap, making: makingOf(fitting.making),
    shoes: shoes.map((shoe, i) => ({ ...shoeOf(shoe, fitting), walk: walkNumbers(design, shoe), spread: spreadNumbers(spreads[i]!), ...targetNumbers(fitting, shoe.side), ...numbersBeside(made, shoe, fitting) })), ...walkOfPair(design), ...numbersOfPair(design, made),
    findings, overrides: fitting.overrides, cautions: cautionsFor(fitting),
  }, rounded, 2)}\n`;
}

/** @throws RangeError for a number that is none, which is a fault of the program */
function rounded(name: string, value: unknown): unknown {
  if (typeof value !== 'number') return value;
  if (!Number.isFinite(value)) throw new RangeError(`${name} must be a finite number, got ${value}`);
  return Number(value.toFixed(DIGITS)) + 0;
}

const wearerOf = ({ wearer: { mass, stature, crotchHeight, sex, risks, risksAsked, legDifference } }: Fitting): object => ({
  massKg: mass?.value, statureMm: stature?.value, crotchHeightMm: crotchHeight?.value, sex, risks, risksAsked,
  legDifference: { correctMm: legDifference.correct, shorter: legDifference.shorter, found: legDifference.found },
});

const makingOf = ({ tool, printBed, board, mould, block, jig, gauges, wedges }: Making): object => ({
  tool: tool && toolNumbers(tool),
  printBed: printBed && { xMm: printBed.x, yMm: printBed.y, zMm: printBed.z },
  mould: mould && mouldOrderOf(mould), block: block && blockOrderNumbers(block), jig: jig && jigOrderOf(jig, board), gauges: gauges && { depthMm: gauges.depth }, wedges: wedges && { stepMm: wedges.step, flatMm: wedges.flat },
});

function shoeOf(shoe: Shoe, fitting: Fitting): object {
  const { shape } = partsOf(shoe) ?? {};
  return {
    side: shoe.side, kind: shoe.kind, order: Object.fromEntries(orderLines(shoe.fitting)),
    orderNumbers: shoe.kind === 'rocker' ? rockerNumbers(shoe) : matchNumbers(shoe), measures: measuresOf(shoe, fitting),
    figures: figuresOf(shoe, fitting), profile: shape?.face.pieces.map(pieceOf), stations: stationsOf(shoe), roll: shoe.kind === 'rocker' ? rollNumbers(shoe, fitting) : undefined, stiffener: packNumbers(packFor(shoe, fitting)),
  };
}

/** An order as numbers, what the maker left open filled in as it was made; an apex left to the default says so. */
function rockerNumbers({ order, last }: RockerShoe): object {
  const { apexX, apexByDefault, toe, standingFlat, crestAngle, strike, minima, stiffener, seatAtLeast } = order;
  return {
    kind: 'rocker', apexMm: apexX, apexPercent: (apexX / last.length) * 100, apexByDefault, toe: toeNumbers(toe), standingFlatMm: standingFlat,
    crestAngleDeg: inDegrees(crestAngle), strikeDeg: inDegrees(strike), stiffenerMm: stiffener,
    leastThicknessMm: { edge: minima.edge, seat: minima.seat, waist: minima.waist, tread: minima.tread, tip: minima.tip },
    seatHeightAtLeast: seatAtLeast && { mm: seatAtLeast.height, by: seatAtLeast.by }, ...buildNumbers(order),
  };
}

const toeNumbers = ({ rule, radius, toeSpring, toeOff, endAngle }: ToeOrder): object => ({
  rule, radiusMm: radius, toeSpringMm: toeSpring, toeOffDeg: toeOff === undefined ? undefined : inDegrees(toeOff),
  endAngleDeg: endAngle === undefined ? undefined : inDegrees(endAngle),
});

const matchNumbers = ({ order, raise, made }: MatchShoe): object => ({
  kind: 'match', seatHeightNowMm: order.seatHeightNow.value, ballHeightNowMm: order.ballHeightNow.value,
  raiseSeatMm: raise.seat, raiseBallMm: raise.ball, tipMm: made?.tip ?? order.tip, ...buildNumbers(order),
});

const buildNumbers = ({ outsole, foam, taper, edgeBeyond }: Pick<SheetMatch, 'outsole' | 'foam' | 'taper' | 'edgeBeyond'>): object => ({
  outsole: { material: outsole.material, thicknessMm: outsole.thickness }, foam,
  leanDeg: Object.fromEntries(LEANS.map((name) => [name, inDegrees(taper[name])])),
  edgeBeyondMm: { heel: edgeBeyond.heel, ball: edgeBeyond.ball, toe: edgeBeyond.toe },
});
const LEANS = ['heelInner', 'heelOuter', 'foreInner', 'foreOuter'] as const;

const measuresOf = (shoe: Shoe, fitting: Fitting): object => Object.fromEntries(measuresListed(shoe, fitting).flatMap((field) => {
  const { label, unit, of } = inputOf(field), measure = of(shoe.fitting);
  return measure ? [[field, measureOf(label, unit, measure)] as const] : [];
}));

function measureOf(label: string, unit: 'mm' | 'deg', { value, origin, rule, error, accuracy, how, twice }: Measure): object {
  const inUnit = (x: number | undefined): number | undefined => x !== undefined && unit === 'deg' ? inDegrees(x) : x;
  return { label, value: inUnit(value), unit, origin, rule, error: inUnit(error), accuracy: inUnit(accuracy), how, twice };
}

/** A piece of the ground face in the side view, x along the walking line from the heel; angles from straight down, toe down positive. */
function pieceOf(piece: GroundPiece): object {
  if (piece.kind === 'straight') return { name: piece.name, kind: piece.kind, fromMm: piece.from, toMm: piece.to };
  const { name, kind, centre, radius, from, to } = piece;
  return { name, kind, centreMm: centre, radiusMm: radius, fromDeg: inDegrees(from), toDeg: inDegrees(to) };
}

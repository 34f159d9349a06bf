import { cautionsFor } from '../checks/cautions.ts';
import { figuresOf, stationsOf } from '../checks/figures.ts';
import { INPUT_FIELDS, inputOf } from '../checks/inputs.ts';
import type { Fitting, ShoeFitting } from '../fitting/fitting.ts';
import type { Measure } from '../fitting/measure.ts';
import { inDegrees } from '../geometry/units.ts';
import { levelInWords } from '../pair/level.ts';
import { partsOf, type Shoe } from '../pair/shoe.ts';
import type { GroundPiece } from '../profile/groundFace.ts';
import type { Design } from '../checks/design.ts';
import { jobLines, orderLines } from './orderWords.ts';

/** Raised when a field is renamed, moved or taken out; new fields come without it. */
const FORMAT_VERSION = 1;
const DIGITS = 6;

/**
 * Every number of a design as JSON for other programs: lengths in mm, angles in degrees, each figure with its unit.
 * Fields in a fixed order, numbers to six places, so that two designs can be compared line by line.
 */
export function designJson(design: Design): string {
  const { fitting, shoes, findings } = design;
  return `${JSON.stringify({
    format: 'rockerbench design', version: FORMAT_VERSION,
    job: Object.fromEntries(jobLines(fitting)), level: levelInWords(fitting.wearer.legDifference),
    wearer: wearerOf(fitting), chordGapMm: fitting.making.chordGap,
    shoes: shoes.map((shoe) => shoeOf(shoe, fitting)),
    findings, overrides: fitting.overrides, cautions: cautionsFor(fitting),
  }, rounded, 2)}\n`;
}

/** @throws RangeError for a number that is none, which is a fault of the program */
function rounded(name: string, value: unknown): unknown {
  if (typeof value !== 'number') return value;
  if (!Number.isFinite(value)) throw new RangeError(`${name} must be a finite number, got ${value}`);
  return Number(value.toFixed(DIGITS)) + 0;
}

const wearerOf = ({ wearer: { mass, stature, crotchHeight, sex, risks, legDifference } }: Fitting): object => ({
  massKg: mass?.value, statureMm: stature?.value, crotchHeightMm: crotchHeight?.value, sex, risks,
  legDifference: { correctMm: legDifference.correct, shorter: legDifference.shorter, found: legDifference.found },
});

function shoeOf(shoe: Shoe, fitting: Fitting): object {
  const { shape } = partsOf(shoe) ?? {};
  return {
    side: shoe.side, kind: shoe.kind, order: Object.fromEntries(orderLines(shoe.fitting)), measures: measuresOf(shoe.fitting),
    figures: figuresOf(shoe, fitting), profile: shape?.face.pieces.map(pieceOf), stations: stationsOf(shoe),
  };
}

const measuresOf = (shoe: ShoeFitting): object => Object.fromEntries(INPUT_FIELDS.flatMap((field) => {
  const { label, unit, of } = inputOf(field), measure = of(shoe);
  return measure ? [[field, measureOf(label, unit, measure)] as const] : [];
}));

function measureOf(label: string, unit: 'mm' | 'deg', { value, origin, rule, error, how, twice }: Measure): object {
  const inUnit = (x: number | undefined): number | undefined => x !== undefined && unit === 'deg' ? inDegrees(x) : x;
  return { label, value: inUnit(value), unit, origin, rule, error: inUnit(error), how, twice };
}

/** A piece of the ground face in the side view, x along the walking line from the heel; angles from straight down, toe down positive. */
function pieceOf(piece: GroundPiece): object {
  if (piece.kind === 'straight') return { name: piece.name, kind: piece.kind, fromMm: piece.from, toMm: piece.to };
  const { name, kind, centre, radius, from, to } = piece;
  return { name, kind, centreMm: centre, radiusMm: radius, fromDeg: inDegrees(from), toDeg: inDegrees(to) };
}

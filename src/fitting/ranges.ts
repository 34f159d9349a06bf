import { extremesInSurvey, SURVEY_SOURCE, usualInSurvey, type SurveyName } from './survey.ts';
import { LEAST_CORE, LEAST_CORE_SHEAR, RESIN } from '../materials/stiffeners.ts';
import type { Sex } from './words.ts';

/** Unit of a number as this table names it. Lengths of a sheet in inches are turned into mm before they are compared. */
export type Unit = 'mm' | 'deg' | 'kg' | 'g' | 'g/cm³' | 'g/m²' | 'MPa' | '%' | 'size' | '';
export type Span = readonly [least: number, most: number];

/** What a number of the sheet may be. */
export interface Range {
  readonly unit: Unit;
  /** Outside these it is a slip of the pen and refused. */
  readonly limits: Span;
  /** Outside these it is unusual: worth taking twice. */
  readonly usual?: (sex?: Sex) => Span;
  readonly basis: string;
}

const PRACTICE = 'common practice';
/** A slip (centimetres, inches, another measure) shows as less than half the smallest or more than 1.5 times the largest. */
const widened = ([least, most]: Span): Span => [least / 2, most * 1.5];

/** A body measure known from the survey; `beyond` is what is added to it, for measures the survey lacks. */
function survey(name: SurveyName, unit: Unit = 'mm', beyond: Span = [0, 0]): Range {
  const shift = ([least, most]: Span): Span => [least + beyond[0], most + beyond[1]];
  const basis = beyond[1] === 0 ? SURVEY_SOURCE : `${SURVEY_SOURCE}, plus ${beyond[0] === beyond[1] ? beyond[0] : beyond.join(' to ')} (${PRACTICE})`;
  return { unit, limits: widened(shift(extremesInSurvey(name))), usual: (sex) => shift(usualInSurvey(name, sex)), basis };
}
const usually = (least: number, most: number, limits = widened([least, most]), unit: Unit = 'mm'): Range =>
  ({ unit, limits, usual: () => [least, most], basis: PRACTICE });
const angle = (least: number, most: number, limits: Span): Range => usually(least, most, limits, 'deg');
/** A setting of the order or the workshop: limits only. */
const within = (least: number, most: number, unit: Unit = 'mm'): Range => ({ unit, limits: [least, most], basis: PRACTICE });

const LAST_LENGTH = survey('footLength', 'mm', [12, 20]);
const LONGEST_LAST = LAST_LENGTH.limits[1];

/**
 * Every number of the sheet, by its place without the side: its unit, the limits it is held to, and what is usual.
 * Body measures from the survey; the others are usual ranges of the trade.
 */
export const RANGES = {
  'wearer.mass': survey('mass', 'kg'),
  'wearer.stature': survey('stature'),
  'wearer.crotchHeight': survey('crotchHeight'),
  'wearer.legDifference.correct': within(0, 100),

  'accuracy.length': within(0.01, 50),
  'accuracy.angle': within(0.01, 15, 'deg'),

  'upperWeight': within(50, 2000, 'g'),

  'foot.length': survey('footLength'),
  'foot.length.size': within(1, 500, 'size'),
  'foot.length.allowance': within(0, 40),
  'foot.ballInner': survey('ballLength'),
  'foot.ballOuter': usually(140, 185),
  'foot.pivotForward': usually(50, 75),
  'foot.pivotHeight': survey('malleolusHeight', 'mm', [5, 5]),
  'foot.malleolusHeight': survey('malleolusHeight'),
  'foot.hipHeight': survey('hipHeight'),
  'foot.hipAhead': usually(36, 88),
  'foot.ankleAngle': angle(-25, 15, [-45, 30]),
  'foot.heelPlates.height': usually(0, 40, [0, 120]),
  'foot.heelPlates.span': usually(150, 320),
  'foot.heelPlates.hipAhead': usually(36, 88),
  'foot.prosthesis.heelRise': usually(0, 60, [0, 90]),
  'foot.prosthesis.shankLean': angle(-5, 10, [-15, 20]),
  'foot.strikeAngle': angle(10, 25, [1, 45]),
  'foot.toeOffAngle': angle(30, 60, [10, 80]),
  'foot.ankleRange': angle(0, 20, [0, 40]),
  'foot.walk.angles.contact': angle(-25, -8, [-60, 20]),
  'foot.walk.angles.midStance': angle(0, 15, [-30, 50]),
  'foot.walk.angles.toeOff': angle(30, 55, [5, 85]),

  'last.length': LAST_LENGTH,
  'last.length.size': within(1, 500, 'size'),
  'last.length.allowance': within(0, 40),
  'last.pitch': usually(10, 35, [0, 52.5]),
  'last.toeSpring': usually(5, 25, [0, 37.5]),
  'last.seatLength': usually(45, 90),
  'last.tread': usually(155, 245),
  'last.heelBack': usually(-5, 10, [-20, 30]),
  'last.camber': usually(0, 8, [0, 15]),
  'last.ballWidth': usually(75, 105),
  'last.heelWidth': usually(55, 75),
  'last.inflare': usually(-8, 12, [-25, 30]),
  'last.insole': usually(0, 15, [0, 40]),
  'last.heights.forward': within(-1, LONGEST_LAST),
  'last.heights.up': within(-5, 60),

  'order.apex': within(40, 90, '%'),
  'order.toe.radius': within(10, 5000),
  'order.toe.toeSpring': within(0, 120),
  'order.toe.toeOffAngle': within(5, 80, 'deg'),
  'order.toe.endAngle': within(1, 85, 'deg'),
  'order.standingFlat': within(0, 60),
  'order.crestAngle': within(70, 110, 'deg'),
  'order.taper.heelInner': within(-15, 25, 'deg'),
  'order.taper.heelOuter': within(-15, 25, 'deg'),
  'order.taper.foreInner': within(-15, 25, 'deg'),
  'order.taper.foreOuter': within(-15, 25, 'deg'),
  'order.edgeBeyond.heel': within(0, 6),
  'order.edgeBeyond.ball': within(0, 6),
  'order.edgeBeyond.toe': within(0, 6),
  'order.stiffener': within(0, 10),
  'order.stiffener.bendAtMost': within(0.2, 15, 'deg'),
  'order.stiffener.resin': within(RESIN.least, RESIN.most, ''),
  'order.stiffener.ownResin.density': within(0.8, 2, 'g/cm³'),
  'order.stiffener.ownResin.modulus': within(200, 10_000, 'MPa'),
  'order.stiffener.ownResin.poisson': within(0, 0.49, ''),
  'order.stiffener.ownCloth.ownFibre.density': within(0.5, 10, 'g/cm³'),
  'order.stiffener.ownCloth.ownFibre.along': within(500, 1_000_000, 'MPa'),
  'order.stiffener.ownCloth.ownFibre.across': within(200, 1_000_000, 'MPa'),
  'order.stiffener.ownCloth.ownFibre.shear': within(50, 400_000, 'MPa'),
  'order.stiffener.ownCloth.ownFibre.poisson': within(0, 0.49, ''),
  'order.stiffener.ownCloth.ownFibre.pulled': within(0.1, 10, '%'),
  'order.stiffener.ownCloth.ownFibre.pressed': within(0.1, 10, '%'),
  'order.stiffener.ownCloth.areal': within(20, 1500, 'g/m²'),
  'order.stiffener.ownCloth.thickness': within(0.03, 3),
  'order.stiffener.measuredPly.thickness': within(0.03, 3),
  'order.stiffener.measuredPly.density': within(0.5, 4, 'g/cm³'),
  'order.stiffener.measuredPly.along': within(500, 500_000, 'MPa'),
  'order.stiffener.measuredPly.across': within(500, 500_000, 'MPa'),
  'order.stiffener.measuredPly.shear': within(100, 100_000, 'MPa'),
  'order.stiffener.measuredPly.poisson': within(0, 0.9, ''),
  'order.stiffener.measuredPly.pulled': within(0.1, 10, '%'),
  'order.stiffener.measuredPly.pressed': within(0.1, 10, '%'),
  'order.stiffener.measuredPly.sheared': within(0.1, 10, '%'),
  'order.stiffener.coreThickness': within(LEAST_CORE, 12),
  'order.stiffener.ownCore.density': within(0.02, 3, 'g/cm³'),
  'order.stiffener.ownCore.modulus': within(0.1, 50_000, 'MPa'),
  'order.stiffener.ownCore.shear': within(LEAST_CORE_SHEAR, 20_000, 'MPa'),
  'order.stiffener.ownCore.shearStrength': within(0.01, 500, 'MPa'),
  'order.stiffener.ownCore.bendsTo': within(0.05, 50, '%'),
  'order.stiffener.ownCore.sheet': within(0.3, 12),
  'order.stiffener.camber': within(0, 15),
  'order.stiffener.edges': within(0, 15),
  'order.stiffener.thicknessAtMost': within(0.5, 15),
  'order.stiffener.bond': within(0, 1, ''),
  'order.stiffener.shank.thickness': within(0.3, 3),
  'order.stiffener.shank.width': within(5, 40),
  'order.stiffener.shank.from': within(0, 400),
  'order.stiffener.shank.to': within(0, 400),
  'order.stiffener.plies.angle': within(-90, 90, 'deg'),
  'order.stiffener.plies.resin': within(RESIN.least, RESIN.most, ''),
  'order.stiffener.plies.from': within(0, 400),
  'order.stiffener.plies.to': within(0, 400),
  'order.stiffener.bench.mass': within(0.05, 100, 'kg'),
  'order.stiffener.bench.droop': within(0.05, 60),
  'order.stiffener.bench.lever': within(20, 120),
  'order.stiffener.bench.atTread': within(0, 20),
  'order.outsole.thickness': within(0.5, 15),
  'order.minima.edge': within(1, 60),
  'order.minima.seat': within(1, 60),
  'order.minima.waist': within(1, 60),
  'order.minima.tread': within(1, 60),
  'order.minima.tip': within(1, 60),
  'order.seatHeightAtLeast': within(5, 120),
  'order.seatHeightNow': usually(20, 55, [5, 82.5]),
  'order.ballHeightNow': usually(4, 25, [1, 40]),
  'order.tip': within(1, 60),

  'order.targets.seatHeightAtMost': within(5, 120),
  'order.targets.ballHeightAtMost': within(1, 60),
  'order.targets.ballThicknessAtMost': within(1, 60),
  'order.targets.tipAtMost': within(1, 60),
  'order.targets.tipWanted': within(1, 60),
  'order.targets.toeSpringAtLeast': within(0, 120),
  'order.targets.toeSpringAtMost': within(0, 120),
  'order.targets.weightAtMost': within(20, 2000, 'g'),
  'order.targets.seatDifferenceAtMost': within(0, 100),
  'order.targets.spans.apex.least': within(40, 90, '%'),
  'order.targets.spans.apex.most': within(40, 90, '%'),
  'order.targets.spans.toeRadius.least': within(10, 5000),
  'order.targets.spans.toeRadius.most': within(10, 5000),
  'order.targets.spans.standingFlat.least': within(0, 60),
  'order.targets.spans.standingFlat.most': within(0, 60),
  'order.targets.spans.strikeAngle.least': within(1, 45, 'deg'),
  'order.targets.spans.strikeAngle.most': within(1, 45, 'deg'),
  'order.targets.spans.pitch.least': within(0, 52.5),
  'order.targets.spans.pitch.most': within(0, 52.5),
  'order.targets.spans.lastSpring.least': within(0, 37.5),
  'order.targets.spans.lastSpring.most': within(0, 37.5),

  'making.chordGap': within(0.005, 0.5),
  'making.tool.diameter': within(0.5, 100),
  'making.tool.reach': within(1, 500),
  'making.printBed.x': within(50, 3000),
  'making.printBed.y': within(50, 3000),
  'making.printBed.z': within(5, 3000),
  'making.board.thickness': within(0.5, 50),
  'making.board.length': within(50, 4000),
  'making.board.width': within(50, 4000),
  'making.board.kerf': within(0, 15),
  'making.board.clearance': within(0, 2),
  'making.board.apart': within(0, 100),
  'making.rack.thickness': within(0.5, 100),
  'making.rack.hardness': within(1, 100, ''),
  'making.rack.density': within(0.02, 3, 'g/cm³'),
  'making.rack.price': within(0, 1e6, ''),
  'making.rack.length': within(50, 4000),
  'making.rack.width': within(50, 4000),
  'making.block.length': within(50, 2000),
  'making.block.width': within(50, 2000),
  'making.block.sheet': within(2, 300),
  'making.block.sheets': within(1, 50, ''),
  'making.block.margin': within(0, 100),
  'making.block.dowel': within(2, 30),
  'making.block.tabWidth': within(1, 40),
  'making.block.tabHeight': within(0.5, 40),
  'making.block.scallop': within(0.005, 2),
  'making.print.pin': within(2, 20),
  'making.print.clearance': within(0, 2),
  'making.jig.ribsApart': within(10, 150),
  'making.jig.room': within(2, 60),
  'making.jig.depth': within(20, 400),
  'making.jig.bush.diameter': within(2, 100),
  'making.jig.bush.cutter': within(1, 100),
  'making.gauges.depth': within(25, 150),
  'making.stack.glueLine': within(0, 1),
  'making.stack.trim': within(0, 20),
  'making.stack.layerSaves': within(0, 20),
  'making.stack.apart': within(0, 50),
  'making.plies.rollWidth': within(100, 3000),
  'making.plies.stagger': within(0.5, 5),
  'making.plies.spare': within(0, 100, '%'),
  'making.plies.hardener': within(5, 120, ''),
  'making.templates.overlap': within(0, 40),
  'making.wedges.step': within(1, 20),
  'making.wedges.flat': within(5, 60),
  'making.mould.draft': within(0, 20, 'deg'),
  'making.mould.shrink.length': within(0, 10, '%'),
  'making.mould.shrink.width': within(0, 10, '%'),
  'making.mould.shrink.height': within(0, 10, '%'),
  'making.mould.rim': within(5, 100),
  'making.mould.floor': within(3, 100),
  'making.mould.density': within(0.05, 3, 'g/cm³'),
  'making.mould.dowel': within(2, 30),
  'making.mould.bolt': within(2, 20),
  'making.mould.ledge': within(5, 100),
  'making.mould.pourHole': within(2, 50),
  'making.mould.ventHole': within(0.5, 20),
} as const satisfies Record<string, Range>;
export type RangeName = keyof typeof RANGES;

/** The row that holds the accuracy of a measure. */
export const accuracyRow = (name: RangeName): RangeName => (rangeOf(name).unit === 'deg' ? 'accuracy.angle' : 'accuracy.length');

/** The table's row for a place, widened to the plain shape. */
export const rangeOf = (name: RangeName): Range => RANGES[name];
export const isRangeName = (name: string): name is RangeName => Object.hasOwn(RANGES, name);

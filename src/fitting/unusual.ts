import { inTableUnit, quantityWords } from './convert.ts';
import type { Fitting, Foot, LastMeasures, SheetOrder, Wearer } from './fitting.ts';
import type { Measure } from './measure.ts';
import { rangeOf, type RangeName } from './ranges.ts';
import type { Sex } from './words.ts';

/** A measure that was taken and read, but is outside what is usual: worth taking twice. */
interface Unusual {
  readonly path: string;
  /** The measure and the usual range, mm, degrees or kg. */
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly unit: 'mm' | 'deg' | 'kg';
  readonly text: string;
}

type Named = readonly [RangeName, Measure | undefined];

const wearerMeasures = ({ mass, stature, crotchHeight }: Wearer): Named[] =>
  [['wearer.mass', mass], ['wearer.stature', stature], ['wearer.crotchHeight', crotchHeight]];

const walkMeasures = ({ walk }: Pick<Foot, 'walk'>): Named[] => (walk?.kind !== 'angles' ? []
  : [['foot.walk.angles.contact', walk.contact], ['foot.walk.angles.midStance', walk.midStance], ['foot.walk.angles.toeOff', walk.toeOff]]);

function footMeasures({ stance, prosthesis, heelPlates, ...foot }: Foot): Named[] {
  return [
    ['foot.length', foot.length], ['foot.ballInner', foot.ballInner], ['foot.ballOuter', foot.ballOuter],
    ['foot.pivotForward', foot.pivotForward], ['foot.pivotHeight', foot.pivotHeight], ['foot.malleolusHeight', foot.malleolusHeight],
    ['foot.hipHeight', foot.hipHeight],
    stance.kind === 'locked' ? ['foot.ankleAngle', stance.found === 'prosthesis alignment' ? undefined : stance.ankleAngle] : ['foot.hipAhead', stance.hipAhead],
    ['foot.heelPlates.height', heelPlates?.height], ['foot.heelPlates.span', heelPlates?.span], ['foot.heelPlates.hipAhead', heelPlates?.hipAhead],
    ['foot.prosthesis.heelRise', prosthesis?.heelRise], ['foot.prosthesis.shankLean', prosthesis?.shankLean],
    ['foot.strikeAngle', foot.strikeAngle], ['foot.toeOffAngle', foot.toeOffAngle], ['foot.ankleRange', foot.ankleRange], ...walkMeasures(foot),
  ];
}

const lastMeasures = (last: LastMeasures): Named[] => [
  ['last.length', last.length], ['last.pitch', last.pitch], ['last.toeSpring', last.toeSpring], ['last.seatLength', last.seatLength],
  ['last.tread', last.tread], ['last.heelBack', last.heelBack], ['last.camber', last.camber], ['last.ballWidth', last.ballWidth],
  ['last.heelWidth', last.heelWidth], ['last.inflare', last.inflare], ['last.insole', last.insole],
];

const orderMeasures = (order: SheetOrder): Named[] =>
  order.kind === 'match' ? [['order.seatHeightNow', order.seatHeightNow], ['order.ballHeightNow', order.ballHeightNow]] : [];

/** Only what the maker measured is asked about, and not when he has taken it twice. */
function unusual(path: string, [name, measure]: Named, { units, wearer: { sex } }: Fitting): Unusual[] {
  const { unit, usual, basis } = rangeOf(name);
  if (!measure || measure.twice || !usual || (unit !== 'mm' && unit !== 'deg' && unit !== 'kg')) return [];
  if (measure.origin !== 'measured' && measure.origin !== 'converted') return [];
  const [least, most] = usual(sex), value = Number(inTableUnit(measure.value, unit).toFixed(2));
  if (value >= least && value <= most) return [];
  const text = `${path} is ${quantityWords([value], unit, units)}; usual is ${quantityWords([least, most], unit, units)} (${basis}${sexWords(sex, name)}). Take it again, and mark it "twice": true when both readings agree.`;
  return [{ path, value, least, most, unit, text }];
}

const sexWords = (sex: Sex | undefined, name: RangeName): string =>
  rangeOf(name).basis.includes('survey') ? `, P1 to P99 of ${sex === undefined ? 'women and men' : sex === 'female' ? 'women' : 'men'}` : '';

/** Every measure of the fitting that is unusual, in the order of the sheet. */
export function unusualMeasures(fitting: Fitting): Unusual[] {
  const { left, right } = fitting.shoes;
  const ofShoes = [left, right].flatMap((shoe) => {
    if (!shoe) return [];
    const { side, foot, last, order } = shoe;
    return [...(foot ? footMeasures(foot) : []), ...lastMeasures(last), ...orderMeasures(order)].map((named) => ({ path: `${side}.${named[0]}`, named }));
  });
  const all = [...wearerMeasures(fitting.wearer).map((named) => ({ path: named[0] as string, named })), ...ofShoes];
  return all.flatMap(({ path, named }) => unusual(path, named, fitting));
}

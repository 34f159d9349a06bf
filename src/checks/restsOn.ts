import { isEstimated } from '../fitting/measure.ts';
import type { Fitting, ShoeFitting } from '../fitting/fitting.ts';
import { otherSide } from '../fitting/words.ts';
import type { RockerShoe, Shoe } from '../pair/shoe.ts';
import { INPUT_FIELDS, inputOf, takenOnFoot, type InputField } from './inputs.ts';

/** What a figure rests on: a measure of the sheet, or one of the groups below whose members hang on the shoe. */
type Source = InputField | 'stance' | 'build' | 'governing' | 'thinnest' | 'apex' | 'apex share' | 'toe radius' | 'flat' | 'walls' | 'turn' | 'plan turned' | 'bottom across' | 'other shoe';

const TILT = ['last.pitch', 'last.seatLength', 'last.tread'] as const satisfies readonly Source[];
/** The leg as it stands over its ankle. */
const LEG = [...TILT, 'stance', 'foot.hipHeight', 'foot.pivotHeight'] as const satisfies readonly Source[];
const PIVOT = [...TILT, 'foot.pivotForward', 'foot.pivotHeight', 'last.heelBack', 'last.insole'] as const satisfies readonly Source[];
const STANDING = [...PIVOT, 'stance', 'foot.hipHeight'] as const satisfies readonly Source[];
const FACE = [...STANDING, 'build'] as const satisfies readonly Source[];
/** A turned walking line turns about the apex, wherever on it one looks. */
const BACK = [...FACE, 'foot.strikeAngle', 'turn'] as const satisfies readonly Source[];
const TOE = [...FACE, 'apex', 'last.length', 'toe radius'] as const satisfies readonly Source[];
/** Square to a turned face is aside as well. */
const SQUARE_BACK = [...BACK, 'bottom across'] as const satisfies readonly Source[];
const SQUARE_TOE = [...TOE, 'bottom across'] as const satisfies readonly Source[];
const ROLL = [...TOE, 'foot.strikeAngle'] as const satisfies readonly Source[];
const GROUND_LINE = [...ROLL, 'walls'] as const satisfies readonly Source[];
/** Where the sole ends behind; on a turned walking line that hangs on how wide it is, too. */
const BACK_END = [...BACK, 'walls', 'plan turned'] as const satisfies readonly Source[];
/** The mid arc ends at the apex, and behind at the heel arc or, without one, at the strike angle. */
const MID_ARC = [...FACE, 'apex', 'foot.strikeAngle'] as const satisfies readonly Source[];
const OUTLINE = ['last.length', 'last.ballWidth', 'last.heelWidth', 'last.innerBall', 'last.outerBall', 'last.inflare'] as const satisfies readonly Source[];
const SOLID = [...ROLL, ...OUTLINE, 'last.toeSpring', 'last.camber'] as const satisfies readonly Source[];

/** A stiffener under the last, bent about its tread line. */
const PACK = [...OUTLINE, 'last.tread', 'last.seatLength', 'last.camber'] as const satisfies readonly Source[];

/** What is pressed under the standing point: how thick, how wide and how round it is there. */
const STOOD_ON = [...MID_ARC, 'toe radius', ...OUTLINE, 'bottom across'] as const satisfies readonly Source[];

/** Seat and ball of the raise decide its tilt; how long the shoe is between them, how far that reaches. */
const RAISED_TILT = ['other shoe', 'order.seatHeightNow', 'order.ballHeightNow'] as const satisfies readonly Source[];
const RAISED = [...RAISED_TILT, 'last.seatLength', 'last.tread'] as const satisfies readonly Source[];
const RAISED_TOE = [...RAISED, 'last.length', 'last.toeSpring'] as const satisfies readonly Source[];
const RAISED_SOLID = [...RAISED_TOE, ...OUTLINE] as const satisfies readonly Source[];

/** Each figure of a rocker with the measures it rests on. */
export const ROCKER_RESTS = {
  seatHeight: ['build', 'last.pitch'], heelHeightBack: ['build', 'last.pitch'], seatThickness: BACK,
  ballHeight: ['build'], standsSeat: ['build', 'last.pitch', 'last.insole'], standsBall: ['build', 'last.insole'],
  pitchOfSole: ['last.pitch'], pitchOfLast: ['last.pitch'],
  toeSpringOfShoe: TOE, toeSpringOfLast: ['last.toeSpring'], heelRise: BACK, build: ['build'],
  governs: ['governing'], thinnest: ['thinnest'],
  tilt: TILT, lean: ['stance', ...TILT], pivotX: PIVOT, pivotHeight: [...PIVOT, 'build'],
  standingPoint: STANDING, standingAhead: LEG, hipHeight: FACE, standingFlat: ['flat'],
  radiusHeel: FACE, radiusMid: FACE, radiusToe: ['toe radius'],
  heelJoint: FACE, heelJointAngle: LEG,
  apex: ['apex'], apexShare: ['apex share'], apexRollAngle: [...FACE, 'apex'], crestAngle: [], rockerAngle: TOE, tipSlope: TOE,
  strikeAsked: ['foot.strikeAngle'], strikeReached: [...BACK, 'walls'], toeOff: [...TOE, 'walls'], totalTurning: GROUND_LINE,
  turnHeel: [...BACK, 'walls'], turnMid: MID_ARC, turnToe: [...TOE, 'walls'],
  pivotDrop: [], pivotDropOrdinary: BACK_END, leverBall: [...TOE, 'walls'],
  swayArcBack: [...FACE, 'foot.strikeAngle'], swayArcFront: [...FACE, 'apex'], bulgeMid: MID_ARC,
  squashSoft: STOOD_ON, squashHard: STOOD_ON, steadySoft: STOOD_ON, steadyHard: STOOD_ON,
  pivotRise: [...BACK, 'apex'], hipDropStrike: [...BACK, 'walls'], hipDropToeOff: [...TOE, 'walls'],
  rollLength: GROUND_LINE, rollShare: GROUND_LINE, midRadiusShare: FACE, rollOverRadius: GROUND_LINE, rollOverShare: GROUND_LINE,
  thicknessBack: BACK, thicknessPivot: BACK, thicknessSeatEnd: BACK, thicknessApex: [...TOE, 'last.toeSpring'], thicknessTread: TOE, thicknessTip: [...TOE, 'last.toeSpring'],
  squareBack: SQUARE_BACK, squarePivot: SQUARE_BACK, squareSeatEnd: SQUARE_BACK, squareApex: [...SQUARE_TOE, 'last.toeSpring'], squareTread: SQUARE_TOE, squareTip: [...SQUARE_TOE, 'last.toeSpring'],
  foamLeft: [...ROLL, 'last.toeSpring', 'last.camber'],
  halfBase: [...FACE, 'turn', 'last.heelWidth'], sideTipping: [...FACE, 'turn', 'last.heelWidth'],
  packThickness: PACK, packCloth: PACK, packResin: PACK, packCore: PACK, packGlue: PACK, packShank: PACK, packBend: PACK, packTip: PACK, packWalks: PACK, packEnergy: PACK, packStrain: PACK, packFirstPly: PACK, packWrinkling: PACK, packCoreShear: PACK,
  foamVolume: SOLID, outsoleVolume: SOLID, stiffenerVolume: OUTLINE, soleVolume: SOLID,
  foamWeight: SOLID, outsoleWeight: SOLID, stiffenerWeight: OUTLINE, soleWeight: SOLID, shoeWeight: SOLID,
  outsoleLength: GROUND_LINE,
} as const satisfies Record<string, readonly Source[]>;

/** Each figure of a match with the measures it rests on. */
export const MATCH_RESTS = {
  raiseSeat: ['other shoe', 'order.seatHeightNow'], raiseBall: ['other shoe', 'order.ballHeightNow'],
  standsSeat: ['other shoe', 'order.seatHeightNow'], standsBall: ['other shoe', 'order.ballHeightNow'],
  seatHeight: ['other shoe', 'order.seatHeightNow'], ballHeight: ['other shoe', 'order.ballHeightNow'],
  heelHeightBack: RAISED, seatThickness: ['other shoe', 'order.seatHeightNow'], toeSpringOfShoe: RAISED_TOE, radiusToe: RAISED_TOE, tipSlope: RAISED_TOE,
  thicknessBack: RAISED, thicknessSeatEnd: RAISED, thicknessTread: ['other shoe', 'order.ballHeightNow'], thicknessTip: RAISED_TOE,
  squareBack: RAISED, squareSeatEnd: RAISED, squareTread: ['other shoe', 'order.ballHeightNow'], squareTip: RAISED_TOE,
  foamLeft: RAISED_TOE, foamVolume: RAISED_SOLID, outsoleVolume: RAISED_SOLID, soleVolume: RAISED_SOLID,
  foamWeight: RAISED_SOLID, outsoleWeight: RAISED_SOLID, soleWeight: RAISED_SOLID, shoeWeight: RAISED_SOLID, outsoleLength: [...RAISED_TOE, 'walls'],
} as const satisfies Record<string, readonly Source[]>;

type RockerKey = keyof typeof ROCKER_RESTS;
type MatchKey = keyof typeof MATCH_RESTS;
export type FigureKey = RockerKey | MatchKey;

const restsOf = (shoe: Shoe): Partial<Record<FigureKey, readonly Source[]>> => (shoe.kind === 'rocker' ? ROCKER_RESTS : MATCH_RESTS);

/** Measures of a shoe's own sheet that were estimated and that some of its figures rest on, in the order of the sheet. */
export function estimatesBehind(shoe: Shoe, keys: readonly FigureKey[]): readonly InputField[] {
  const rests = restsOf(shoe), sources = new Set(keys.flatMap((key) => rests[key] ?? []));
  const used = new Set([...sources].flatMap((source) => membersOf(source, shoe)));
  return INPUT_FIELDS.filter((field) => used.has(field) && fieldIsEstimated(shoe.fitting, field));
}

/** Measures of a shoe worth showing, in the order of the sheet: those that were given, and those estimated that some of its figures rest on. */
export function measuresShown(shoe: Shoe, keys: readonly FigureKey[]): readonly InputField[] {
  const used = new Set(estimatesBehind(shoe, keys).flatMap((field) => [field, takenOnFoot(field, shoe.fitting)]));
  return INPUT_FIELDS.filter((field) => inputOf(field).of(shoe.fitting) && (used.has(field) || !fieldIsEstimated(shoe.fitting, field)));
}

/** Tells of each figure of a shoe whether any measure it rests on was estimated. */
export function estimatesIn(shoe: Shoe, fitting: Fitting): (key: FigureKey) => boolean {
  const rests = restsOf(shoe);
  const known = new Map<Source, boolean>();
  const lookUp = (source: Source): boolean => {
    if (hangsOnOther(source, shoe) && otherIsEstimated(shoe, fitting)) return true;
    return membersOf(source, shoe).some((field) => fieldIsEstimated(shoe.fitting, field));
  };
  const estimated = (source: Source): boolean => {
    if (!known.has(source)) known.set(source, lookUp(source));
    return known.get(source)!;
  };
  return (key) => (rests[key] ?? []).some(estimated);
}

function fieldIsEstimated(shoe: ShoeFitting, field: InputField): boolean {
  const measure = inputOf(field).of(shoe);
  return measure !== undefined && isEstimated(measure);
}

/** Whether a source takes in what the other shoe measures. */
function hangsOnOther(source: Source, shoe: Shoe): boolean {
  if (source === 'other shoe') return true;
  const isHeight = source === 'build' || source === 'governing' || source === 'thinnest' || (source === 'toe radius' && toeFollowsMeasures(shoe));
  return isHeight && isBuiltUpToOther(shoe);
}

const toeFollowsMeasures = (shoe: Shoe): boolean => shoe.kind === 'rocker' && shoe.order.toe.rule !== 'given';

const hasLeaningWalls = ({ order: { taper } }: Shoe): boolean => Object.values(taper).some((lean) => lean !== 0);

function membersOf(source: Source, shoe: Shoe): readonly InputField[] {
  switch (source) {
    case 'stance': return stanceInputs(shoe.fitting);
    case 'build': return shoe.kind === 'rocker' ? buildInputs(shoe) : [];
    case 'governing': return shoe.kind === 'rocker' ? governingInputs(shoe) : [];
    case 'apex': return ['last.length', ...membersOf('apex share', shoe)];
    case 'apex share': return jointInputs(shoe.fitting);
    case 'toe radius': return shoe.kind === 'rocker' && toeFollowsMeasures(shoe) ? [...heightInputs(shoe.fitting), ...buildInputs(shoe)] : [];
    case 'thinnest': return shoe.kind === 'rocker' ? thinnestInputs(shoe) : [];
    case 'turn': return isTurned(shoe.fitting) ? membersOf('apex', shoe) : [];
    case 'plan turned': return isTurned(shoe.fitting) ? OUTLINE : [];
    case 'bottom across': return isTurned(shoe.fitting) ? ['last.camber', 'last.ballWidth'] : [];
    case 'walls': return hasLeaningWalls(shoe) ? OUTLINE : [];
    case 'flat': return shoe.kind === 'rocker' && flatBites(shoe) ? [...TILT, 'foot.hipHeight', 'foot.pivotHeight', ...stanceInputs(shoe.fitting)] : [];
    case 'other shoe': return [];
    default: return [source];
  }
}

/** An angle read off heel plates rests on the leg, one from an alignment on the last. */
function stanceInputs({ foot }: ShoeFitting): readonly InputField[] {
  if (foot?.stance.kind !== 'locked') return ['foot.hipAhead', 'foot.hipHeight', 'foot.pivotHeight'];
  switch (foot.stance.found) {
    case 'goniometer': return ['foot.ankleAngle'];
    case 'heel plates and plumb line': return ['foot.ankleAngle', 'foot.heelPlates.height', 'foot.heelPlates.span', 'foot.heelPlates.hipAhead', 'foot.hipHeight', 'foot.pivotHeight'];
    case 'prosthesis alignment': return ['foot.ankleAngle', 'foot.prosthesis.heelRise', 'foot.prosthesis.shankLean', 'last.tread', 'last.seatLength'];
  }
}

/** A stiff toe joint may set the apex where the maker did not; its place across counts where the crest lies further forward there. */
function jointInputs({ foot, order }: ShoeFitting): readonly InputField[] {
  if (order.kind !== 'rocker' || order.apex !== undefined || foot?.joint !== 'toe joint') return [];
  return ['last.length', 'last.innerBall', ...(order.crestAngle > Math.PI / 2 ? ['last.ballWidth'] as const : [])];
}

const isTurned = ({ order }: ShoeFitting): boolean => order.kind === 'rocker' && Math.abs(order.crestAngle - Math.PI / 2) > 1e-9;

/** All a height above the ground can rest on. */
function heightInputs(fitting: ShoeFitting): readonly InputField[] {
  const { last } = fitting, overPlan = last.camber.value !== 0 || isTurned(fitting);
  return [...PIVOT, 'foot.hipHeight', ...stanceInputs(fitting), 'last.length', 'last.camber', ...jointInputs(fitting), ...(overPlan ? OUTLINE : [])];
}

/** What sets the build. The strike angle counts only at the heel behind it, the last's spring only ahead of the tread. */
function buildInputs(shoe: RockerShoe): readonly InputField[] {
  const { rocker: { governs, strikePoint }, last } = shoe;
  if (governs === 'order') return ['last.pitch'];
  if (governs === 'other shoe') return ['last.pitch', 'last.insole'];
  const atBack = governs.zone === 'edge behind the strike point' || governs.at[0] <= strikePoint[0] + 1;
  return [...heightInputs(shoe.fitting), ...(atBack ? ['foot.strikeAngle'] as const : []), ...(governs.at[0] > last.tread ? ['last.toeSpring'] as const : [])];
}

/**
 * The thickness asked for at the place that sets the height; the height itself where that was asked for. Where foam must stay over
 * the outsole, that lies as steep as the strike angle.
 */
function governingInputs(shoe: RockerShoe): readonly InputField[] {
  const { rocker: { governs } } = shoe, byFoam = typeof governs !== 'string' && governs.by === 'foam that must stay';
  return governs === 'order' ? [] : buildInputs(shoe).filter((field) => (field !== 'foot.strikeAngle' || byFoam) && field !== 'last.heelWidth');
}

/** A sole built higher than its least is as thick as all measures leave it. */
const thinnestInputs = (shoe: RockerShoe): readonly InputField[] => typeof shoe.rocker.governs === 'string'
  ? [...heightInputs(shoe.fitting), 'last.toeSpring', 'foot.strikeAngle'] : buildInputs(shoe);

/** True where a rocker is higher than its own sheet asks, because the other one is. */
export const isBuiltUpToOther = (shoe: Shoe): boolean => shoe.kind === 'rocker' && shoe.rocker.governs === 'other shoe';

function otherIsEstimated({ side }: Shoe, { shoes }: Fitting): boolean {
  const other = shoes[otherSide(side)];
  if (!other) return false;
  const fields: readonly InputField[] = [...heightInputs(other), 'last.toeSpring', 'foot.strikeAngle'];
  return fields.some((field) => fieldIsEstimated(other, field));
}

/** True where the standing flat would reach behind the ankle pivot and is cut off under it. */
export const flatBites = ({ order: { standingFlat }, rocker: { pivot, hip } }: RockerShoe): boolean =>
  standingFlat > 0 && hip[0] - standingFlat / 2 < pivot[0];

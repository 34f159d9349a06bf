import type { ShoeFitting } from '../fitting/fitting.ts';
import type { Measure } from '../fitting/measure.ts';

/** A measure of the sheet by its place there, in words, and how to find it in a fitting. */
interface Input { readonly label: string; readonly unit: 'mm' | 'deg'; readonly of: (shoe: ShoeFitting) => Measure | undefined }

type Finder = Input['of'];
const length = (label: string, of: Finder): Input => ({ label, unit: 'mm', of });
const angle = (label: string, of: Finder): Input => ({ label, unit: 'deg', of });

/** Every measure of one shoe that a shape can rest on. */
const INPUTS = {
  'foot.length': length('foot length', ({ foot }) => foot?.length),
  'foot.ballInner': length('ball length to the big-toe joint', ({ foot }) => foot?.ballInner),
  'foot.ballOuter': length('ball length to the little-toe joint', ({ foot }) => foot?.ballOuter),
  'foot.pivotForward': length('ankle pivot forward of the heel back', ({ foot }) => foot?.pivotForward),
  'foot.pivotHeight': length('ankle pivot height', ({ foot }) => foot?.pivotHeight),
  'foot.hipHeight': length('hip height', ({ foot }) => foot?.hipHeight),
  'foot.ankleAngle': angle('fixed ankle angle', ({ foot }) => (foot?.stance.kind === 'locked' ? foot.stance.ankleAngle : undefined)),
  'foot.hipAhead': length('hip ahead of the ankle', ({ foot }) => (foot?.stance.kind === 'free' ? foot.stance.hipAhead : undefined)),
  'foot.heelPlates.height': length('height of the heel plates', ({ foot }) => foot?.heelPlates?.height),
  'foot.heelPlates.span': length('span of the board on the heel plates', ({ foot }) => foot?.heelPlates?.span),
  'foot.heelPlates.hipAhead': length('hip ahead of the ankle on the heel plates', ({ foot }) => foot?.heelPlates?.hipAhead),
  'foot.prosthesis.heelRise': length('aligned heel rise of the prosthetic foot', ({ foot }) => foot?.prosthesis?.heelRise),
  'foot.prosthesis.shankLean': angle('aligned lean of the shank', ({ foot }) => foot?.prosthesis?.shankLean),
  'foot.strikeAngle': angle('tilt at heel strike', ({ foot }) => foot?.strikeAngle),
  'foot.toeOffAngle': angle('tilt at toe-off', ({ foot }) => foot?.toeOffAngle),
  'foot.ankleRange': angle('movement left in the ankle', ({ foot }) => foot?.ankleRange),
  'foot.walk.angles.contact': angle('shank at heel contact', ({ foot }) => (foot?.walk?.kind === 'angles' ? foot.walk.contact : undefined)),
  'foot.walk.angles.midStance': angle('shank at mid-stance', ({ foot }) => (foot?.walk?.kind === 'angles' ? foot.walk.midStance : undefined)),
  'foot.walk.angles.toeOff': angle('shank at toe-off', ({ foot }) => (foot?.walk?.kind === 'angles' ? foot.walk.toeOff : undefined)),
  'last.length': length('last length', ({ last }) => last.length),
  'last.pitch': length('pitch of the last', ({ last }) => last.pitch),
  'last.toeSpring': length('toe spring of the last', ({ last }) => last.toeSpring),
  'last.seatLength': length('seat length', ({ last }) => last.seatLength),
  'last.tread': length('tread', ({ last }) => last.tread),
  'last.heelBack': length('heel of the foot behind the last', ({ last }) => last.heelBack),
  'last.camber': length('camber of the bottom', ({ last }) => last.camber),
  'last.ballWidth': length('ball width of the last', ({ last }) => last.ballWidth),
  'last.heelWidth': length('heel width of the last', ({ last }) => last.heelWidth),
  'last.innerBall': length('inner toe joint on the last', ({ last }) => last.innerBall),
  'last.outerBall': length('outer toe joint on the last', ({ last }) => last.outerBall),
  'last.inflare': length('inflare', ({ last }) => last.inflare),
  'last.insole': length('insole', ({ last }) => last.insole),
  'order.seatHeightNow': length('present height at the seat', ({ order }) => (order.kind === 'match' ? order.seatHeightNow : undefined)),
  'order.ballHeightNow': length('present height at the ball', ({ order }) => (order.kind === 'match' ? order.ballHeightNow : undefined)),
} as const satisfies Record<string, Input>;

export type InputField = keyof typeof INPUTS;
export const INPUT_FIELDS = Object.keys(INPUTS) as readonly InputField[];
export const inputOf = (field: InputField): Input => INPUTS[field];

/** Ball joints on the last are carried over from the foot. */
export const takenOnFoot = (field: InputField, { foot }: ShoeFitting): InputField =>
  foot && field === 'last.innerBall' ? 'foot.ballInner' : foot && field === 'last.outerBall' ? 'foot.ballOuter' : field;

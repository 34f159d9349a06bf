import { GRAVITY, type Mm } from '../geometry/units.ts';
import { contactAt, turnsBetween } from '../roll/rollBody.ts';
import { momentAbout } from '../walk/figures.ts';
import { frameAt, PERCENT_SHARES, type Frame, type WalkOn } from '../walk/frame.ts';
import { clamp } from '../geometry/solve.ts';

/**
 * A moment of the roll: where the floor pushes the sole, how hard square to it, the moment about the ball, N·mm, and the length along
 * the shoe over which foam and outsole spread it evenly to both sides, mm; a point where left out.
 * @property shears what of the force is a push, where it stands further back than the push it brings and is larger, to bring its
 *   moment: a core is sheared by the push alone
 */
export interface RollLoad { readonly at: Mm; readonly force: number; readonly moment: number; readonly over?: Mm; readonly shears?: number; readonly share?: number }

/** Moments about the tread line for each kg of body, N·m. Basis: common practice; measured people give 0.24 to 0.42 barefoot (Miyazaki and Yamamoto 1993). */
export const BENCH_MOMENT = 0.125, WALKING_MOMENT = 0.6;
/** What is usual of it, N·m for each kg. */
export const WALKING_RANGE = [0.25, 0.8] as const;
/** A stumble puts this many body weights on the tip, once. Common practice. */
export const STUMBLE_WEIGHTS = 1.2;
/** How far ahead of the tread line the load acts where no roll tells it. Common practice. */
const LEVER: Mm = 70;
/** The lever that is meant, or the plate's end where that is nearer. */
export const leverOn = ({ ball, to }: { readonly ball: Mm; readonly to: Mm }, meant: Mm = LEVER): Mm => clamp(meant, 0, to - ball);
/** A push nearer to the ball than this bends nothing. */
const NEAR: Mm = 5;

/** N·m for each kg, at a lever, as an upward force. */
export const loadAhead = (ball: Mm, lever: Mm, perKg: number, mass: number): RollLoad =>
  ({ at: ball + lever, force: (perKg * mass * 1000) / lever, moment: perKg * mass * 1000 });

/** How long along the shoe the floor's push is spread by foam and outsole. Common practice, about as thick as they are. */
export const SPREAD: Mm = 20;

/** A push and its moment about the ball, brought by the stretch of the plate that spreads it; near the end of the plate by its last stretch. */
function spreadPush({ ball, to }: Span, at: Mm, push: number, moment: number): RollLoad {
  const over = Math.min(SPREAD, 2 * (at - ball), to - ball), middle = Math.min(at, to - over / 2);
  return { at: middle, force: moment / (middle - ball), moment, over, shears: push };
}

/** Where the foot bears at the ball, and where the plate ends. */
type Span = { readonly ball: Mm; readonly to: Mm };

/** Walking where no roll tells it. @param perKg moment about the ball, N·m for each kg */
export function walkingAhead(plate: Span, lever: Mm, mass: number, perKg: number = WALKING_MOMENT): RollLoad {
  const moment = perKg * mass * 1000;
  return spreadPush(plate, plate.ball + lever, moment / lever, moment);
}

/** The push at the very tip. */
export function stumbleAt(ball: Mm, tip: Mm, mass: number, weights: number = STUMBLE_WEIGHTS): RollLoad {
  const push = weights * mass * GRAVITY;
  return spreadPush({ ball, to: tip }, tip, push, push * (tip - ball));
}

/**
 * The roll with its measured push: every percent of stance at which the floor pushes ahead of the ball, and those at which it
 * pushes under the waist. The moment is that of the upright push about the floor's side of the ball: about the plate itself an
 * upright push has a fifth less, but a walker's pushes forward as well, which no curve here tells and which adds nearly as much.
 * The force is the one square to the plate that gives the moment.
 * @param ball of the plate, where the foot bears; `heel` likewise
 */
export function rollLoads(on: WalkOn, mass: number, { ball, heel, to }: { readonly ball: Mm; readonly heel: Mm; readonly to: Mm }): { readonly ahead: readonly RollLoad[]; readonly waist: readonly RollLoad[] } {
  const all = PERCENT_SHARES.map((share) => loadIn(on, frameAt(on, share), mass, ball, to));
  return { ahead: all.filter(({ at, moment }) => at > ball + NEAR && moment > 0), waist: all.filter(({ at, force }) => at > heel + NEAR && at < ball - NEAR && force > 0) };
}

function loadIn(on: WalkOn, frame: Frame, mass: number, ball: Mm, to: Mm): RollLoad {
  const { from, to: most } = turnsBetween(on.body), [ballAlong] = on.carried.ball, weight = frame.push * mass * GRAVITY, { share } = frame;
  const at = Math.min(ball + contactAt(on.body, clamp(frame.roll, from, most))[0] - ballAlong, to), moment = 1000 * mass * momentAbout([ballAlong, 0], frame);
  if (at > ball + NEAR) return { ...spreadPush({ ball, to }, at, moment / (at - ball), moment), share };
  return { at, moment, force: weight, over: Math.min(SPREAD, 2 * Math.abs(at - ball)), share };
}

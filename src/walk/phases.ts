/** Part of stance at which the other foot lifts and lands again. Source: computed from open example gait data (one man, two steps). */
export const OTHER_LIFTS = 0.21, OTHER_LANDS = 0.785;

/** Part of a cycle for which a foot is on the floor: 60 to 62 % in textbooks (from memory). */
export const STANCE_PART = 0.62;

/** Share of stance that a video counts as its middle: the other foot passes. */
export const MID_STANCE = 0.5;
/** The heel leaves the floor of a walker with free ankles. Source: 54 to 57 % in published gait data (Winter). */
const HEEL_RISES = 0.55;

export type Phase = 'heel contact' | 'loading' | 'mid-stance' | 'heel rise' | 'push-off' | 'toe-off';

/** The moment that stands for each phase on a strip, as a share of stance. */
export const MOMENTS: readonly (readonly [Phase, number])[] = [
  ['heel contact', 0], ['loading', 0.1], ['mid-stance', MID_STANCE], ['heel rise', 0.65], ['push-off', 0.85], ['toe-off', 1],
];

/** The phase a share of stance lies in; heel contact and toe-off are its two ends. */
export function phaseAt(share: number): Phase {
  if (share <= 0) return 'heel contact';
  if (share >= 1) return 'toe-off';
  return share < OTHER_LIFTS ? 'loading' : share < HEEL_RISES ? 'mid-stance' : share < OTHER_LANDS ? 'heel rise' : 'push-off';
}

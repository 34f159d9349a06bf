import type { Rad } from '../geometry/units.ts';
import type { StanceCurve } from './stanceCurve.ts';

/** What joins the shank to the shoe. */
export type Ankle =
  /** Does not bend, but for what movement it has left about how it stands; lean is that of the shank when the shoe is at rest. */
  | { readonly kind: 'locked'; readonly lean: Rad; readonly range: Rad }
  | { readonly kind: 'free' };

/** The rule by which a shank rolls its shoe, in words. */
export function ruleWords(ankle: Ankle): string {
  if (ankle.kind === 'free') return 'free ankle, the shoe rolls as the foot turns against the floor';
  return ankle.range > 0
    ? 'part-locked ankle, the movement left takes up the turning of the shank first, half to each side of standing; the shoe rolls by the rest'
    : 'locked ankle, the shoe rolls by as much as the shank turns from how it stands';
}

/**
 * Roll angle of the shoe at each percent of stance, toe down positive. Locked: shank less its lean at rest, less what the
 * movement left takes up (common practice: half of it to each side, without play or spring). Free: the shank less
 * the bend of the ankle, which is how the foot turns against the floor.
 */
export function drivenRolls({ shank, ankle: bends }: StanceCurve, ankle: Ankle): readonly Rad[] {
  if (ankle.kind === 'free') return shank.map((angle, i) => angle - bends[i]!);
  const side = ankle.range / 2;
  return shank.map((angle) => { const turned = angle - ankle.lean; return turned - Math.min(side, Math.max(-side, turned)); });
}

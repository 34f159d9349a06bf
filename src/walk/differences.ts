import type { Mm } from '../geometry/units.ts';
import type { StepFigures } from './figures.ts';

/** How the left step differs from the right one: left less right; a pair that walks alike has nothing but noughts. */
export interface StepDifferences {
  /** Share of stance on the sole. */
  readonly carried: number;
  readonly pivotDrop: Mm;
  readonly hipContact: Mm;
  readonly hipHighest: Mm;
  readonly rolled: Mm;
  readonly hipForward: Mm;
  /** How much higher the hip stands on the foot that leaves than on the one that lands: the body steps down by that, up where negative. */
  readonly downToRight: Mm;
  readonly downToLeft: Mm;
}

export function differencesOf([left, right]: readonly StepFigures[]): StepDifferences | undefined {
  if (!left || !right) return undefined;
  const less = (of: (step: StepFigures) => number): number => of(left) - of(right);
  return {
    carried: less(({ carried }) => carried), pivotDrop: less(({ pivotDrop }) => pivotDrop), hipContact: less(({ hip }) => hip.contact), hipHighest: less(({ hip }) => hip.highest.value),
    rolled: less(({ rolled }) => rolled), hipForward: less(({ hipForward }) => hipForward), downToRight: left.hip.end - right.hip.contact, downToLeft: right.hip.end - left.hip.contact,
  };
}

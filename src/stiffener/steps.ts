import { onceEach } from '../geometry/lately.ts';
import type { Mm } from '../geometry/units.ts';
import type { Plate, Stiffener } from './stiffener.ts';

/** How the edges of the layers of a pack step in, so that no two end at one line. */

/** Plies that step in by more than this share of the narrowest place, in all, are no plate any more. Common practice. */
const STEPPED_MOST = 0.4;

/**
 * How many steps each layer is set in: none the outermost on the foot's side, one that on the floor's side, the middle of the
 * stack most, and strips after all that run through. No two are alike, and the outer plies, which bear most, keep their width.
 */
export function levelsOf(strips: readonly boolean[]): number[] {
  const through = strips.filter((strip) => !strip).length;
  return strips.map((strip, i) => {
    const before = strips.slice(0, i).filter((one) => one === strip).length, back = through - 1 - before;
    return strip ? through + before : before <= back ? 2 * before : 2 * back + 1;
  });
}

/** The widest stagger the plate takes, mm, down to a tenth. */
export function mostStagger(plate: Plate, layers: number): Mm {
  return layers < 2 ? Infinity : Math.floor((STEPPED_MOST * narrowest(plate) * 10) / (2 * (layers - 1))) / 10;
}

/** Between the heel's middle and the ball, where it is narrowest short of its ends. */
const narrowest = onceEach(({ heel, ball, width }: Plate): Mm => Math.min(...Array.from({ length: 41 }, (_, i) => width(heel + ((ball - heel) * i) / 40))));

/** How far each layer is set in beyond the plate's own edge: plies above from the foot down, the core unless it is the foam body, plies below. */
export function stepsOf({ below, above, core }: Stiffener, plate: Plate, foam: boolean): { readonly above: readonly Mm[]; readonly core?: Mm; readonly below: readonly Mm[] } {
  const strips = [...above.map(({ over }) => over !== undefined).reverse(), ...(core && !foam ? [false] : []), ...below.map(({ over }) => over !== undefined).reverse()];
  const stagger = Math.min(plate.stagger ?? 0, mostStagger(plate, strips.length)), steps = levelsOf(strips).map((level) => level * stagger), under = strips.length - below.length;
  return { above: steps.slice(0, above.length), ...(core && !foam ? { core: steps[above.length]! } : {}), below: steps.slice(under) };
}

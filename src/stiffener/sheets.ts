import type { Mm } from '../geometry/units.ts';
import type { CoreMaterial } from '../materials/stiffeners.ts';
import type { Sheets } from './stiffener.ts';

/** How a core is put together so that it can be bent onto the last. */

type Bends = Pick<CoreMaterial, 'bends'>;

/** More sheets than this nobody glues up in one press. Common practice. */
const SHEETS_MOST = 6;
/** Rounding of the arithmetic itself. */
const SAME: Mm = 1e-6;

/** The thickest sheet that can be bent to a radius: its faces are strained by half its thickness over it. */
export const thickestBent = ({ bends: { strain } }: Bends, radius: Mm): Mm => (strain === undefined ? Infinity : 2 * strain * radius);

const thin = (core: Bends, radius: Mm): readonly Mm[] => core.bends.sold.filter((sheet) => sheet <= thickestBent(core, radius) + SAME);

/**
 * Sheets of one thickness that make up a core; as few as may be, and as they are sold where they come to it so.
 * @returns undefined where no sheet sold is thin enough
 */
export function sheetsFor(core: Bends, thickness: Mm, radius: Mm): Sheets | undefined {
  const usable = thin(core, radius), thickest = Math.max(...usable, core.bends.strain === undefined ? thickness : 0);
  if (thickest <= 0) return undefined;
  const sold = usable.flatMap((sheet) => { const count = Math.round(thickness / sheet); return Math.abs(count * sheet - thickness) < SAME ? [{ count, thickness: sheet }] : []; });
  const few = Math.ceil(thickness / thickest - SAME);
  return sold.reduce<Sheets | undefined>((best, one) => (best && best.count <= one.count ? best : one), undefined) ?? { count: few, thickness: thickness / few };
}

/** Thicknesses a core can be had in on a last, up to `most`: sheets of the thickest that still bends, no more than a press takes. */
export function coreThicknesses(core: Bends, radius: Mm, wanted: readonly Mm[]): readonly Mm[] {
  const thickest = Math.max(0, ...thin(core, radius)), most = Math.max(...wanted);
  if (thickest === 0) return [];
  const whole = wanted.filter((thickness) => { const sheets = sheetsFor(core, thickness, radius); return sheets !== undefined && sheets.count <= SHEETS_MOST && core.bends.sold.some((sold) => Math.abs(sold - sheets.thickness) < SAME); });
  const stacked = Array.from({ length: SHEETS_MOST }, (_, i) => (i + 1) * thickest).filter((thickness) => thickness >= Math.min(...wanted) - SAME && thickness <= most + SAME);
  return [...new Set([...whole, ...(core.bends.strain === undefined ? [] : stacked)].map((thickness) => Number(thickness.toFixed(6))))].sort((a, b) => a - b);
}

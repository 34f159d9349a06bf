import { see, type Pace } from '../../src/checks/seen.ts';
import { stiffener as checked } from '../../src/checks/stiffener.ts';
import type { Finding } from '../../src/checks/finding.ts';
import { designWith } from '../../src/designWith.ts';
import type { Fitting } from '../../src/fitting/fitting.ts';
import type { RockerShoe } from '../../src/pair/shoe.ts';
import { isRockerFitting } from '../../src/profile/fromFitting.ts';
import { packFor, type Pack } from '../../src/stiffener/pack.ts';
import { changed, fittingOf, lockedSheet, type Json } from '../fitting/sheets.ts';

/* What a sheet says of a stiffener, worked out under a shoe that is solved once: packs differ, the sole over them need not. */

export const sheetWith = (stiffener: unknown, more: Json = {}): Json => changed(lockedSheet(), { 'left.order.stiffener': stiffener, ...more });

/** @property findings all that is said of the stiffener; careful with the advice that must be solved before it is given */
export interface OnSheet { readonly pack: Pack; readonly findings: (pace?: Pace) => readonly Finding[] }

/** The pack that a stiffener on the sheet gets, and what is told of it. @throws Error where the sheet, the shoe or the pack is none */
export function packOnSheet(stiffener: unknown, more: Json = {}): OnSheet {
  const { shoe, fitting } = onSheet(stiffener, more), pack = packFor(shoe, fitting);
  if (!pack) throw new Error('no pack');
  return { pack, findings: (pace = 'quick') => checked(see(shoe, fitting, pace)) };
}

/** What is told of a stiffener, be it a thickness alone or none. @throws Error where the sheet or the shoe is none */
export function findingsOnSheet(stiffener: unknown, more: Json = {}): readonly Finding[] {
  const { shoe, fitting } = onSheet(stiffener, more);
  return checked(see(shoe, fitting, 'quick'));
}

function onSheet(stiffener: unknown, more: Json): { readonly shoe: RockerShoe; readonly fitting: Fitting } {
  const fitting = fittingOf(sheetWith(stiffener, more)), own = fitting.shoes.left;
  if (!own || !isRockerFitting(own)) throw new Error('no rocker');
  return { shoe: { ...soleFor(typeof stiffener === 'number' ? stiffener : undefined, more), fitting: own }, fitting };
}

const soles = new Map<string, RockerShoe>();

/** The shoe over a stiffener of a thickness, or over the one that is usual. */
function soleFor(thickness: number | undefined, more: Json): RockerShoe {
  const key = JSON.stringify([thickness, more]), known = soles.get(key) ?? solved(fittingOf(sheetWith(thickness, more)));
  soles.set(key, known);
  return known;
}

function solved(fitting: Fitting): RockerShoe {
  const designing = designWith(() => [], fitting, 'quick');
  if (!designing.ok) throw new Error(designing.troubles.map(({ text }) => text).join(' '));
  const [shoe] = designing.design.shoes;
  if (shoe?.kind !== 'rocker') throw new Error('no rocker');
  return shoe;
}

import { SIDES, type Side } from '../../src/fitting/words.ts';
import type { Solution } from '../../src/targets/seek.ts';
import { withTaken } from '../../src/targets/taken.ts';
import { sheetText, type Sheet } from './sheet.ts';

/** What was taken for each shoe, by the name it has on the page. */
export type TakenNames = Readonly<Partial<Record<Side, string>>>;
type Taking = Readonly<Partial<Record<Side, { readonly name: string; readonly values: Solution['values'] }>>>;

/** Answers to one sheet, and which of them other sheets have on them. */
export interface Takings {
  /** What of the answers stands on a sheet; undefined where it is not the sheet they were sought for with nothing but answers put in. */
  readonly on: (sheet: Sheet) => TakenNames | undefined;
  /** The sheet they were sought for with an answer put in, beside what the other shoe has taken. @param sheet one that `on` knows */
  readonly take: (sheet: Sheet, side: Side, name: string, solution: Pick<Solution, 'values'>) => Sheet;
}

/**
 * An answer holds for the sheet it was sought for. One taken in place of another goes on that sheet, not on top of the other; so a
 * maker may try one after the other, and undo, and they hold all the while. Pure.
 */
export function takingsOn(asked: Sheet): Takings {
  const known = new Map<string, Taking>([[sheetText(asked), {}]]);
  const takingOf = (sheet: Sheet): Taking | undefined => known.get(sheetText(sheet));
  return {
    on: (sheet) => { const taking = takingOf(sheet); return taking && { ...named(taking, 'left'), ...named(taking, 'right') }; },
    take: (sheet, side, name, { values }) => {
      const taking: Taking = { ...takingOf(sheet), [side]: { name, values } };
      const made = SIDES.reduce<unknown>((now, one) => { const own = taking[one]; return own ? withTaken(now, one, own) : now; }, asked) as Sheet;
      known.set(sheetText(made), taking);
      return made;
    },
  };
}

const named = (taking: Taking, side: Side): TakenNames => { const own = taking[side]; return own ? { [side]: own.name } : {}; };

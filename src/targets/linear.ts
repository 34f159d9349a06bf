import { solve, type Constraint } from 'yalps';
import { type SearchPoint, type Task } from './task.ts';

/** The figures about a point as plain slopes: what each is there, and what a step along each axis adds. */
export interface Slopes { readonly at: SearchPoint; readonly figures: Readonly<Record<string, { readonly value: number; readonly slopes: readonly number[] }>> }

/** How far from a point is looked, along each axis. */
export type Window = readonly { readonly from: number; readonly to: number }[];

/**
 * The best point of a window if every figure were as straight as its slopes: a linear programme. A limit may be passed at
 * a high price, so there is always an answer; a loss counts only past where it begins.
 * @param slopes those about the point, then those of other pieces, which figures that are the greatest of several never fall below
 * @param price of a limit that is passed
 * @param whole whether only whole steps are looked at, from a whole one on
 */
export function linearBest(task: Task, slopes: readonly Slopes[], window: Window, price: number, whole = false): SearchPoint {
  const rows = new Map<string, Constraint>(), columns = new Map<string, Map<string, number>>();
  const put = (column: string, row: string, by: number): void => { columns.set(column, (columns.get(column) ?? new Map<string, number>()).set(row, by)); };
  window.forEach(({ from, to }, i) => {
    const { ordered, dear } = task.axes[i]!;
    put(`x${i}`, `room${i}`, 1); rows.set(`room${i}`, { max: to - from });
    put(`x${i}`, `more${i}`, 1); put(`by${i}`, `more${i}`, -1); rows.set(`more${i}`, { max: ordered - from });
    put(`x${i}`, `less${i}`, -1); put(`by${i}`, `less${i}`, -1); rows.set(`less${i}`, { max: from - ordered });
    put(`by${i}`, COST, dear);
  });
  const sloped = (name: string, of: string, sign: 1 | -1, least: number): void => {
    slopes.forEach(({ at, figures }, k) => {
      if (k > 0 && !(sign > 0 && task.greatestOf.has(of))) return;
      const { value, slopes: along } = figures[of]!, row = `${name}.${k}`, here = value + along.reduce((sum, slope, i) => sum + slope * (window[i]!.from - at[i]!), 0);
      along.forEach((slope, i) => put(`x${i}`, row, sign * slope));
      put(name, row, -1);
      rows.set(row, { max: sign * (least - here) });
    });
  };
  task.terms.forEach(({ of, sign, past, weight }, i) => { sloped(`lost${i}`, of, sign, past); put(`lost${i}`, COST, weight); });
  task.bounds.forEach(({ of, sign, limit, scale }, i) => { sloped(`past${i}`, of, sign, limit); put(`past${i}`, COST, price / scale); });
  const { variables } = solve({ direction: 'minimize', objective: COST, constraints: rows, variables: columns, integers: whole ? window.map((_, i) => `x${i}`) : false }, { maxIterations: MOST_TURNS });
  const found = new Map(variables);
  return window.map(({ from }, i) => from + (found.get(`x${i}`) ?? 0));
}

const COST = 'cost';
/** Looked at in whole steps, a window has few: more turns than this are never worth their time. */
const MOST_TURNS = 400;

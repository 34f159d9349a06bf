import { readFileSync } from 'node:fs';
import type { Side } from '../../src/fitting/words.ts';
import { finished } from '../../src/geometry/finished.ts';
import { seek, type Answer, type Solution } from '../../src/targets/seek.ts';
import { changed, fittingOf, type Json } from '../fitting/sheets.ts';

/** A sample's sheet with targets put on its rocker, and whatever else is changed. */
export const sampleWith = (name: string, side: Side, targets: Json, changes: Json = {}): Json =>
  changed(JSON.parse(readFileSync(`samples/${name}/sheet.json`, 'utf8')) as Json, { [`${side}.order.targets`]: targets, making: undefined, ...(name === 'market-gardener' ? THIN : {}), ...changes });
/** The limits of the tests were chosen for her shoe as it is with a thin plate. */
const THIN: Json = { 'right.order.stiffener': 1.5, 'right.order.minima': { tip: 6 } };

export const answerTo = (sheet: Json, side: Side): Answer => finished(seek(fittingOf(sheet), side))!;

export function solved(answer: Answer): Solution {
  if (!answer.ok) throw new Error(`no shoe within the limits: ${JSON.stringify(answer.blame)}`);
  return answer.best;
}

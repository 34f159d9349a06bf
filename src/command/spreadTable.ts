import type { Design } from '../checks/design.ts';
import { rounded } from '../checks/say.ts';
import { linearSpread, type ShoeSpread } from '../spread/linear.ts';
import { sampledSpread, type ShoeSample } from '../spread/sampled.ts';
import { USUAL_SAMPLING, type Sampling } from '../spread/sampling.ts';
import { agreementWords, againWords, counted, effectWords, inUnit, measureWords, percent, sureness, tellingOf } from '../spread/words.ts';
import { leftOf, table, wrapped } from './textTable.ts';

/** Which measures decide the shoes, and how far the results spread, as text no wider than the screen. */
export function spreadTable(design: Design, columns: number, sampling: Sampling = USUAL_SAMPLING): string {
  const spreads = linearSpread(design), samples = sampledSpread(design, sampling);
  const lines = spreads.flatMap((spread, i) => [...ofShoe(design, spread, columns), '', ...resultsOf(samples[i]!), ...wrapped(agreementWords(spread, samples[i]!, sampling.samples), columns), '']);
  return [...wrapped(about(sampling), columns), '', ...lines].map((line) => `${line}\n`).join('');
}

const about = ({ samples }: Sampling): string => `How sure the shoes are. ± is one standard deviation: two readings of three lie within it, by how the measure was taken or as typed on the sheet. The results come from ${counted(samples)} variants of each rocker with all its measures off at once; nine in ten lie between low and high.`;

const MEASURE = 38, STANDS = 23, SHARE = 9;

function ofShoe(design: Design, spread: ShoeSpread, columns: number): string[] {
  const again = againWords(design.fitting, spread), { named, rest } = tellingOf(spread), rows = named.map((one) => [measureWords(one, spread), sureness(one), effectWords(one, spread), percent(one.share)]);
  const heads = [
    { head: 'measure', most: MEASURE }, { head: 'stands at', most: STANDS },
    { head: 'what more of it does', most: Math.max(20, leftOf(columns, [MEASURE, STANDS, SHARE])) }, { head: 'decides', most: SHARE },
  ];
  return [`${spread.side} shoe (${spread.kind})`, ...(again === undefined ? ['Nothing about it is unsure.'] : wrapped(again, columns)), '', ...table(heads, rows).filter((line) => line !== ''), ...(rest ? [rest] : [])];
}

function resultsOf({ results }: ShoeSample): string[] {
  const rows = results.map(({ label, unit, value, low, middle, high }) => [label, inUnit(value, unit), ...[low, middle, high].map((one) => rounded(one, 1))]);
  const heads = [{ head: 'result', most: 32 }, { head: 'as made', most: 10 }, { head: 'low', most: 8 }, { head: 'middle', most: 8 }, { head: 'high', most: 8 }];
  return table(heads, rows).filter((line) => line !== '');
}

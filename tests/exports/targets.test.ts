import { expect, test } from 'vitest';
import { design } from '../../src/design.ts';
import { designJson } from '../../src/exports/designJson.ts';
import { filesFor } from '../../src/exports/fileSet.ts';
import type { Fitting } from '../../src/fitting/fitting.ts';
import { madeFor } from '../../src/making/made.ts';
import { targetsOn } from '../../src/targets/shoeTargets.ts';
import { changed, fittingOf, lockedSheet, type Json } from '../fitting/sheets.ts';
import { readPdf } from './pdfReader.ts';

const plain = changed(lockedSheet(), { 'left.order.apex': 65, 'making.chordGap': 0.5 });
const designOf = (fitting: Fitting) => {
  const designing = design(fitting);
  if (!designing.ok) throw new Error('no shape');
  return designing.design;
};
const shoeIn = (json: string): { readonly targets?: Json } => (JSON.parse(json) as { shoes: [{ targets?: Json }] }).shoes[0];

test('targets add a drawing, numbers and a section of the all-figures paper, and change nothing of what is made', () => {
  const fitting = fittingOf(changed(plain, { 'left.order.targets': { seatHeightAtMost: 29, free: ['apex'] } })), bare = designOf(fittingOf(plain));
  const files = new Map(filesFor(designOf(fitting)).map(({ name, bytes }) => [name, bytes])), text = (name: string): string => new TextDecoder().decode(files.get(name));
  const [found] = targetsOn(fitting), { answer, curve } = found!, { targets, ...shoe } = shoeIn(text('T-1_design.json'));
  if (!answer.ok) throw new Error('there should be an answer');
  expect(targets).toMatchObject({ side: 'left', withinLimits: true, values: [{ path: 'order.apex', value: answer.best.values[0]!.value }], curve: { over: 'seatHeightAtMost' } });
  expect((targets!['curve'] as { points: readonly object[] }).points).toHaveLength(curve.points.length);
  expect(shoe).toEqual(shoeIn(designJson(bare, madeFor(bare, undefined))));
  expect(text('T-1_left_trade-off.svg')).toContain('what height buys');
  const paper = readPdf(files.get('T-1_all-figures.pdf')!).flatMap(({ words }) => words).join(' ');
  for (const said of ['Within limits', 'Seat height at most', 'is an offer', 'of toe-off']) expect(paper).toContain(said);
});

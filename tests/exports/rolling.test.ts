import { describe, expect, test } from 'vitest';
import { balanceCaution } from '../../src/checks/cautions.ts';
import type { Design } from '../../src/checks/design.ts';
import { boxOf, grown, overlap, type Drawing, type Words } from '../../src/exports/drawing.ts';
import { designJson } from '../../src/exports/designJson.ts';
import { rollFiles } from '../../src/exports/rollFiles.ts';
import { rollStrip } from '../../src/exports/rollStrip.ts';
import { pointOn } from '../../src/geometry/path.ts';
import { degrees, inDegrees } from '../../src/geometry/units.ts';
import { madeFor } from '../../src/making/made.ts';
import { walkingOf } from '../../src/walk/walking.ts';
import { frameAt } from '../../src/walk/frame.ts';
import { designOf, job, JOBS, rocker } from './jobs.ts';
import { readPdf } from './pdfReader.ts';

const A4 = { width: 297, height: 203 }, A3 = { width: 420, height: 297 };
const textsOf = ({ marks }: Drawing): Words[] => marks.filter((mark) => mark.kind === 'text');
const said = (drawing: Drawing): string => textsOf(drawing).map(({ text }) => text).join(' ');

describe.each(Object.entries(JOBS))('the strip of %s', (_, fitting) => {
  const design = designOf(fitting);
  test.each([['A4', A4], ['A3', A3]] as const)('on %s lies inside its frame, no words on words', (_, paper) => {
    const drawing = rollStrip(design, paper), texts = textsOf(drawing).map((text) => [text.text, grown(boxOf(text), -0.35)] as const);
    for (const mark of drawing.marks) for (const piece of mark.kind === 'text' ? [] : mark.path) for (const t of [0, 0.5, 1]) {
      const [x, y] = pointOn(piece, t);
      expect(x > 7.9 && x < paper.width - 7.9 && y > 7.9 && y < paper.height - 7.9, `${x} ${y}`).toBe(true);
    }
    const clashes = texts.flatMap(([text, box], i) => texts.slice(i + 1).filter(([, other]) => overlap(box, other)).map(([other]) => `${text} / ${other}`));
    expect(clashes).toEqual([]);
  });
});

describe('what a strip tells', () => {
  const design = designOf(JOBS.pair), words = said(rollStrip(design, A3));
  test('six moments of each shoe, with the roll of the moment', () => {
    for (const { own } of walkingOf(design).shoes) for (const share of [0, 0.1, 0.5, 0.65, 0.85, 1])
      expect(words).toContain(`roll ${inDegrees(frameAt(own, share).roll).toFixed(1)}°`);
    expect(words.match(/heel contact, 0 %/g)).toHaveLength(2);
  });
  test('whose walk it is, with its credit', () => {
    expect(words).toMatch(/BMClab data, M\. Duarte and R\. N\. Watanabe, UFABC, CC BY 4\.0/);
    expect(words).toContain('est.');
  });
  test('what rolling does to balance, once, and louder where a risk was ticked', () => {
    const caution = ({ fitting }: Design): string => balanceCaution(fitting.wearer.risks).text, unsteady = designOf(JOBS.turned);
    expect(words.split('Rolling soles can make standing less steady').length).toBe(2);
    expect(caution(unsteady)).toMatch(/^Danger of falling/);
    const size = (of: Design): number => textsOf(rollStrip(of, A3)).find(({ text }) => caution(of).startsWith(text.slice(0, 20)))!.size;
    expect(size(unsteady)).toBeGreaterThan(size(design));
  });
  test('is one page of paper, the same bytes each time', () => {
    const [svg, pdf] = rollFiles(design), again = rollFiles(design);
    expect([svg!.name, pdf!.name]).toEqual(['K-204_rolling.svg', 'K-204_rolling.pdf']);
    expect(again[1]!.bytes).toEqual(pdf!.bytes);
    const pages = readPdf(pdf!.bytes);
    expect(pages).toHaveLength(1);
    expect(pages[0]!.words.join(' ')).toContain('toe-off, 100 %');
  });
});

test('the numbers tell each step: curve, figures and every fifth percent', () => {
  const design = designOf(JOBS.pair), { shoes, walk } = JSON.parse(designJson(design, madeFor(design, undefined))) as { shoes: { walk: { curve: { source: string; estimated: boolean }; stance: { percent: number }[]; figures: { key: string }[]; ordinary?: unknown } }[]; walk: { leftLessRight: Record<string, number> } };
  expect(shoes.map(({ walk: { curve, stance } }) => [curve.source, curve.estimated, stance.length])).toEqual([['mean', true, 21], ['mean', true, 21]]);
  expect(shoes.map(({ walk: { ordinary } }) => ordinary !== undefined)).toEqual([true, false]);
  expect(Object.keys(walk.leftLessRight)).toContain('hipHighestMm');
});

describe('a walk that was seen', () => {
  const measured = (value: number) => ({ value: degrees(value), origin: 'measured' } as const);
  const walked = (contact: number, toeOff: number) => designOf(job('K-9', { left: rocker('left', {}, {}, { walk: { kind: 'angles', contact: measured(contact), midStance: measured(8), toeOff: measured(toeOff) } }) }));
  const found = ({ findings }: Design) => findings.find(({ code }) => code === 'WALK_CARRIED');
  test('that the sole carries too little of is told, with where it stands on a corner', () => {
    expect(found(walked(-40, 70))).toMatchObject({ severity: 'note', unit: '%', limit: 80, text: expect.stringMatching(/carries \d+ % of stance\. Until \d+ % it stands on the back edge.*From \d+ % it stands on the tip/) as string });
  });
  test('and not where it carries most of it, nor where nobody looked', () => {
    expect(found(walked(-15, 38))).toBeUndefined();
    expect(found(designOf(JOBS.pair))).toBeUndefined();
  });
});

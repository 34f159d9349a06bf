import { describe, expect, test } from 'vitest';
import { figuresOf } from '../../src/checks/figures.ts';
import { rounded } from '../../src/checks/say.ts';
import { boxOf, overlap, type Box, type Drawing, type Mark, type Words } from '../../src/exports/drawing.ts';
import { planDrawing } from '../../src/exports/planDrawing.ts';
import { sideDrawing } from '../../src/exports/sideDrawing.ts';
import { svgText } from '../../src/exports/svg.ts';
import { lengthOf, pointOn, type PathArc } from '../../src/geometry/path.ts';
import { distance } from '../../src/geometry/point.ts';
import type { RockerShoe } from '../../src/pair/shoe.ts';
import { ALL_JOBS, designOf, JOBS, SAMPLES } from './jobs.ts'; //X

const A4 = { width: 297, height: 200 }, A3 = { width: 420, height: 215 }, PORTRAIT = { width: 210, height: 287 };
const DESIGNS = Object.entries(ALL_JOBS).map(([name, fitting]) => ({ name, design: designOf(fitting) }));
const DRAWINGS = DESIGNS.flatMap(({ name, design }) => [
  { name: `${name}, side on A4`, drawing: sideDrawing(design, A4) }, { name: `${name}, side on A3`, drawing: sideDrawing(design, A3) },
  { name: `${name}, from above`, drawing: planDrawing(design, PORTRAIT) },
]);

const lettering = ({ marks }: Drawing): Words[] => marks.filter((mark) => mark.kind === 'text');
const texts = (drawing: Drawing): string[] => lettering(drawing).map(({ text }) => text);
/** The number behind "1 : " in the title block. */
const scaleOf = (drawing: Drawing): number => Number(texts(drawing).find((text) => text.startsWith('1 : '))!.slice(4));
const side = (name: keyof typeof JOBS, paper = A4): Drawing => sideDrawing(designOf(JOBS[name]), paper);
const arcsOf = ({ marks }: Drawing): PathArc[] => marks.flatMap((mark) => mark.kind === 'line' && mark.line === 'visible' ? mark.path.filter((piece) => piece.kind === 'arc') : []);
const lines = ({ marks }: Drawing): [number, number][] => marks.flatMap((mark) => mark.kind === 'line' ? mark.path.filter((piece) => piece.kind === 'line').map((piece): [number, number] => [lengthOf(piece), Math.abs(piece.to[0] - piece.from[0])]) : []);

/** Pairs of labels whose boxes overlap, in words. */
function crossing(drawing: Drawing): string[] {
  const labels = lettering(drawing);
  return labels.flatMap((a, i) => labels.slice(i + 1).filter((b) => overlap(boxOf(a), boxOf(b))).map((b) => `${a.text} | ${b.text}`));
}

describe('labels', () => {
  test.each(DRAWINGS)('none covers another: $name', ({ drawing }) => expect(crossing(drawing)).toEqual([]));

  test('the check above can fail', () => {
    const drawing = side('pair'), moved = lettering(drawing)[3]!;
    expect(crossing({ ...drawing, marks: [...drawing.marks, { ...moved, at: [moved.at[0] + 1, moved.at[1]] }] })).not.toEqual([]);
  });

  test.each(DRAWINGS)('all stand on the paper: $name', ({ drawing }) => {
    for (const label of lettering(drawing)) {
      const { left, top, right, bottom }: Box = boxOf(label);
      expect([label.text, left > 0 && top > 0 && right < drawing.paper.width && bottom < drawing.paper.height]).toEqual([label.text, true]);
    }
  });
});

/** Points along the thick outlines of the soles, a tenth of a millimetre apart at most. */
const outlinePoints = ({ marks }: Drawing): (readonly [number, number])[] => marks.flatMap((mark) => mark.kind === 'line' && mark.line === 'visible' && mark.path.some(({ kind }) => kind === 'arc')
  ? mark.path.flatMap((piece) => { const steps = Math.max(1, Math.ceil(lengthOf(piece) * 10)); return Array.from({ length: steps + 1 }, (_, i) => pointOn(piece, i / steps)); }) : []);
/** Lettering whose patch, a little larger than its letters, covers a piece of an outline. */
const blotting = (drawing: Drawing): string[] => {
  const points = outlinePoints(drawing);
  return lettering(drawing).filter((label) => {
    const { left, right, top, bottom } = boxOf(label);
    return points.some(([x, y]) => x > left - 0.3 && x < right + 0.3 && y > top - 0.3 && y < bottom + 0.3);
  }).map(({ text }) => text);
};

describe('the patch behind a label', () => {
  test.each(DRAWINGS.filter(({ name }) => name.includes('side on')))('blots out no piece of a sole: $name', ({ drawing }) => {
    expect(outlinePoints(drawing).length).toBeGreaterThan(500);
    expect(blotting(drawing)).toEqual([]);
  });
  test('the check above can fail', () => {
    const drawing = side('pair'), [at] = outlinePoints(drawing);
    expect(blotting({ ...drawing, marks: [...drawing.marks, { ...lettering(drawing)[0]!, at: at! }] })).toHaveLength(1);
  });
});

describe('the side drawing', () => {
  test.each(DESIGNS.flatMap(({ name, design }) => [{ name, design, paper: A4 }, { name, design, paper: A3 }]))('$name on $paper.width mm: true arcs in scale, one ground line', ({ design, paper }) => {
    const drawing = sideDrawing(design, paper), by = scaleOf(drawing), radii = arcsOf(drawing).map(({ radius }) => radius * by);
    for (const shoe of design.shoes.filter((one): one is RockerShoe => one.kind === 'rocker')) {
      for (const radius of [shoe.rocker.mid.radius, shoe.rocker.toeArc.radius]) expect(Math.min(...radii.map((drawn) => Math.abs(drawn - radius)))).toBeLessThan(1e-9);
    }
    const grounds = drawing.marks.filter((mark) => mark.kind === 'line' && mark.line === 'visible' && mark.path.length === 1);
    expect(grounds).toHaveLength(1);
  });

  test('the largest scale that fits is taken', () => {
    expect([scaleOf(side('pair', A3)), scaleOf(side('pair', A4)), scaleOf(side('alone', A4)), scaleOf(side('alone', { width: 420, height: 297 }))]).toEqual([2, 2.5, 2, 1]);
    expect(scaleOf(sideDrawing(designOf(JOBS.pair), { width: 800, height: 400 }))).toBe(1);
  });

  test('the length of the last measures what it says', () => {
    const drawing = side('pair'), wanted = 282 / scaleOf(drawing);
    expect(lines(drawing).filter(([length, level]) => Math.abs(length - wanted) < 1e-9 && Math.abs(level - wanted) < 1e-9).length).toBeGreaterThanOrEqual(2);
  });

  test.each(DESIGNS)('$name: every number is a figure, and says when it was estimated', ({ design }) => {
    const drawn = texts(sideDrawing(design, A4));
    for (const shoe of design.shoes) {
      const figures = new Map(figuresOf(shoe, design.fitting).map((figure) => [figure.key, figure]));
      const word = shoe.kind === 'rocker'
        ? { radiusMid: 'R # mid arc', radiusToe: 'R # toe arc', seatHeight: 'height at seat #', ballHeight: 'height at tread #', toeSpringOfShoe: 'toe spring #', thicknessBack: '# thick, back', thicknessPivot: '# thick, pivot', thicknessSeatEnd: '# thick, seat end', thicknessApex: '# thick, apex', thicknessTread: '# thick, tread', thicknessTip: '# thick, tip', pivotHeight: 'ankle pivot # up, centre of the heel arc', hipHeight: 'hip # up', pivotX: 'pivot #', standingPoint: 'standing point #', standsSeat: 'foot stands # high', standsBall: 'foot stands # high' } as const
        : shoe.made ? { raiseSeat: 'raise at seat #', raiseBall: 'raise at tread #', toeSpringOfShoe: 'toe spring #', thicknessTip: '# thick, tip', standsSeat: 'foot stands # high' } as const : { standsSeat: 'foot stands # high' } as const;
      for (const [key, text] of Object.entries(word)) {
        const { value, digits, estimated } = figures.get(key as keyof typeof word)!;
        expect(drawn).toContain(text.replace('#', `${rounded(value, digits)}${estimated ? ' est.' : ''}`));
      }
    }
  });

  test('an apex is given in mm and as a share, and says from where', () => expect(texts(side('pair'))).toContain('apex 183.3 (65.0 % from the heel)'));

  test('each centre is on the sheet, or the sheet says where it is', () => {
    for (const [paper, off] of [[A4, true], [{ width: 1600, height: 1500 }, false]] as const) {
      const design = designOf(JOBS.pair), drawing = sideDrawing(design, paper), { mid, toeArc } = (design.shoes[0] as RockerShoe).rocker;
      const said = texts(drawing).filter((text) => text.startsWith('centre of the mid arc')).map((text) => text.replace(' est.', ''));
      expect(said).toEqual(off
        ? [`centre of the mid arc, rear half, off the sheet: x ${mid.rearX.toFixed(1)}, z ${mid.radius.toFixed(1)}`, `centre of the mid arc, front half, off the sheet: x ${mid.frontX.toFixed(1)}, z ${mid.radius.toFixed(1)}`]
        : ['centre of the mid arc', 'centre of the mid arc']);
      const toe = texts(drawing).filter((text) => text.startsWith('centre of the toe arc')).map((text) => text.replace(' est.', ''));
      expect([['centre of the toe arc'], [`centre of the toe arc off the sheet: x ${toeArc.centre[0].toFixed(1)}, z ${toeArc.centre[1].toFixed(1)}`]]).toContainEqual(toe);
    }
  });

  test('the measures behind the mark "est." are named on the sheet', () => {
    for (const drawing of [side('pair'), planDrawing(designOf(JOBS.pair), PORTRAIT)]) {
      const all = texts(drawing).join(' ');
      expect(all).toContain('Estimated or left to a default, left: tilt at heel strike');
      expect(all).toContain('is marked "est."');
    }
    expect(texts(side('alone')).join(' ')).toContain('Estimated');
  });

  test('a word is said of one thing only: the foot stands high, the standing point lies ahead', () => {
    for (const text of texts(side('pair')).filter((one) => /stand/.test(one) && !/ are? to stand /.test(one))) expect(text).toMatch(/^foot stands [\d.]+ (est\. )?high$|^standing point [\d.]+$/);
  });

  test('radius leaders end on the arc they measure and point away from its centre', () => {
    const drawing = side('rockers'), by = scaleOf(drawing), arcs = arcsOf(drawing);
    const heads = drawing.marks.filter((mark): mark is Extract<Mark, { kind: 'fill' }> => mark.kind === 'fill' && mark.colour === 'computed').map(({ path }) => pointOn(path[0]!, 0));
    expect(heads).toHaveLength(6);
    for (const tip of heads) expect(Math.min(...arcs.map(({ centre, radius }) => Math.abs(distance(centre, tip) - radius)))).toBeLessThan(1e-6 / by);
  });

  test('a stop taken on a name stands on the sheet', () =>
    expect(texts(side('alone')).join(' ')).toContain('STOP taken by Dr A. Example: wound closed since 2025-02-20'));

  test('the title block says job, scale, date, unit and sheet', () => {
    const drawing = sideDrawing(designOf(JOBS.pair), A4, { n: 1, of: 8 });
    for (const text of ['K-204', 'Left and right shoes, side view', '1 : 2.5', '2025-03-01', 'mm', '1 of 8']) expect(texts(drawing)).toContain(text);
  });
});

describe('check lines', () => {
  test.each(DRAWINGS)('100 mm on paper both ways: $name', ({ drawing }) => {
    const hundred = lines(drawing).filter(([length]) => Math.abs(length - 100) < 1e-9);
    expect(hundred.map(([, level]) => Math.round(level))).toEqual(expect.arrayContaining([100, 0]));
  });
});

describe('the drawing from above', () => {
  test('a right shoe is the mirror image of the same left one', () => {
    const order = JOBS.turned.shoes.right!, alone = (fitting: object): Drawing => planDrawing(designOf({ ...JOBS.turned, shoes: fitting } as typeof JOBS.turned), PORTRAIT);
    const centres = (drawing: Drawing): string[] => arcsOf(drawing).map(({ centre: [x], radius }) => `${x.toFixed(6)} ${radius.toFixed(6)}`).sort();
    const left = alone({ left: { ...order, side: 'left' } }), right = alone({ right: order });
    expect(centres(left)).toEqual(centres(right));
    expect(texts(right)).toContain('Right shoe');
  });

  test('the crest line of a turned rocker is named with its angle', () => expect(texts(planDrawing(designOf(JOBS.turned), PORTRAIT))).toContain('crest 97.0°'));
});

test('the same design gives the same drawing', () => expect(side('turned')).toEqual(side('turned')));

test('a filled band stays one line at any scale: rounding never breaks it in two', () => {
  for (const width of [300, 320, 343, 361, 380, 400, 420]) {
    const text = svgText(sideDrawing(designOf(SAMPLES['ferry-pilot']!), { width, height: 0.54 * width }));
    for (const [, track] of text.matchAll(/<path d="([^"]*)Z" fill/g)) expect([width, track!.split('M').length]).toEqual([width, 2]);
  }
});

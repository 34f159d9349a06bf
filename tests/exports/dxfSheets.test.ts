import { describe, expect, test } from 'vitest';
import { outlineSheet, outsoleSheet, sideSheet } from '../../src/exports/dxfSheets.ts';
import { distance, type Point } from '../../src/geometry/point.ts';
import { partsOf, type Shoe, type SoleParts } from '../../src/pair/shoe.ts';
import { heightAt } from '../../src/profile/groundFace.ts';
import { planPoint, rollLine, rollX } from '../../src/profile/rollLine.ts';
import { groundPoint } from '../../src/solid/groundLine.ts';
import { ALL_JOBS, designOf } from './jobs.ts';

/* A small reader: entities by layer, arcs by their points. */
interface Piece { readonly layer: string; readonly type: string; readonly centre: Point; readonly radius: number; readonly ends: readonly [Point, Point]; readonly at: (share: number) => Point }

function read(text: string): { pieces: Piece[]; letters: string[]; points: number } {
  const lines = text.split('\r\n'), pairs = Array.from({ length: (lines.length - 1) / 2 }, (_, i): [number, string] => [Number(lines[2 * i]), lines[2 * i + 1]!]);
  const start = pairs.findIndex(([code, value], i) => code === 2 && value === 'ENTITIES' && pairs[i - 1]![1] === 'SECTION');
  const objects: { type: string; values: Map<number, string> }[] = [];
  for (const [code, value] of pairs.slice(start + 1)) {
    if (code === 0 && value === 'ENDSEC') break;
    if (code === 0) objects.push({ type: value, values: new Map() }); else objects.at(-1)!.values.set(code, value);
  }
  const pieces = objects.filter(({ type }) => type === 'ARC' || type === 'LINE').map(({ type, values }): Piece => {
    const real = (code: number): number => Number(values.get(code)), layer = values.get(8)!;
    const centre: Point = [real(10), real(20)], radius = real(40);
    if (type === 'LINE') {
      const to: Point = [real(11), real(21)], at = (share: number): Point => [centre[0] + (to[0] - centre[0]) * share, centre[1] + (to[1] - centre[1]) * share];
      return { layer, type, centre, radius: Infinity, ends: [centre, to], at };
    }
    const turn = (((real(51) - real(50)) % 360) + 360) % 360;
    const at = (share: number): Point => { const angle = ((real(50) + turn * share) * Math.PI) / 180; return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)]; };
    return { layer, type, centre, radius, ends: [at(0), at(1)], at };
  });
  return { pieces, letters: objects.filter(({ type }) => type === 'TEXT').map(({ values }) => values.get(1)!), points: objects.filter(({ type }) => type === 'POINT').length };
}

/** The widest gap of a closed chain: every end has exactly one other end near it. */
function widestGap(pieces: readonly Piece[]): number {
  const ends = pieces.flatMap(({ ends: both }) => both);
  return Math.max(...ends.map((end, i) => {
    const others = ends.filter((_, j) => j !== i).map((other) => distance(end, other)).sort((a, b) => a - b);
    expect(others[1]).toBeGreaterThan(1e-4);
    return others[0]!;
  }));
}
const onLayer = (pieces: readonly Piece[], ...layers: string[]): Piece[] => pieces.filter((piece) => layers.includes(piece.layer));
const OUTLINE = ['GROUND_FACE', 'UPPER_FACE', 'END_WALLS'];
/** Where one line lies on another of the same drawing, ends and radius alike: a laser would cut it twice. */
function twice(pieces: readonly Piece[]): number {
  const keys = pieces.map(({ radius, ends, at }) => JSON.stringify([radius, ...ends.map((end) => end.map((v) => v.toFixed(5)).join()).sort(), at(0.5).map((v) => v.toFixed(5))]));
  return keys.length - new Set(keys).size;
}
/** Distance from a point to the nearest of many pieces, each sampled. */
const nearest = (pieces: readonly Piece[], point: Point): number => Math.min(...pieces.flatMap((piece) =>
  piece.type === 'ARC' && within(piece, point) ? [Math.abs(distance(piece.centre, point) - piece.radius)] : piece.ends.map((end) => distance(end, point)), ));
/** Whether a point lies beside an arc, by the turn between its ends. */
function within({ centre, ends: [a, b] }: Piece, [x, y]: Point): boolean {
  const angle = ([px, py]: Point): number => Math.atan2(py - centre[1], px - centre[0]), full = 2 * Math.PI;
  const from = (to: number): number => (((to - angle(a)) % full) + full) % full;
  return from(angle([x, y])) <= from(angle(b));
}

const SOLES = Object.entries(ALL_JOBS).flatMap(([name, fitting]) => designOf(fitting).shoes.flatMap((shoe) => {
  const parts = partsOf(shoe);
  return parts ? [{ name: `${name} ${shoe.side}`, shoe, parts }] : [];
}));
const sideOf = (shoe: Shoe, { shape }: SoleParts): ReturnType<typeof read> => read(sideSheet(shoe, shape, 'K-1 left'));
const outlinesOf = (shoe: Shoe, { shape }: SoleParts): ReturnType<typeof read> => read(outlineSheet(shoe, shape, 'K-1 left'));
/** What is cut of it; what is scribed is looked at by itself. */
const flatOf = (shoe: Shoe, { shape }: SoleParts): ReturnType<typeof read> => { const all = read(outsoleSheet(shoe, shape, 'K-1 left')); return { ...all, pieces: onLayer(all.pieces, 'OUTSOLE_FLAT') }; };

describe('the side profile', () => {
  test.each(SOLES)('$name: faces and end walls are one closed chain, and no line lies on another', ({ shoe, parts }) => {
    const { pieces } = sideOf(shoe, parts);
    expect(widestGap(onLayer(pieces, ...OUTLINE))).toBeLessThan(1e-7);
    expect(twice(pieces)).toBe(0);
  });

  test('a chain with a gap is not closed, so the check above can fail', () => {
    const { shoe, parts } = SOLES[0]!, outline = onLayer(sideOf(shoe, parts).pieces, ...OUTLINE);
    expect(widestGap(outline.slice(1))).toBeGreaterThan(1);
  });

  test.each(SOLES)('$name: the arcs are those of the design', ({ shoe, parts }) => {
    const arcs = onLayer(sideOf(shoe, parts).pieces, 'GROUND_FACE').filter(({ type }) => type === 'ARC');
    const solved = parts.shape.face.pieces.filter((piece) => piece.kind === 'arc');
    expect(arcs).toHaveLength(solved.length);
    arcs.forEach(({ radius, centre }, i) => {
      expect(Math.abs(radius - solved[i]!.radius)).toBeLessThan(1e-6);
      expect(distance(centre, solved[i]!.centre)).toBeLessThan(1e-6);
    });
    const foam = onLayer(sideOf(shoe, parts).pieces, 'FOAM_UNDERSIDE').filter(({ type }) => type === 'ARC');
    foam.forEach(({ radius }, i) => expect(Math.abs(radius - (solved[i]!.radius - parts.shape.outsole))).toBeLessThan(1e-6));
  });

  test.each(SOLES)('$name: the faces lie where the shape says', ({ shoe, parts: { shape }, parts }) => {
    const { pieces } = sideOf(shoe, parts), turn = Math.cos(shape.line.turn), { apexX } = shape.line;
    for (const piece of onLayer(pieces, 'UPPER_FACE')) for (const share of [0, 0.3, 0.6, 1]) {
      const [along, z] = piece.at(share), x = apexX + (along - apexX) / turn;
      expect(Math.abs(z - shape.upper(x, 0) - shape.build)).toBeLessThan(0.012);
    }
    for (const piece of onLayer(pieces, 'GROUND_FACE')) for (const share of [0, 0.3, 0.6, 1]) {
      const [along, z] = piece.at(share);
      expect(Math.abs(z - heightAt(shape.face, along))).toBeLessThan(1e-7);
    }
  });

  test('pivot, hip line and apex are marked on a rocker only', () => {
    const rocker = SOLES.find(({ shoe }) => shoe.kind === 'rocker')!, raise = SOLES.find(({ shoe }) => shoe.kind === 'match')!;
    const layers = (sole: typeof rocker): Set<string> => new Set(sideOf(sole.shoe, sole.parts).pieces.map(({ layer }) => layer));
    for (const layer of ['PIVOT', 'HIP_LINE', 'APEX_LINE']) expect([layers(rocker).has(layer), layers(raise).has(layer)]).toEqual([true, false]);
    expect(sideOf(rocker.shoe, rocker.parts).letters[0]).toBe('K-1 left side view mm');
  });
});

describe('the outlines', () => {
  test.each(SOLES)('$name: each is one closed chain, and no line lies on another', ({ shoe, parts }) => {
    const { pieces } = outlinesOf(shoe, parts);
    expect(twice(pieces)).toBe(0);
    for (const layer of ['FEATHER_LINE', 'EDGE_LINE', 'GROUND_LINE']) expect([layer, widestGap(onLayer(pieces, layer)) < 1e-7]).toEqual([layer, true]);
  });

  test.each(SOLES)('$name: the ground line keeps to the foot of the walls', ({ shoe, parts }) => {
    const line = onLayer(outlinesOf(shoe, parts).pieces, 'GROUND_LINE'), at = groundPoint(parts.shape), flip = shoe.side === 'right' ? -1 : 1;
    for (let i = 0; i < 97; i++) {
      const [x, y] = at((i / 97) * parts.shape.edge.length);
      // The ground line is drawn third, each outline 160 mm below the one before.
      expect(nearest(line, [x, y * flip - 320])).toBeLessThan(0.012);
    }
  });

  test.each(SOLES)('$name: length and widths are those of the last', ({ shoe, parts }) => {
    const points = onLayer(outlinesOf(shoe, parts).pieces, 'FEATHER_LINE').flatMap((piece) => Array.from({ length: 40 }, (_, i) => piece.at(i / 39)));
    const xs = points.map(([x]) => x), ys = points.map(([, y]) => y);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(shoe.last.length, 2);
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(shoe.last.ballWidth, 0);
    expect(ys.reduce((sum, y) => sum + y) * (shoe.side === 'left' ? -1 : 1)).not.toBe(0);
  });

  test('the outer side of a left shoe is up, of a right shoe down', () => {
    for (const { shoe, parts } of SOLES) {
      const [ball] = onLayer(outlinesOf(shoe, parts).pieces, 'BALL_LINE'), ends = [...ball!.ends].sort((a, b) => b[0] - a[0]);
      // The inner toe joint lies further forward.
      expect(Math.sign(ends[0]![1])).toBe(shoe.side === 'left' ? -1 : 1);
    }
  });

  test('the crest line lies under the walking line of the apex', () => {
    for (const { shoe, parts } of SOLES.filter(({ shoe: { kind } }) => kind === 'rocker')) {
      const flip = shoe.side === 'right' ? -1 : 1, [crest] = onLayer(outlinesOf(shoe, parts).pieces, 'CREST_LINE');
      for (const [x, y] of crest!.ends) expect(rollX(parts.shape.line, [x, y * flip])).toBeCloseTo(parts.shape.line.apexX, 6);
    }
  });
});

describe('the outsole laid flat', () => {
  test.each(SOLES)('$name: one closed chain, longer than the plan by the bend and the trim', ({ shoe, parts }) => {
    const { pieces } = flatOf(shoe, parts), xs = pieces.flatMap((piece) => Array.from({ length: 20 }, (_, i) => piece.at(i / 19)[0]));
    expect(widestGap(pieces)).toBeLessThan(1e-7);
    const { shape } = parts, at = groundPoint(shape), around = Array.from({ length: 400 }, (_, i) => rollX(shape.line, [...at((i / 400) * shape.edge.length)].slice(0, 2) as unknown as Point));
    const [from, to] = [Math.min(...around), Math.max(...around)];
    // Slow judge: the face walked in small straight steps.
    let bent = 0;
    for (let i = 0; i < 4000; i++) { const a = from + ((to - from) * i) / 4000, b = from + ((to - from) * (i + 1)) / 4000; bent += Math.hypot(b - a, heightAt(shape.face, b) - heightAt(shape.face, a)); }
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(bent + 6, 1);
  });

  test('rolled up again every point stands 3 mm outside the foot of the walls', () => {
    const { shoe, parts } = SOLES.find(({ name }) => name === 'turned right')!, { shape } = parts, { pieces } = flatOf(shoe, parts);
    const zero = rollX(shape.line, [0, 0]), at = groundPoint(shape);
    for (let i = 0; i < 60; i++) {
      const [x, y] = at((i / 60) * shape.edge.length), along = rollX(shape.line, [x, y]), steps = 600;
      let length = 0;
      for (let k = 0; k < steps; k++) { const a = zero + ((along - zero) * k) / steps, b = zero + ((along - zero) * (k + 1)) / steps; length += Math.sign(along - zero) * Math.hypot(b - a, heightAt(shape.face, b) - heightAt(shape.face, a)); }
      const [px, py] = planPoint(rollLine(0, Math.PI / 2 - shape.line.turn), x - shape.line.apexX, y);
      expect(px + shape.line.apexX).toBeCloseTo(along, 6);
      expect(nearest(pieces, [length, -py])).toBeCloseTo(3, 1);
    }
  });
});

test('the same sole gives the same text', () => {
  const { shoe, parts } = SOLES[0]!;
  for (const write of [sideSheet, outlineSheet, outsoleSheet]) expect(write(shoe, parts.shape, 'a')).toBe(write(shoe, parts.shape, 'a'));
});

test('the flat outsole tells heel and toe, its sides, and what is included, on lines that are scribed', () => {
  for (const { shoe, parts: { shape } } of [SOLES[0]!, SOLES[1]!]) {
    const text = outsoleSheet(shoe, shape, 'K-1'), { pieces, letters } = read(text), axis = onLayer(pieces, 'CENTRE_LINE');
    expect(letters).toEqual(expect.arrayContaining(['heel', 'toe', 'inner side', 'outer side', 'upper side up, 3 mm included all round']));
    // Along the axis the ground face is as long as by many short steps over it.
    const long = axis.reduce((sum, piece) => sum + distance(piece.at(0), piece.at(1)), 0), steps = Array.from({ length: 4001 }, (_, i): readonly [number, number, number] => { const x = (shape.last.length * i) / 4000; return [x, 0, heightAt(shape.face, rollX(shape.line, [x, 0]))]; });
    expect(long).toBeCloseTo(steps.slice(1).reduce((sum, at, i) => sum + Math.hypot(at[0] - steps[i]![0], at[2] - steps[i]![2]), 0), 1);
    const y = (words: string): number => Number(new RegExp(`\\n 20\\n\\s*(-?[\\d.]+)\\n(?:[^\\n]*\\n){2,8}?\\s*1\\n${words}\\n`).exec(text.replace(/\r/g, ''))?.[1]);
    expect([Math.sign(y('outer side')), Math.sign(y('inner side'))]).toEqual(shoe.side === 'left' ? [1, -1] : [-1, 1]);
  }
});

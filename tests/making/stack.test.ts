import { describe, expect, test } from 'vitest';
import type { RackSheet, StackOrder } from '../../src/fitting/making.ts';
import { readMaking } from '../../src/fitting/readMaking.ts';
import { pointAlong, type Path } from '../../src/geometry/path.ts';
import { distance, type Point, type Point3 } from '../../src/geometry/point.ts';
import { arcsRoundRing } from '../../src/making/stack/arcsAlong.ts';
import { builtFor, stacksFor } from '../../src/making/stack/buildUp.ts';
import { leastStacks, SAME_DEPTH, type Search } from '../../src/making/stack/choose.ts';
import { cutter, layOn, type Built } from '../../src/making/stack/cut.ts';
import { figuresOf } from '../../src/checks/figures.ts';
import { stackFindings } from '../../src/making/stack/findings.ts';
import type { PlannedLayer } from '../../src/making/stack/plan.ts';
import { groundAway, leftOver, type Layer, type ShoeStack, type Stacks } from '../../src/making/stack/stack.ts';
import { partsOf, type Shoe } from '../../src/pair/shoe.ts';
import { foamFace, sweptSurface, upperSurface, type SoleShape } from '../../src/solid/soleShape.ts';
import { meetSurface, wallLine } from '../../src/solid/wall.ts';
import type { Design } from '../../src/design.ts';
import { designOf, JOBS } from '../exports/jobs.ts';
import { isInside, sampled } from '../judges/apart.ts';
import { volumeBySlices } from '../judges/columns.ts';
import { chanceFrom } from '../support/random.ts';

const sheetOf = (thickness: number, change: Partial<RackSheet> = {}): RackSheet => ({ name: `foam ${thickness}`, thickness, density: 0.2, length: 1150, width: 950, usual: false, ...change });
const ordered = (fitting: Parameters<typeof designOf>[0], stack: Partial<StackOrder> = {}, rack?: readonly RackSheet[]): Design => {
  const making = readMaking({ stack }), design = designOf(fitting);
  return { ...design, fitting: { ...design.fitting, making: { ...making, ...(rack && { rack }) } } };
};
const once = new Map<Design, Stacks>();
function stacked(design: Design): Stacks {
  const known = once.get(design) ?? stacksFor(design)!;
  once.set(design, known);
  return known;
}

const PAIR = ordered(JOBS.pair), TURNED = ordered(JOBS.turned), ZONED = ordered(JOBS.rockers, { heel: 'hard 9', forepart: 'hard 7' }, [sheetOf(6), sheetOf(10), sheetOf(9, { name: 'hard 9', density: 0.25 }), sheetOf(7, { name: 'hard 7' })]);
const ALL = [['pair', PAIR], ['turned, dished and flared', TURNED], ['zones', ZONED]] as const;

/** Where a point lies below the face it is bent to, by going along that face in small steps: depth, and the length of a layer at a depth up to there. */
function slowPlace(shape: SoleShape, [x, y, z]: Point3): { readonly depth: number; readonly lengthAt: (depth: number) => number } {
  const up = upperSurface(shape, shape.stiffener), step = 0.05, reach = Math.abs(up(x, y) - z) + 1;
  let foot = x, least = Infinity;
  for (let at = x - reach; at <= x + reach; at += step) { const off = Math.hypot(at - x, up(at, y) - z); if (off < least) { least = off; foot = at; } }
  const below = (at: number, depth: number): Point => { const slope = (up(at + 0.01, 0) - up(at - 0.01, 0)) / 0.02, size = Math.hypot(1, slope); return [at + (depth * slope) / size, up(at, 0) - depth / size]; };
  const lengthAt = (depth: number): number => {
    const count = Math.ceil(Math.abs(foot) / 0.5), points = Array.from({ length: count + 1 }, (_, i) => below((foot * i) / count, depth));
    return Math.sign(foot) * points.slice(1).reduce((sum, point, i) => sum + distance(point, points[i]!), 0);
  };
  return { depth: least, lengthAt };
}

/** Places of the foam body, many of them on its walls: a way round the edge, a way down the wall, and in from there towards the middle of the sole. */
function placesIn(shape: SoleShape, count: number, seed: number): Point3[] {
  const chance = chanceFrom(seed), lower = sweptSurface(foamFace(shape), shape.line), upper = upperSurface(shape, shape.stiffener);
  return Array.from({ length: count }, (): Point3 => {
    const wall = wallLine(shape, chance.between(0, shape.edge.length)), foot = meetSurface(wall, lower), t = chance.between(0, 1), inward = chance.oneOf([0, 0, chance.between(0.15, 1)]);
    const down = (1 - t) * shape.stiffener / (wall.top[2] - foot[2]) + t, [x, y] = [0, 1].map((k) => (wall.top[k]! + (foot[k]! - wall.top[k]!) * down) * (1 - inward) + (k === 0 ? shape.last.length / 2 : 0) * inward) as [number, number];
    return [x, y, inward === 0 ? wall.top[2] + (foot[2] - wall.top[2]) * down : lower(x, y) + (upper(x, y) - lower(x, y)) * chance.between(0, 1)];
  });
}

const areaBySamples = (outline: Path): number => Math.abs(sampled(outline, 0.5).reduce((sum, [x, y], i, all) => { const [bx, by] = all[(i + 1) % all.length]!; return sum + (x * by - y * bx) / 2; }, 0));

const outlines = new WeakMap<Layer, readonly (readonly Point[])[]>();
const outlinesOf = (layer: Layer): readonly (readonly Point[])[] => {
  const known = outlines.get(layer) ?? layer.pieces.map(({ part }) => sampled(part.outline, 1));
  outlines.set(layer, known);
  return known;
};

/** How far inside a layer a place lies, less than nothing outside; the layer that lies at its depth, its glue line counted in. */
function insideBy({ layers, side }: ShoeStack, place: ReturnType<typeof slowPlace>, y: number): number {
  return Math.max(...layers.filter(({ reach, bottom }) => place.depth >= reach - 1e-3 && place.depth <= bottom + 1e-3).flatMap((layer) => outlinesOf(layer).map((outline) => {
    const at: Point = [place.lengthAt(layer.bottom - layer.sheet.thickness / 2), side === 'left' ? y : -y];
    const off = Math.min(...outline.map((point) => distance(point, at)));
    return isInside(at, outline) ? off : -off;
  })), -Infinity);
}

const soles = ALL.flatMap(([name, design]) => stacked(design).shoes.map((stack) => ({ name: `${name} ${stack.side}`, stack, shoe: design.shoes.find(({ side }) => side === stack.side) as Shoe })));

describe('stacks of layers', () => {
  test.each(soles)('$name: foam lies wherever the body is, with most of the trim round it, by a slow judge', ({ stack, shoe }) => {
    const { shape } = partsOf(shoe)!, zoned = stack.layers.some(({ zone }) => zone.name !== 'whole');
    for (const point of placesIn(shape, 80, 5)) {
      const inside = insideBy(stack, slowPlace(shape, point), point[1]);
      expect(inside, `${point.join(' ')}`).toBeGreaterThan(zoned ? -0.1 : 2);
    }
  });

  test.each(soles)('$name: layers follow one on the other, and most of what is cut stays', ({ stack }) => {
    stack.layers.forEach(({ reach, bottom, sheet, number, of }) => {
      expect(bottom - reach).toBeCloseTo(sheet.thickness + 0.15, 9);
      expect(number).toBeLessThanOrEqual(of);
    });
    expect(groundAway(stack)).toBeGreaterThan(0);
    expect(groundAway(stack)).toBeLessThan(0.45 * stack.blanks);
  });

  test.each([soles[0]!, soles[3]!])('$name: what is said of foam, blanks and grinding is what there is', ({ stack, shoe }) => {
    const { shape } = partsOf(shoe)!, body = volumeBySlices(shape, upperSurface(shape, shape.stiffener), sweptSurface(foamFace(shape), shape.line), 3, 4);
    expect(stack.body / body).toBeCloseTo(1, 2);
    const blanks = stack.layers.reduce((sum, layer) => sum + layer.pieces.reduce((all, { part }) => all + areaBySamples(part.outline), 0) * layer.sheet.thickness, 0);
    expect(stack.blanks / blanks).toBeCloseTo(1, 2);
    // Layer by layer, measured through in another way than the body as a whole.
    expect((stack.layers.reduce((sum, { foam }) => sum + foam, 0) + stack.glue) / body).toBeCloseTo(1, 1);
    expect(groundAway(stack)).toBeCloseTo(stack.blanks - stack.body + stack.glue, 6);
  });

  test('layers under heel and forepart are of the foam named for them, and meet the others on one line', () => {
    for (const { layers } of stacked(ZONED).shoes) {
      expect(layers[0]!.zone.name).toBe('whole');
      for (const { zone, sheet } of layers.slice(1)) {
        if (zone.name === 'heel') expect(sheet.name).toBe('hard 9');
        if (zone.name === 'forepart') expect(sheet.name).toBe('hard 7');
      }
      expect(new Set(layers.map(({ zone }) => zone.name))).toEqual(new Set(['whole', 'heel', 'middle', 'forepart']));
    }
  });

  test('the line on which two layers part is marked once', () => {
    const pieces = stacked(ZONED).shoes.flatMap(({ layers }) => layers.flatMap((layer) => layer.pieces.map(({ part }) => part.marks.filter(({ of }) => of === 'NEXT_EDGE').flatMap(({ path }) => path))));
    expect(pieces.flat().length).toBeGreaterThan(10);
    for (const marked of pieces) {
      const lines = marked.flatMap((piece) => (piece.kind === 'line' ? [[piece.from, piece.to].map((at) => at.map((value) => value.toFixed(2)).join(' ')).toSorted().join(' to ')] : []));
      expect(new Set(lines).size).toBe(lines.length);
    }
  });

  test('the edge of the next layer, and the lines to lay it by, are on each blank; all letters name job, side and place in the stack', () => {
    const { shoes: [left] } = stacked(PAIR), layers = left!.layers;
    layers.forEach((layer, i) => layer.pieces.forEach(({ part }) => {
      const of = new Set(part.marks.map((mark) => mark.of));
      expect(of.has('NEXT_EDGE')).toBe(i + 1 < layers.length);
      expect(of.has('CENTRE_LINE')).toBe(true);
      expect(part.letters.map(({ text }) => text)).toEqual([part.name]);
      expect(part.name).toMatch(new RegExp(`^K-204 left (heel |waist |forepart )?${i + 1} of ${layers.length} EVA \\d+$`));
    }));
  });
});

describe('the choice of sheets', () => {
  /** Every sequence of sheets that reaches deep enough and not deeper than it must, one by one. */
  function* every(adds: readonly number[], enough: (reach: number) => boolean, reach = 0): Generator<number[]> {
    if (enough(reach)) { yield []; return; }
    for (let i = 0; i < adds.length; i++) for (const rest of every(adds, enough, reach + adds[i]!)) yield [i, ...rest];
  }

  test.each(Array.from({ length: 12 }, (_, seed) => seed))('no stack of a small rack costs less, all gone through one by one (%i)', (seed) => {
    const chance = chanceFrom(seed + 1), adds = Array.from({ length: chance.oneOf([1, 2, 3]) }, () => chance.between(3, 12)), most = chance.between(8, 26), steep = chance.between(0, 3), fixed = chance.between(0, 300);
    // Layers get shorter downwards, evenly; the second sheet is too small for the upper ones.
    const costOf = (sheet: number, reach: number): number | undefined => (sheet === 1 && reach < 5 ? undefined : (200 - steep * reach) * adds[sheet]! + fixed);
    const search: Search = { adds, costOf, enough: (reach) => reach >= most, keep: 5 };
    const costs = [...every(adds, search.enough)].flatMap((sheets) => {
      let reach = 0, sum: number | undefined = 0;
      for (const sheet of sheets) { const cost: number | undefined = costOf(sheet, reach); sum = sum === undefined || cost === undefined ? undefined : sum + cost; reach += adds[sheet]!; }
      return sum === undefined ? [] : [sum];
    }).sort((a, b) => a - b);
    const found = leastStacks(search);
    expect(found.length).toBe(Math.min(5, costs.length));
    found.forEach(({ cost }, i) => expect(cost).toBeCloseTo(costs[i]!, 6));
  });

  test('sheets of ten odd thicknesses, whose sums are almost all different, are looked at no more often than there are depths', () => {
    const chance = chanceFrom(31), adds = Array.from({ length: 10 }, () => chance.between(0.6, 4)), keep = 4;
    let asked = 0;
    const costOf = (sheet: number, reach: number): number => { asked++; return (200 - 3 * reach) * adds[sheet]! + 40; };
    const found = leastStacks({ adds, costOf, enough: (reach) => reach >= 14, keep });
    // Looking at each depth once, the ways down to it cannot be more: closed form.
    expect(asked).toBeLessThanOrEqual((14 / SAME_DEPTH) * keep * adds.length);
    for (const { sheets, cost } of found) {
      let reach = 0, sum = 0;
      for (const sheet of sheets) { sum += costOf(sheet, reach); expect(reach).toBeLessThan(14); reach += adds[sheet]!; }
      expect([reach >= 14, cost]).toEqual([true, expect.closeTo(sum, 6)]);
    }
  });

  test('no stack has more layers than are allowed, and one is found wherever the thickest sheets reach deep enough', () => {
    const search = (most: number): Search => ({ adds: [2, 3], costOf: (sheet) => [10, 100][sheet], enough: (reach) => reach >= 20, keep: 5, layers: { most, deepest: 20 } });
    for (const { sheets } of leastStacks(search(8))) expect(sheets.length).toBeLessThanOrEqual(8);
    expect([6, 7, 8, 10].map((most) => leastStacks(search(most))[0]?.cost)).toEqual([undefined, 610, 440, 100]);
  });

  test('among stacks of one cost the one of fewest layers comes first', () => {
    const search: Search = { adds: [5, 10], costOf: (sheet) => [50, 100][sheet], enough: (reach) => reach >= 20, keep: 3 };
    expect(leastStacks(search).map(({ sheets }) => sheets)).toEqual([[1, 1], [0, 0, 1], [0, 1, 0]]);
  });

  test.each([[8, 13], [9.6, 12.4]])('with sheets of %d and %d mm no stack leaves less, ground away and left over together', (thin, thick) => {
    const rack = [sheetOf(thin), sheetOf(thick)], design = ordered(JOBS.alone, { layerSaves: 0 }, rack), order = design.fitting.making.stack!;
    const [one] = builtFor(design) as [Built], made = stacked(design), whole = one.plans[0]!.layers[0]!.zone;
    const waste = [...every(rack.map(({ thickness }) => thickness + order.glueLine), (reach) => one.cover.bare(whole, reach, 0).length === 0)].map((sheets) => {
      let reach = 0;
      const layers = sheets.map((i): PlannedLayer => { const above = reach; reach += order.glueLine + rack[i]!.thickness; return { zone: whole, sheet: rack[i]!, reach: above, bottom: reach }; });
      const cut = cutter(one, 'K-206')({ cost: 0, layers }), volume = cut.reduce((sum, { layer, blanks }) => sum + blanks.reduce((all, { part }) => all + areaBySamples(part.outline), 0) * layer.sheet.thickness, 0);
      return volume + leftOver(layOn(cut, order));
    });
    expect(waste.length).toBeGreaterThan(4);
    expect((made.shoes[0]!.blanks + leftOver(made)) / Math.min(...waste)).toBeCloseTo(1, 3);
  });
});

describe('racks that do not do', () => {
  const codes = (design: Design): string[] => stackFindings(design).map(({ code }) => code);
  const alone = (rack?: readonly RackSheet[]): Design => ordered(JOBS.alone, {}, rack);

  test('a rack that was measured and does says nothing; a usual one says so; while a hand drags nothing is looked for', () => {
    expect(codes(alone([sheetOf(6), sheetOf(12)]))).toEqual([]);
    expect(codes(alone())).toEqual(['STACK_NOT_MEASURED']);
    expect(stackFindings(designOf(JOBS.alone))).toEqual([]);
  });

  test('sheets too small: the size it names works, a little less does not', () => {
    const small = alone([sheetOf(10, { length: 250, width: 200 })]), [finding] = stackFindings(small);
    expect(finding).toMatchObject({ code: 'STACK_SHEET_SMALL', severity: 'warn', side: 'right' });
    expect(stacked(small)).toEqual({ shoes: [], sheets: [] });
    const [, length, width] = /Sheets of (\d+) × (\d+) mm/.exec(finding!.text)!.map(Number);
    expect(finding!.limit).toBe(length);
    expect(stacked(alone([sheetOf(10, { length: length!, width: width! })])).shoes).toHaveLength(1);
    expect(stacked(alone([sheetOf(10, { length: length! - 4, width: width! })])).shoes).toHaveLength(0);
  });

  const told = (design: Design, code: string): string => stackFindings(design).filter((one) => one.code === code).map(({ text }) => text).join('\n');
  const used = (design: Design): string[] => [...new Set(stacked(design).shoes.flatMap(({ layers }) => layers.map(({ sheet }) => sheet.name)))].toSorted();

  test('rubber and soft padding are no body: each is named with why, and the sheet that is offered makes a stack', () => {
    const rack = [sheetOf(4, { density: 0.6 }), sheetOf(10, { hardness: { value: 25, scale: 'Shore A' } }), sheetOf(12, { hardness: { value: 50, scale: 'Asker C' } })], none = alone(rack);
    expect(codes(none)).toEqual(['STACK_NO_FOAM']);
    expect(stacked(none)).toEqual({ shoes: [], sheets: [] });
    const text = told(none, 'STACK_NO_FOAM');
    expect(text).toContain('foam 4: 0.60 g/cm³ is denser than foam or cork for a body, at most 0.40 g/cm³.');
    expect(text).toContain('foam 10: 25 Shore A is softer than 40 Shore A (66 Asker C).');
    expect(text).toContain('foam 12: 50 Asker C is softer than 40 Shore A (66 Asker C).');
    const [, thickness, density, length, width] = /put in the rack does: (\d+) mm, ([\d.]+) g\/cm³.* (\d+) × (\d+) mm/.exec(text)!.map(Number);
    expect(stacked(alone([...rack, sheetOf(thickness!, { density: density!, length: length!, width: width! })])).shoes).toHaveLength(1);
  });

  test('one foam is used unless another is asked for; what is left out is told with why', () => {
    const cork = sheetOf(4, { name: 'Cork 4', density: 0.22 }), soft = [12, 6].map((thick) => sheetOf(thick, { name: `grey ${thick}`, hardness: { value: 50, scale: 'Asker C' } }));
    const light = sheetOf(8, { name: 'pale 8', density: 0.13 }), said = sheetOf(7, { name: 'board 7', material: 'hard EVA' }), dense = sheetOf(5, { name: 'own 5', density: 0.3, material: 'firm EVA' });
    const mixed = alone([sheetOf(12, { name: 'EVA 12' }), cork, ...soft, light, said, dense]), text = told(mixed, 'STACK_LEFT_OUT');
    expect(text).toContain('Cork 4: cork by its name is not firm EVA, which is ordered.');
    expect(text).toContain('grey 12 and grey 6: 50 Asker C is softer than 40 Shore A (66 Asker C).');
    expect(text).toContain('pale 8: 0.13 g/cm³ is more than 30 % off firm EVA, which is ordered, 0.20 g/cm³.');
    expect(text).toContain('board 7: hard EVA is not firm EVA, which is ordered.');
    expect(text).not.toMatch(/EVA 12|own 5/);
    expect(used(mixed).every((name) => ['EVA 12', 'own 5'].includes(name))).toBe(true);
  });

  test('where nothing is left of the foam ordered, the foam it names instead makes a stack', () => {
    const rack = [sheetOf(4, { name: 'Cork 4', density: 0.25 }), sheetOf(10, { name: 'board 10', density: 0.25, material: 'cork' })], text = told(alone(rack), 'STACK_NO_FOAM');
    expect(text).toContain('No stack is made of firm EVA');
    expect(text).toContain('Ordered of cork (order.foam) it is made of Cork 4 and board 10.');
    expect(text).not.toContain('Ordered of hard EVA');
    const { right } = JOBS.alone.shoes as { right: NonNullable<typeof JOBS.alone.shoes.right> }, cork = ordered({ ...JOBS.alone, shoes: { right: { ...right, order: { ...right.order, foam: 'cork' } } } } as typeof JOBS.alone, {}, rack);
    expect(codes(cork)).toEqual([]);
    expect(used(cork).every((name) => ['Cork 4', 'board 10'].includes(name))).toBe(true);
  });

  test('a soft sheet named for the heel is used, and remarked; the weight of what is chosen is told where it is another', () => {
    const grey = sheetOf(9, { name: 'grey 9', density: 0.1, hardness: { value: 50, scale: 'Asker C' } }), design = ordered(JOBS.alone, { heel: 'grey 9' }, [sheetOf(6), sheetOf(10), grey]);
    expect(codes(design)).toEqual(['STACK_NAMED_SOFT', 'STACK_WEIGHS_OTHERWISE']);
    expect(told(design, 'STACK_NAMED_SOFT')).toContain('grey 9: 50 Asker C is softer');
    expect(used(design)).toContain('grey 9');
    const [finding] = stackFindings(design).filter(({ code }) => code === 'STACK_WEIGHS_OTHERWISE'), [{ layers }] = stacked(design).shoes as [ShoeStack];
    expect(finding!.measured).toBeCloseTo(layers.reduce((sum, { foam, sheet }) => sum + (foam / 1000) * sheet.density, 0), 6);
    // One number on every paper: the figure.
    expect(finding!.limit).toBe(figuresOf(design.shoes[0]!, design.fitting).find(({ key }) => key === 'foamWeight')!.value);
  });

  test('thin sheets alone: the thickness it names brings the layers down', () => {
    const [finding] = stackFindings(alone([sheetOf(2)])), named = Number(/a sheet of (\d+) mm besides/.exec(finding!.text)![1]);
    expect(finding).toMatchObject({ code: 'STACK_MANY_LAYERS', limit: 8 });
    expect(finding!.measured).toBeGreaterThan(8);
    expect(stacked(alone([sheetOf(2), sheetOf(named)])).shoes[0]!.layers.length).toBeLessThanOrEqual(8);
  });

  test('sheets so thin that nobody would glue so many make no stack, and the sheet it names makes one', () => {
    const thin = alone([sheetOf(0.7)]), [finding] = stackFindings(thin), named = Number(/a sheet of (\d+) mm besides/.exec(finding!.text)![1]);
    expect(finding).toMatchObject({ code: 'STACK_MANY_LAYERS', measured: 25 });
    expect(finding!.text).toContain('No stack is made for the right shoe: it would take more than 24 layers');
    expect(stacked(thin)).toEqual({ shoes: [], sheets: [] });
    expect(stacked(alone([sheetOf(0.7), sheetOf(named)])).shoes[0]!.layers.length).toBeLessThanOrEqual(8);
  });

  test('where thin sheets are taken to save the last foam, and no thicker one helps, it says how sparing to be', () => {
    const rack = [2, 3, 5, 10].map((thickness) => sheetOf(thickness)), saving = ordered(JOBS.alone, { layerSaves: 0 }, rack), [finding] = stackFindings(saving);
    expect(finding).toMatchObject({ code: 'STACK_MANY_LAYERS' });
    const saves = Number(/saves (\d+) mm of foam/.exec(finding!.text)![1]);
    expect(codes(ordered(JOBS.alone, { layerSaves: saves }, rack))).toEqual([]);
  });
});

test('arcs through the points of a line pass none by more than the gap, and a circle takes few', () => {
  const ring = Array.from({ length: 120 }, (_, i): Point => { const a = (2 * Math.PI * i) / 120; return [100 * Math.cos(a), 60 * Math.sin(a) + 8 * Math.cos(3 * a)]; });
  const fitted = arcsRoundRing(ring, 0.05), points = sampled(fitted, 0.1);
  expect(fitted.length).toBeLessThan(40);
  for (const at of ring) expect(Math.min(...points.map((point) => distance(point, at)))).toBeLessThan(0.08);
  fitted.forEach((_, i) => expect(distance(pointAlong(fitted, i + 1 - 1e-12), pointAlong(fitted, (i + 1) % fitted.length))).toBeLessThan(1e-6));
  expect(arcsRoundRing(Array.from({ length: 180 }, (_, i): Point => [50 * Math.cos((2 * Math.PI * i) / 180), 50 * Math.sin((2 * Math.PI * i) / 180)]), 0.01).length).toBeLessThanOrEqual(4);
});

test('where a small round meets a long straight stretch, the line drawn bulges from neither', () => {
  const ring: readonly Point[] = [[62.714, 36.526], [58.588, 36.248], [58.536, 36.234], [58.489, 36.207], [58.451, 36.169], [58.433, 36.138], [53.836, 35.888], [50.374, 35.761], [50.322, 35.747], [50.275, 35.72], [50.237, 35.682], [50.219, 35.652], [20, 35], [20, 0], [60, 0]];
  const fine = ring.flatMap(([x, y], i) => { const [ax, ay] = ring[(i + 1) % ring.length]!; return Array.from({ length: 2000 }, (_, k): Point => [x + ((ax - x) * k) / 2000, y + ((ay - y) * k) / 2000]); });
  for (const at of sampled(arcsRoundRing(ring, 0.05), 0.2)) expect(Math.min(...fine.map((point) => distance(point, at)))).toBeLessThan(0.06);
});

test.each([-6, -12])('walls that flare by %d degrees stand within their blanks where they are widest, however thick the sheet and though nothing is left for grinding', (lean) => {
  const flare = (lean * Math.PI) / 180, shoe = JOBS.alone.shoes.right!, taper = { heelInner: flare, heelOuter: flare, foreInner: 0, foreOuter: 0 };
  const design = ordered({ ...JOBS.alone, shoes: { right: { ...shoe, order: { ...shoe.order, taper } } } } as typeof JOBS.alone, { trim: 0 }, [sheetOf(30)]), [stack] = stacked(design).shoes, { shape } = partsOf(design.shoes[0]!)!, lower = sweptSurface(foamFace(shape), shape.line);
  for (let i = 0; i < 40; i++) {
    const foot = meetSurface(wallLine(shape, (i / 40) * shape.edge.length), lower);
    expect(insideBy(stack!, slowPlace(shape, foot), foot[1])).toBeGreaterThan(-0.02);
  }
});

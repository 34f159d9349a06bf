import { describe, expect, test } from 'vitest';
import { makingFindings } from '../../src/making/findings.ts';
import { cutSheets } from '../../src/exports/cutSheets.ts';
import { readMaking } from '../../src/fitting/readMaking.ts';
import type { Fitting } from '../../src/fitting/fitting.ts';
import { faultsOf, volumeOf } from '../../src/geometry/mesh.ts';
import { enclosedArea, pointOn } from '../../src/geometry/path.ts';
import { distance, type Point } from '../../src/geometry/point.ts';
import { pointsAlong } from '../../src/making/cut/flatSolid.ts';
import { edgeWords, jigOf, type Jig, type JigPart } from '../../src/making/jig/jig.ts';
import { laid } from '../../src/making/cut/placed.ts';
import { jigsFor, partFor } from '../../src/making/jig/ordered.ts';
import { jigSolid } from '../../src/making/jig/solid.ts';
import { partsOf, type Shoe, type SoleParts } from '../../src/pair/shoe.ts';
import { heightAt } from '../../src/profile/groundFace.ts';
import { planPoint, rollX, rollY } from '../../src/profile/rollLine.ts';
import { designOf, JOBS } from '../exports/jobs.ts';
import { apart } from '../judges/apart.ts';
import { circleThrough } from '../judges/circle.ts';
import { readDxf } from '../support/dxfReader.ts';

type Raw = Parameters<typeof readMaking>[0];
const COARSE = 0.4;
const ordered = (fitting: Fitting, making: Raw): Fitting => ({ ...fitting, making: readMaking({ chordGap: COARSE, ...making }) });
const BOARD = { thickness: 5.8, clearance: 0.15, kerf: 0.3 }, BUSH = { diameter: 17, cutter: 12 };

interface Case { readonly name: string; readonly shoe: Shoe; readonly parts: SoleParts; readonly jig: Jig; readonly fitting: Fitting }
function casesOf(fitting: Fitting, making: Raw): Case[] {
  const design = designOf(ordered(fitting, making)), { jig: order, board } = design.fitting.making;
  return design.shoes.map((shoe) => ({ name: `${shoe.side} ${shoe.kind}`, shoe, parts: partsOf(shoe)!, jig: jigOf(shoe, order!, board, 'K-1 left')!, fitting: design.fitting }));
}
const PLAIN = [...casesOf(JOBS.pair, { jig: {}, board: BOARD }), ...casesOf(JOBS.turned, { jig: {}, board: BOARD })];
const GUIDED = casesOf(JOBS.rockers, { jig: { bush: BUSH, face: 'foam body' }, board: BOARD });

const ofKind = ({ parts }: Jig, kind: JigPart['kind']): JigPart[] => parts.filter((part) => part.kind === kind);
/** A part alone on a board as its file has it. */
const asCut = ({ part }: JigPart, fitting: Fitting): ReturnType<typeof readDxf> => readDxf(cutSheets('x', [{ part, sheet: 0, turn: 0, at: [0, 0] }], fitting.making.board)[0]!);
/** Points of an outline, and whether a point lies inside it, by counting crossings. */
const inside = (ring: readonly Point[]) => ([x, y]: Point): boolean => ring.reduce((odd, [bx, by], i) => {
  const [ax, ay] = ring.at(i - 1)!;
  return ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax) ? !odd : odd;
}, false);
/** Outline as [along or across, up], heel left. */
const ringOf = ({ part, stand }: JigPart): Point[] => pointsAlong(part.outline, 4e-4).map(([x, y]): Point => [stand.heelRight ? -x : x, y]);
const topAt = (ring: readonly Point[], x: number): number => Math.max(...ring.flatMap(([bx, by], i): number[] => { const [ax, ay] = ring.at(i - 1)!; return (ax < x) === (bx < x) ? [] : [ay + ((x - ax) / (bx - ax)) * (by - ay)]; }));

for (const { name, jig, fitting } of [PLAIN[1]!, PLAIN[3]!, GUIDED[0]!]) test(`${name}: with the cut taken back, every slot in the files is the board as typed and its clearance wide`, () => {
  const wanted = BOARD.thickness + BOARD.clearance, count = jig.frame.ribs.length, expected = { rib: 4, rail: count, stringer: count, bridge: 0 };
  for (const part of jig.parts) {
    // The end of a slot is a short level line; its walls are the upright lines that meet it.
    const lines = asCut(part, fitting).entities.filter(({ layer, type }) => layer === 'CUT_OUT' && type === 'LINE'), upright = lines.filter(({ from, to }) => Math.abs(from[0] - to[0]) < 1e-9);
    const ends = lines.filter(({ from, to }) => Math.abs(from[1] - to[1]) < 1e-9 && distance(from, to) < 2 * wanted && part.kind !== 'bridge');
    const slots = ends.map((end) => { const [a, b] = upright.filter(({ from, to }) => [from, to].some((at) => distance(at, end.from) < 1e-6 || distance(at, end.to) < 1e-6)); return Math.abs(a!.from[0] - b!.from[0]) + BOARD.kerf; });
    expect(slots).toHaveLength(expected[part.kind]);
    for (const width of slots) expect(width).toBeCloseTo(wanted, 7);
  }
});

describe('the edge of the rails, by circles fitted to points of the exported line', () => {
  for (const { name, parts, jig, fitting } of [...PLAIN, ...GUIDED]) test(`${name}: has the radii of the arcs, less what the bush asks for`, () => {
    // Rule of the trade: a template for a guide bush lies (bush - cutter) / 2 inside the line that is cut. Foam lies inside the ground face by the outsole.
    const less = fitting.making.jig!.bush ? (BUSH.diameter - BUSH.cutter) / 2 + parts.shape.outsole : 0;
    for (const rail of ofKind(jig, 'rail')) {
      const drawn = asCut(rail, fitting).entities.filter(({ type, radius }) => type === 'ARC' && radius > 10).map(({ at }) => circleThrough([0, 0.2, 0.4, 0.6, 0.8, 1].map(at)));
      const arcs = parts.shape.face.pieces.flatMap((piece) => (piece.kind === 'arc' ? [piece] : []));
      expect(drawn).toHaveLength(arcs.length);
      for (const { radius, centre } of arcs) {
        const best = Math.min(...drawn.map((fit) => Math.abs(fit.radius - BOARD.kerf / 2 - (radius - less)) + Math.abs(Math.abs(fit.centre[0]) - Math.abs(centre[0]))));
        expect(best).toBeLessThan(1e-4);
      }
    }
  });

  test('runs on straight for 30 mm beyond both ends of the sole', () => {
    for (const { jig, parts: { shape } } of PLAIN) {
      const ring = ringOf(ofKind(jig, 'rail')[0]!), { sole, run } = jig.frame;
      expect([sole.from - run.from, run.to - sole.to].every((on) => on >= 30)).toBe(true);
      for (const [from, to] of [[run.from, sole.from], [sole.to, run.to]] as const) {
        const [a, b, c] = [0.02, 0.5, 0.98].map((share) => topAt(ring, from + share * (to - from)));
        expect((a! + c!) / 2 - b!).toBeCloseTo(0, 6);
      }
      expect(topAt(ring, sole.to - 1e-7)).toBeCloseTo(jig.frame.zero - heightAt(shape.face, sole.to), 4);
    }
  });
});

describe('put together', () => {
  for (const { name, parts: { shape }, jig, fitting } of [PLAIN[0]!, PLAIN[3]!, GUIDED[0]!]) {
    const { thickness } = fitting.making.board, rails = ofKind(jig, 'rail').map(ringOf);

    test(`${name}: the bridges bring the bottom of the last to where the sole is as thick as it is to be`, () => {
      for (const { part, stand: { at } } of ofKind(jig, 'bridge')) {
        const ring = pointsAlong(part.outline, 1e-3), sits = Math.max(...rails.flatMap((rail) => [-1, 0, 1].map((k) => topAt(rail, at + (k * thickness) / 2))));
        const grip = ring.filter(([y]) => Math.abs(y - jig.frame.railsAt[0]) < jig.frame.slot), onRail = Math.max(...grip.map(([, z]) => z).filter((z) => z < sits + 5));
        expect(Math.abs(onRail - sits)).toBeLessThan(0.001);
        const last = (y: number): number => jig.frame.zero - shape.upper(...planPoint(shape.line, at, -y)) - shape.build, leg = ring.filter(([y, z]) => z < sits - 1 && Math.abs(y) < 60);
        expect(leg.length).toBeGreaterThan(1);
        for (const [y, z] of leg) expect(Math.abs(z - last(y))).toBeLessThan(0.02);
      }
    });

    test(`${name}: ribs end 5 mm under the rails, and no two parts are in one place`, () => {
      const along = [...ofKind(jig, 'rail'), ...ofKind(jig, 'stringer')].map((part) => ({ at: part.stand.at, within: inside(ringOf(part)) }));
      for (const rib of ofKind(jig, 'rib')) {
        const x = rib.stand.at, ring = ringOf(rib), within = inside(ring), top = Math.max(...ring.map(([, z]) => z));
        const under = Math.min(...[-0.5, 0, 0.5].map((k) => topAt(rails[0]!, x + k * thickness)));
        expect(Math.abs(under - top - 5)).toBeLessThan(0.001);
        for (const { at, within: other } of along) {
          const up = Math.min(top, at === jig.frame.stringersAt[0] || at === jig.frame.stringersAt[1] ? 45 : top);
          for (let z = 0.37; z < up; z += 1.5) {
            for (const k of [-0.49, 0.49]) expect(within([at - k * thickness, z]) && other([x + k * thickness, z])).toBe(false);
            // And they do lap: at every height one or the other is there.
            expect(within([at, z]) || other([x, z])).toBe(true);
          }
        }
      }
      expect(Math.min(...jig.frame.ribs.slice(1).map((x, i) => x - jig.frame.ribs[i]!))).toBeGreaterThan(thickness);
      expect(Math.max(...jig.frame.ribs.slice(1).map((x, i) => x - jig.frame.ribs[i]!))).toBeLessThanOrEqual(35 + 1e-9);
    });
  }

  for (const { name, parts: { shape, solids }, jig, fitting } of PLAIN) test(`${name}: the sole itself, turned over about its length, lies between the ribs with the room asked for`, () => {
    const { room } = fitting.making.jig!, { thickness } = fitting.making.board, p = solids.whole.positions, turned: (readonly [number, number, number])[] = [];
    for (let i = 0; i < p.length; i += 3) turned.push([rollX(shape.line, [p[i]!, p[i + 1]!]), -rollY(shape.line, [p[i]!, p[i + 1]!]), jig.frame.zero - p[i + 2]!]);
    let near = 0;
    for (const rib of ofKind(jig, 'rib')) {
      const within = inside(ringOf(rib));
      for (const [x, y, z] of turned) if (Math.abs(x - rib.stand.at) < thickness / 2) {
        expect(within([y, z])).toBe(false);
        if (within([y + room + 1, z]) || within([y - room - 1, z])) near++;
        expect(within([y + room - 0.5, z]) || within([y - room + 0.5, z])).toBe(false);
      }
    }
    // The notches are no wider than asked either.
    expect(near).toBeGreaterThan(5);
  });
});

test('lettering of the rails stands in wood: over no slot, over no other line', () => {
  for (const { jig } of [...PLAIN, ...GUIDED]) for (const { part, stand } of ofKind(jig, 'rail')) {
    const within = inside(pointsAlong(part.outline, 0.05)), boxes = part.letters.map(({ text, at: [x, y], size }) => ({ text, x, y, size, long: text.length * size * 0.8 })), titled = boxes.filter(({ text }) => /^(rail|edge|foam)/.test(text));
    expect(titled.length).toBeGreaterThanOrEqual(2);
    for (const { text, x, y, size, long } of titled) {
      expect(size).toBeGreaterThanOrEqual(2);
      for (let along = 0; along <= long; along += 1.7) for (const up of [0, size]) expect(within([x + along, y + up])).toBe(true);
      for (const { of, path } of part.marks) if (of === 'FEATHER_LINE') for (const piece of path) for (let t = 0; t <= 1; t += 0.25) {
        const [px, pz] = pointOn(piece, t);
        expect([text, px > x && px < x + long && pz > y && pz < y + size]).toEqual([text, false]);
      }
      // Letters of a part that is drawn from its other side keep their length, and so may move a little.
      if (!stand.heelRight) for (const other of boxes) if (other.y !== y) expect(other.x < x + long && x < other.x + other.long && other.y < y + size && y < other.y + other.size).toBe(false);
    }
  }
});

test('as a solid the jig is closed, its outside out, every part a whole board thick; a right one has the same parts turned over', () => {
  const { jig, fitting: { making: { board } } } = PLAIN[0]!, solid = jigSolid(jig, board.thickness, 0.001), area = (part: JigPart['part']): number => enclosedArea(part.outline);
  const built = jig.parts.filter(({ kind }) => kind !== 'bridge');
  expect(faultsOf(solid)).toEqual([]);
  expect(volumeOf(solid) / built.reduce((sum, { part }) => sum + area(part) * board.thickness, 0)).toBeCloseTo(1, 5);
  for (const part of built) {
    const over = partFor(part, 'right'), xs = pointsAlong(part.part.outline, 1).map(([x]) => x), turned = pointsAlong(over.outline, 1).map(([x]) => -x);
    expect(area(over)).toBeCloseTo(area(part.part), 6);
    expect([Math.min(...turned), Math.max(...turned)]).toEqual([expect.closeTo(Math.min(...xs), 9), expect.closeTo(Math.max(...xs), 9)]);
  }
});

test('the parts of a usual jig lie clear of each other on their boards, by a slow judge', () => {
  const [{ boards: { placed, board } }] = jigsFor(designOf(ordered(JOBS.alone, { jig: {} }))) as [ReturnType<typeof jigsFor>[number]];
  for (const [i, one] of placed.entries()) for (const other of placed.slice(i + 1)) {
    if (one.sheet === other.sheet) expect([one.part.name, other.part.name, apart(laid(one).outline, laid(other).outline, 1) > board.apart - 0.02]).toEqual([one.part.name, other.part.name, true]);
  }
});

test('letters of a rail say nothing of a bush that cannot be', () => {
  const words = (jig: NonNullable<Raw['jig']>): string => { const order = ordered(JOBS.pair, { jig }).making.jig!; return edgeWords(order, order.bush, partsOf(designOf(JOBS.pair).shoes[0]!)!.shape).join('; '); };
  expect([words({}), words({ bush: BUSH })]).toEqual([expect.stringContaining('foam is cut 2 mm lower'), expect.not.stringContaining('lower')]);
  expect([words({ bush: BUSH }), words({ face: 'foam body', bush: BUSH })]).toEqual([expect.stringContaining('foam cut here stands 2 mm too high'), expect.not.stringContaining('too high')]);
});

describe('findings name what works', () => {
  const LONG = { diameter: 12, reach: 200 }, found = (making: Raw, fitting: Fitting = JOBS.pair) => makingFindings(designOf(ordered(fitting, { tool: LONG, ...making })));
  const codes = (making: Raw): string[] => found(making).map(({ code }) => code);
  const MEASURED = { thickness: 6 };

  test('none on an ordinary jig of a measured board; without a jig none at all', () => {
    expect(codes({ jig: {}, board: MEASURED })).toEqual([]);
    expect(codes({ board: { kerf: 15 } })).toEqual([]);
  });
  test('a board that nobody measured', () => expect(codes({ jig: {} })).toEqual(['BOARD_NOT_MEASURED']));
  test('a cut wider than the slots', () => {
    const [finding] = found({ jig: {}, board: { ...MEASURED, kerf: 8 } });
    expect(finding).toMatchObject({ code: 'KERF_WIDER_THAN_SLOT', severity: 'stop', measured: 8, limit: 6.09 });
    expect(finding!.text).toContain('a cutter of 3.00 mm');
    expect(codes({ jig: {}, board: { ...MEASURED, kerf: 3 } })).toEqual([]);
    const [stout] = found({ jig: {}, board: { ...MEASURED, kerf: finding!.limit! } });
    expect(stout).toMatchObject({ code: 'KERF_OF_CUTTER', severity: 'note', limit: 3 });
  });
  test('a board too thin for what runs on its rails', () => {
    const thin = (thickness: number, jig: NonNullable<Raw['jig']>) => found({ jig: { face: 'foam body', ...jig }, board: { thickness } });
    for (const [jig, least] of [[{}, 3], [{ bush: BUSH }, 4]] as const) {
      expect(thin(1, jig)[0]).toMatchObject({ code: 'JIG_BOARD_THIN', severity: 'warn', measured: 1, limit: least });
      expect(thin(least, jig).map(({ code }) => code)).toEqual([]);
    }
  });
  test('the cutter on the sheet is that of a block or of nothing else that is ordered', () => {
    const short = { diameter: 12, reach: 10 };
    const told = (making: Raw): boolean => designOf(ordered(JOBS.pair, making)).findings.some(({ code }) => code === 'TOOL_REACH');
    expect([told({ tool: short }), told({ tool: short, jig: {}, board: MEASURED }), told({ tool: short, jig: {}, board: MEASURED, card: { way: 'router block' } })]).toEqual([true, false, true]);
  });
  test('a bush its cutter does not go through, and the two swapped', () => {
    const face = 'foam body' as const, [finding] = found({ jig: { face, bush: { diameter: 12, cutter: 17 } }, board: MEASURED });
    expect(finding).toMatchObject({ code: 'BUSH_TOO_SMALL', severity: 'stop' });
    expect(finding!.text).toContain('a bush of 17.0 mm with a cutter of 12.0 mm works: the rails then lie 2.5 mm inside');
    expect(codes({ jig: { face, bush: BUSH }, board: MEASURED })).toEqual([]);
    const tight: Fitting = { ...JOBS.alone, shoes: { right: { ...JOBS.alone.shoes.right!, order: { ...JOBS.alone.shoes.right!.order, toe: { rule: 'given', radius: 50, endAngle: 0.4 } } as never } } };
    // Swapped the rails would lie 49 mm inside an arc of 50.
    expect(found({ jig: { face, bush: { diameter: 2, cutter: 100 } }, board: MEASURED }, tight)[0]!.text).not.toContain('swapped');
    expect(codes({ jig: { bush: BUSH }, board: MEASURED })).toEqual(['OUTSOLE_ON_TOP', 'OUTSOLE_ON_TOP']);
  });
  test('a cutter that does not come to the middle of the shoe from both sides, and the two ways that do', () => {
    const jig = { face: 'foam body', bush: BUSH } as const, reached = (reach: number, order: Raw['jig'] = jig) => found({ jig: order, board: MEASURED, tool: { diameter: 12, reach } }).filter(({ code }) => code === 'JIG_REACH');
    const [short] = reached(60), needed = Number(/one that reaches (\d+) mm/.exec(short!.text)![1]);
    // Plain sum along the drawing: from the outer end of a rib, by the points of its outline, to half way between the rails, and 3 mm over.
    const { jig: { frame, parts } } = casesOf(JOBS.pair, { jig, board: MEASURED })[0]!, ends = pointsAlong(parts[0]!.part.outline, 1).map(([y]) => y), middle = (frame.railsAt[0] + frame.railsAt[1]) / 2;
    expect(reached(60)).toHaveLength(2);
    expect(short).toMatchObject({ severity: 'warn', measured: 60, limit: expect.closeTo(middle - Math.min(...ends) + 3, 6) });
    expect(Math.max(...ends) - middle + 3).toBeCloseTo(short!.limit!, 6);
    expect(reached(Math.max(needed, ...reached(60).map(({ limit }) => Math.ceil(limit!))))).toEqual([]);
    expect(reached(60, { face: 'foam body' })).toEqual([]);
    // Where no cutter is on the sheet it is told all the same how far one must reach.
    const [none] = makingFindings(designOf(ordered(JOBS.pair, { jig, board: MEASURED }))).filter(({ code }) => code === 'JIG_REACH');
    expect([none!.measured, none!.limit, none!.text.includes(`one that reaches ${needed} mm`)]).toEqual([undefined, short!.limit, true]);
  });
  test('a bush too wide for the tightest arc, and the widest that works', () => {
    const tight: Fitting = { ...JOBS.alone, shoes: { right: { ...JOBS.alone.shoes.right!, order: { ...JOBS.alone.shoes.right!.order, toe: { rule: 'given', radius: 60, endAngle: 0.4 } } as never } } };
    const wide = (diameter: number) => found({ jig: { face: 'foam body', bush: { diameter, cutter: 2 } }, board: MEASURED }, tight), [finding] = wide(120);
    expect(finding).toMatchObject({ code: 'BUSH_TOO_LARGE', severity: 'stop', limit: 2 + 2 * (60 - 2 - 5) });
    expect(wide(finding!.limit!)).toEqual([]);
  });
  test('ribs closer than the board is thick, and a board too small', () => {
    expect(found({ jig: { ribsApart: 12 }, board: MEASURED })[0]).toMatchObject({ code: 'RIBS_TOO_CLOSE', severity: 'warn', limit: 16.1 });
    const closer = (ribsApart: number) => found({ jig: { ribsApart }, board: { ...MEASURED, thickness: 6.03 } });
    const named = Number(/about (\S+) mm apart/.exec(closer(12)[0]!.text)![1]);
    expect([closer(named), closer(named - 0.1).map(({ code }) => code)]).toEqual([[], ['RIBS_TOO_CLOSE']]);
    const [small] = found({ jig: {}, board: { ...MEASURED, length: 300, width: 250 } });
    expect(small).toMatchObject({ code: 'BEYOND_BOARD', severity: 'warn', measured: 300 });
    expect(small!.text).toMatch(/has no room for this: rail, outer side\. All parts of the jig are laid/);
    const left = found({ jig: {}, board: { ...MEASURED, length: Math.max(...found({ jig: {}, board: { ...MEASURED, length: 300, width: 250 } }).map(({ limit }) => limit!)), width: 250 } });
    expect(left).toEqual([]);
  });
});

test('an odd order still makes a jig that holds together, and every part has one closed line to cut', () => {
  const odd: readonly Raw[] = [
    { jig: { ribsApart: 10, room: 60, depth: 400 }, board: { thickness: 50, clearance: 2 } }, { jig: { ribsApart: 150, room: 2, depth: 20 }, board: { thickness: 0.5, clearance: 0, kerf: 0 } },
    { jig: { bush: { diameter: 5, cutter: 90 } }, board: { kerf: 6.2 } }, { jig: { bush: { diameter: 100, cutter: 1 }, face: 'foam body' }, board: { kerf: 6.09 } },
  ];
  for (const making of odd) {
    const { jig, fitting } = casesOf(JOBS.turned, making)[1]!;
    expect(faultsOf(jigSolid(jig, fitting.making.board.thickness, 0.5))).toEqual([]);
    for (const part of [...jig.parts.slice(0, 3), ...jig.parts.slice(-4)]) expect(asCut(part, fitting).chains('CUT_OUT')).toHaveLength(1);
  }
});

import { spawnSync } from 'node:child_process';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dxfText, onLayer, type DxfDrawing, type DxfEntity } from '../../src/exports/dxf.ts';
import { arcThrough, lengthOf, mirroredPath, pointOn, type Path, type PathArc, type PathPiece } from '../../src/geometry/path.ts';
import { distance, type Point } from '../../src/geometry/point.ts';
import { degrees } from '../../src/geometry/units.ts';
import { featherLine } from '../../src/last/outline.ts';
import type { Last } from '../../src/last/last.ts';

const LAST: Last = {
  length: 265, pitch: 18, toeSpring: 12, seatLength: 60, tread: 185, heelBack: 4, camber: 3, ballWidth: 92, heelWidth: 62,
  innerBall: 192, outerBall: 166, toeShape: 'oblique', inflare: 6, insole: 4,
};
const FEATHER = { name: 'FEATHER_LINE', colour: 5, lineType: 'CONTINUOUS' } as const;
const MIDDLE = { name: 'MIDDLE_LINE', colour: 1, lineType: 'CENTER' } as const;
const SEED = 20250301;

const drawn = (...pieces: PathPiece[]): string => dxfText({ layers: [FEATHER], entities: onLayer(FEATHER.name, pieces) });
const arc = (centre: Point, radius: number, start: number, sweep: number): PathArc => ({ kind: 'arc', centre, radius, start, sweep });
const SHEET: DxfDrawing = {
  layers: [FEATHER, MIDDLE],
  entities: [
    ...onLayer('FEATHER_LINE', featherLine(LAST)),
    ...onLayer('MIDDLE_LINE', [{ kind: 'line', from: [0, 0], to: [265, -6] }]),
    { kind: 'point', layer: 'MIDDLE_LINE', at: [185, 0] },
    { kind: 'text', layer: 'FEATHER_LINE', at: [60, 0], height: 5, text: 'left – Größe 42' },
  ],
};

/* A reader of its own: pairs, then objects that begin at code 0. */
type Pair = readonly [code: number, value: string];
interface Read { readonly type: string; readonly section: string; readonly pairs: readonly Pair[] }

function pairsOf(text: string): Pair[] {
  const lines = text.split('\r\n');
  expect(lines.pop()).toBe('');
  expect(lines.length % 2).toBe(0);
  return Array.from({ length: lines.length / 2 }, (_, i): Pair => {
    expect(lines[2 * i]).toMatch(/^ *\d+$/);
    return [Number(lines[2 * i]), lines[2 * i + 1]!];
  });
}
function objectsOf(text: string): Read[] {
  const found: { type: string; section: string; pairs: Pair[] }[] = [];
  let section = '';
  pairsOf(text).forEach(([code, value], i, all) => {
    if (code === 0) {
      if (value === 'SECTION') section = all[i + 1]![1];
      found.push({ type: value, section, pairs: [] });
    } else found.at(-1)!.pairs.push([code, value]);
  });
  return found;
}
const all = ({ pairs }: Read, code: number): string[] => pairs.filter(([c]) => c === code).map(([, value]) => value);
const real = (object: Read, code: number): number => Number(all(object, code)[0]);
const entitiesOf = (text: string): Read[] =>
  objectsOf(text).filter(({ section, type }) => section === 'ENTITIES' && type !== 'SECTION' && type !== 'ENDSEC' && type !== 'EOF');
function headerOf(text: string, name: string): number[] {
  const pairs = objectsOf(text)[0]!.pairs, from = pairs.findIndex(([code, value]) => code === 9 && value === name);
  expect(from).toBeGreaterThanOrEqual(0);
  const to = pairs.findIndex(([code], i) => i > from && code === 9);
  return pairs.slice(from + 1, to < 0 ? undefined : to).map(([code, value]) => (code === 5 ? parseInt(value, 16) : Number(value)));
}
const handleOf = (object: Read): string | undefined => all(object, object.type === 'DIMSTYLE' ? 105 : 5)[0];

/** Where an arc of the file is, a share of the way from its start angle, always turning left. */
function onArc(object: Read, share: number): Point {
  const start = real(object, 50), end = real(object, 51), turn = (((end - start) % 360) + 360) % 360;
  const angle = ((start + turn * share) * Math.PI) / 180;
  return [real(object, 10) + real(object, 40) * Math.cos(angle), real(object, 20) + real(object, 40) * Math.sin(angle)];
}
function endsOf(object: Read): [Point, Point] {
  if (object.type === 'LINE') return [[real(object, 10), real(object, 20)], [real(object, 11), real(object, 21)]];
  return [onArc(object, 0), onArc(object, 1)];
}
/** The widest gap of a closed chain, by the nearest other end to each end. */
function widestGap(text: string): number {
  const ends = entitiesOf(text).filter(({ type }) => type === 'ARC' || type === 'LINE').flatMap(endsOf);
  return Math.max(...ends.map((end, i) => Math.min(...ends.filter((_, j) => j !== i).map((other) => distance(end, other)))));
}
/** The file as it would be with fewer decimals. */
const roundedTo = (places: number, text: string): string =>
  text.replace(/^-?\d+\.\d+$/gm, (number) => Number(number).toFixed(places));

describe('a complete R2000 file', () => {
  const text = dxfText(SHEET), objects = objectsOf(text);

  test('only ASCII, sections in order, every one closed, EOF last', () => {
    expect(text).toMatch(/^[\r\n -~]*$/);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    const frame = objects.filter(({ type }) => type === 'SECTION').map((object) => all(object, 2)[0]);
    // ezdxf documentation, "DXF File Structure"
    expect(frame).toEqual(['HEADER', 'CLASSES', 'TABLES', 'BLOCKS', 'ENTITIES', 'OBJECTS']);
    expect(objects.filter(({ type }) => type === 'ENDSEC')).toHaveLength(6);
    expect(objects.at(-1)!.type).toBe('EOF');
    expect(text).toContain('$ACADVER\r\n  1\r\nAC1015\r\n');
    expect([headerOf(text, '$INSUNITS'), headerOf(text, '$MEASUREMENT')]).toEqual([[4], [1]]);
  });

  test('all nine tables with the entries every file needs', () => {
    const tables = objects.filter(({ type }) => type === 'TABLE');
    expect(tables.map((object) => all(object, 2)[0])).toEqual(
      ['VPORT', 'LTYPE', 'LAYER', 'STYLE', 'VIEW', 'UCS', 'APPID', 'DIMSTYLE', 'BLOCK_RECORD']);
    const names = (kind: string): string[] =>
      objects.filter(({ type, section }) => section === 'TABLES' && type === kind).map((object) => all(object, 2)[0]!);
    expect(names('LTYPE')).toEqual(['BYBLOCK', 'BYLAYER', 'CONTINUOUS', 'CENTER']);
    expect(names('LAYER')).toEqual(['0', 'FEATHER_LINE', 'MIDDLE_LINE']);
    expect([names('STYLE'), names('APPID'), names('DIMSTYLE')]).toEqual([['STANDARD'], ['ACAD'], ['STANDARD']]);
    expect(names('BLOCK_RECORD')).toEqual(['*MODEL_SPACE', '*PAPER_SPACE']);
    tables.forEach((object) => expect(real(object, 70)).toBe(names(all(object, 2)[0]!).length));
    expect(objects.filter(({ type }) => type === 'BLOCK')).toHaveLength(2);
  });

  test('handles differ, owners exist, the next free handle is larger than all', () => {
    const bearing = objects.filter(({ type }) => !['SECTION', 'ENDSEC', 'ENDTAB', 'EOF'].includes(type));
    const handles = bearing.map((object) => handleOf(object) ?? '');
    handles.forEach((handle) => expect(handle).toMatch(/^[1-9A-F][0-9A-F]*$/));
    expect(new Set(handles).size).toBe(bearing.length);
    for (const object of bearing) {
      const owner = all(object, 330)[0];
      expect(owner === '0' ? ['TABLE', 'DICTIONARY'].includes(object.type) : handles.includes(owner!)).toBe(true);
    }
    expect(Math.max(...handles.map((handle) => parseInt(handle, 16)))).toBeLessThan(headerOf(text, '$HANDSEED')[0]!);
    const record = objects.find(({ type, pairs }) => type === 'BLOCK_RECORD' && pairs.some(([, value]) => value === '*MODEL_SPACE'))!;
    entitiesOf(text).forEach((entity) => expect(all(entity, 330)).toEqual([handleOf(record)]));
  });

  test('only arcs, lines, letters and points; layer and line type are declared', () => {
    expect(new Set(entitiesOf(text).map(({ type }) => type))).toEqual(new Set(['ARC', 'LINE', 'TEXT', 'POINT']));
    expect(entitiesOf(text)).toHaveLength(SHEET.entities.length);
    expect(entitiesOf(text).map((entity) => all(entity, 8)[0])).toEqual(SHEET.entities.map(({ layer }) => layer));
    expect(entitiesOf(text).flatMap((entity) => all(entity, 1))).toEqual(['left \\U+2013 Gr\\U+00F6\\U+00DFe 42']);
  });

  test('numbers are plain, with at least 12 decimals in coordinates, radii and angles, and never minus nought', () => {
    const tiny = drawn({ kind: 'line', from: [-1e-15, -0], to: [1e-7, 123456.5] }, arc([-1e-16, 0], 5, -1e-16, 1), arc([0, 0], 5, 1, -1));
    for (const file of [text, tiny]) {
      const numbers = entitiesOf(file).flatMap(({ pairs }) => pairs.filter(([code]) => code >= 10 && code < 60));
      numbers.forEach(([, value]) => expect(value).toMatch(/^-?\d+\.\d{12,}$/));
      expect(file).not.toMatch(/^-0\.0+\r$/m);
    }
    expect(entitiesOf(tiny).filter(({ type }) => type === 'ARC').map((object) => all(object, 50)[0])).toEqual(['0.0000000000000', '0.0000000000000']);
  });

  test('the same drawing gives the same text', () => expect(dxfText(structuredClone(SHEET))).toBe(text));
});

describe('arcs', () => {
  const arcs = fc.record({
    centre: fc.tuple(fc.double({ min: -400, max: 400, noNaN: true }), fc.double({ min: -400, max: 400, noNaN: true })),
    radius: fc.double({ min: 0.5, max: 2000, noNaN: true }),
    start: fc.double({ min: -15, max: 15, noNaN: true }),
    sweep: fc.tuple(fc.double({ min: 0.001, max: 6.28, noNaN: true }), fc.boolean()).map(([size, left]) => (left ? size : -size)),
  });

  test('left- and right-turning arcs of all quadrants read back with the same ends and middle', () => {
    fc.assert(fc.property(arcs, ({ centre, radius, start, sweep }) => {
      const piece = arc(centre, radius, start, sweep), read = entitiesOf(drawn(piece))[0]!;
      for (const share of [0, 0.5, 1])
        expect(distance(onArc(read, share), pointOn(piece, sweep > 0 ? share : 1 - share))).toBeLessThan(1e-9);
      for (const code of [50, 51]) {
        expect(real(read, code)).toBeGreaterThanOrEqual(0);
        expect(real(read, code)).toBeLessThan(360);
      }
    }), { seed: SEED, numRuns: 400 });
  });

  test('an arc with its angles swapped fails that check', () => {
    const piece = arc([0, 0], 85, 0.2, 1), text = drawn(piece), read = entitiesOf(text)[0]!;
    const swapped = { ...read, pairs: read.pairs.map(([code, value]): Pair => [code === 50 ? 51 : code === 51 ? 50 : code, value]) };
    expect(distance(onArc(swapped, 0.5), pointOn(piece, 0.5))).toBeGreaterThan(100);
  });

  // ezdxf documentation and its test_601_bulge: bulge = rise / half chord; the last row is worked out from the same definition.
  test.each([
    { radius: 5, chord: 10, turn: 180, bulge: 1 },
    { radius: 6.25, chord: 10, turn: 106.26020471, bulge: 0.5 },
    { radius: 900, chord: 120, turn: 7.6451, bulge: 0.0333705 },
  ])('radius $radius over a chord of $chord turns $turn degrees, bulge $bulge', ({ radius, chord, turn, bulge }) => {
    const rise = radius - Math.sqrt(radius ** 2 - (chord / 2) ** 2);
    const half = Math.atan2(chord / 2, radius - rise), leaving: Point = [Math.cos(half), -Math.sin(half)];
    const read = entitiesOf(drawn(arcThrough([0, 0], leaving, [chord, 0])))[0]!;
    const [a, b] = endsOf(read), middle = onArc(read, 0.5);
    expect(real(read, 40)).toBeCloseTo(radius, 9);
    expect(distance(a, b)).toBeCloseTo(chord, 9);
    expect((((real(read, 51) - real(read, 50)) % 360) + 360) % 360).toBeCloseTo(turn, 4);
    expect(distance(middle, [chord / 2, 0]) / (chord / 2)).toBeCloseTo(bulge, 7);
    // Turning left from the origin along +x, the arc lies to the right of its chord.
    expect(middle[1]).toBeLessThan(0);
  });

  test('a half turn to the right from (0, 0) to (1, 0) has its centre at (0.5, 0) and runs from 0 to 180 degrees', () => {
    const read = entitiesOf(drawn(arcThrough([0, 0], [0, 1], [1, 0])))[0]!;
    [[10, 0.5], [20, 0], [40, 0.5], [50, 0], [51, 180]].forEach(([code, value]) => expect(real(read, code!)).toBeCloseTo(value!, 11));
  });

  test.each(['round', 'pointed', 'square', 'oblique'] as const)('a %s feather line closes within 1e-9 mm, on both feet', (toeShape) => {
    const path: Path = featherLine({ ...LAST, toeShape });
    for (const side of [path, mirroredPath(path)]) {
      const text = drawn(...side);
      expect(widestGap(text)).toBeLessThan(1e-9);
      expect(entitiesOf(text)).toHaveLength(path.length);
    }
    expect(widestGap(roundedTo(6, drawn(...path)))).toBeGreaterThan(1e-7);
  });
});

describe('extents', () => {
  /** Slow judge: walk along every piece in small steps. */
  function walked(pieces: readonly PathPiece[]): { box: number[]; slack: number } {
    const steps = 2000, points = pieces.flatMap((piece) => Array.from({ length: steps + 1 }, (_, i) => pointOn(piece, i / steps)));
    const xs = points.map(([x]) => x), ys = points.map(([, y]) => y);
    const slack = Math.max(...pieces.map((piece) => piece.kind === 'arc' ? (lengthOf(piece) / steps) ** 2 / (8 * piece.radius) : 0)) + 1e-9;
    return { box: [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)], slack };
  }
  const boxIn = (text: string): number[] => [...headerOf(text, '$EXTMIN').slice(0, 2), ...headerOf(text, '$EXTMAX').slice(0, 2)];

  test('take in the bellies of arcs, whichever way and from wherever they run', () => {
    fc.assert(fc.property(fc.double({ min: -9, max: 9, noNaN: true }), fc.double({ min: 0.05, max: 6.2, noNaN: true }), fc.boolean(), (start, size, left) => {
      const pieces = [arc([12, -7], 85, start, left ? size : -size)], { box, slack } = walked(pieces);
      boxIn(drawn(...pieces)).forEach((value, i) => {
        const beyond = i < 2 ? box[i]! - value : value - box[i]!;
        expect(beyond).toBeGreaterThanOrEqual(-1e-9);
        expect(beyond).toBeLessThanOrEqual(slack);
      });
    }), { seed: SEED, numRuns: 100 });
  });

  test('a half circle over its chord reaches its full height', () =>
    expect(boxIn(drawn(arc([0, 0], 10, 0, Math.PI))).map((value) => Math.round(value * 1e9) / 1e9)).toEqual([-10, 0, 10, 10]));

  test('points count; letters only where there is nothing else', () => {
    const letters: DxfEntity = { kind: 'text', layer: '0', at: [500, 600], height: 5, text: 'A' };
    const point: DxfEntity = { kind: 'point', layer: '0', at: [-3, 4] };
    expect(boxIn(dxfText({ layers: [], entities: [letters, point] }))).toEqual([-3, 4, -3, 4]);
    expect(boxIn(dxfText({ layers: [], entities: [letters] }))).toEqual([500, 600, 500, 600]);
  });
});

describe('refused with the value', () => {
  const line = (from: Point, to: Point): PathPiece => ({ kind: 'line', from, to });
  const named = (name: string, colour = 7) => () =>
    dxfText({ layers: [{ name, colour, lineType: 'CONTINUOUS' }], entities: [{ kind: 'point', layer: name, at: [0, 0] }] });
  const lettered = (text: string, height = 5) => () => dxfText({ layers: [], entities: [{ kind: 'text', layer: '0', at: [0, 0], height, text }] });

  test.each<[string, () => string, RegExp]>([
    ['an empty drawing', () => dxfText({ layers: [FEATHER], entities: [] }), /got 0/],
    ['a name with a forbidden sign', named('HEEL<TOE'), /"HEEL<TOE"/],
    ['a name in small letters', named('heel'), /"heel"/],
    ['an empty name', named(''), /""/],
    ['the layer that is always there', named('0'), /"0"/],
    ['a layer declared twice', () => dxfText({ layers: [FEATHER, FEATHER], entities: onLayer('FEATHER_LINE', featherLine(LAST)) }), /"FEATHER_LINE" again/],
    ['an undeclared layer', () => dxfText({ layers: [FEATHER], entities: onLayer('EDGE', featherLine(LAST)) }), /"EDGE"/],
    ['a colour outside the index', named('HEEL', 256), /256/],
    ['a line without length', () => drawn(line([3, 4], [3, 4])), /got 0 mm/],
    ['an arc without length', () => drawn(arc([0, 0], 85, 1, 0)), /got 0 mm/],
    ['an arc without a radius', () => drawn(arc([0, 0], -85, 1, 1)), /got -85 mm/],
    ['a full circle', () => drawn(arc([0, 0], 85, 1, 2 * Math.PI)), /360/],
    ['more than a full turn to the right', () => drawn(arc([0, 0], 85, 1, degrees(-400))), /-400/],
    ['a coordinate that is no number', () => drawn(arc([NaN, 0], 85, 1, 1)), /NaN/],
    ['an endless line', () => drawn(line([0, 0], [Infinity, 0])), /Infinity/],
    ['an angle that is no number', () => drawn(arc([0, 0], 85, NaN, 1)), /NaN/],
    ['a number that would need an exponent', () => drawn(line([0, 0], [1e22, 0])), /1e\+22/],
    ['letters over two lines', lettered('left\nright'), /left\\nright/],
    ['no letters', lettered(''), /""/],
    ['letters without height', lettered('left', 0), /got 0 mm/],
  ])('%s', (_, act, message) => {
    expect(act).toThrow(RangeError);
    expect(act).toThrow(message);
  });
});

/* ezdxf reads the file, says how many faults it found, and tells what it read. */
const PYTHON = '/usr/bin/python3';
const SCRIPT = `
import sys, io, json, logging, ezdxf
logging.disable(logging.CRITICAL)
doc = ezdxf.read(io.StringIO(sys.stdin.read(), newline=None))
audit = doc.audit()
print(json.dumps({'faults': len(audit.errors) + len(audit.fixes), 'version': doc.dxfversion, 'units': doc.units,
  'ends': [[e.start_point.x, e.start_point.y, e.end_point.x, e.end_point.y] for e in doc.modelspace().query('ARC')],
  'texts': [ezdxf.decode_dxf_unicode(e.dxf.text) for e in doc.modelspace().query('TEXT')]}))`;
const hasEzdxf = spawnSync(PYTHON, ['-c', 'import ezdxf']).status === 0;
if (!hasEzdxf) console.log('ezdxf is not installed: its audit of the DXF file is skipped.');
const audited = (text: string): { faults: number; version: string; units: number; ends: number[][]; texts: string[] } =>
  JSON.parse(spawnSync(PYTHON, ['-c', SCRIPT], { input: text, encoding: 'utf8' }).stdout);

test.skipIf(!hasEzdxf)('ezdxf finds no fault and reads the same arcs and letters', () => {
  const found = audited(dxfText(SHEET));
  expect(found).toMatchObject({ faults: 0, version: 'AC1015', units: 4, texts: ['left – Größe 42'] });
  const ours = SHEET.entities.filter((entity) => entity.kind === 'piece').map(({ piece }) => piece).filter(({ kind }) => kind === 'arc') as PathArc[];
  expect(found.ends).toHaveLength(ours.length);
  ours.forEach((piece, i) => {
    const [ax, ay, bx, by] = found.ends[i] as [number, number, number, number];
    expect(distance([ax, ay], pointOn(piece, piece.sweep > 0 ? 0 : 1))).toBeLessThan(1e-9);
    expect(distance([bx, by], pointOn(piece, piece.sweep > 0 ? 1 : 0))).toBeLessThan(1e-9);
  });
});

test.skipIf(!hasEzdxf)('that audit does find a handle used twice', () => {
  const text = dxfText(SHEET), [first, second] = entitiesOf(text);
  const twice = text.replace(`ARC\r\n  5\r\n${handleOf(second!)}\r\n`, `ARC\r\n  5\r\n${handleOf(first!)}\r\n`);
  expect(audited(twice).faults).toBeGreaterThan(0);
});

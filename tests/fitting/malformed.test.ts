import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readSheet, SHEET_MAX_BYTES } from '../../src/fitting/readSheet.ts';
import { changed, faultsIn, freeSheet, lockedSheet, pairSheet, prostheticSheet, type Json } from './sheets.ts';

// Slips people make, and hostile files. Limits named in the rules: half the smallest and 1.5 times the largest person of
// ANSUR II (2012 US Army survey, Gordon et al. 2014), or the usual ranges of the trade; the rest is the sheet's own rules.

type Expected = readonly [path: string, rule: RegExp];

const folder = new URL('../cases/sheets/', import.meta.url);
const fromFile = (name: string): string => readFileSync(new URL(name, folder), 'utf8');

const FILES: Record<string, Expected> = {
  'comma-decimal.json': ['sheet', /JSON \(line 5, column 81: .*decimal point, not a comma/],
  'comma-decimal-in-quotes.json': ['left.foot.length', /must be a length in mm/],
  'nan.json': ['sheet', /NaN and Infinity are no numbers/],
  'infinity.json': ['sheet', /NaN and Infinity are no numbers/],
  'too-large-number.json': ['left.foot.length', /number of ordinary size/],
  'unit-after-number.json': ['sheet', /without its unit/],
  'leading-zero.json': ['sheet', /no zeros in front/],
  'single-quotes.json': ['sheet', /straight double quotes/],
  'number-in-quotes.json': ['wearer.mass', /must be a mass in kg/],
  'null-measure.json': ['left.foot.length', /must be a length in mm/],
  'trailing-comma.json': ['sheet', /comma stands before the closing bracket/],
  'comment.json': ['sheet', /no comments/],
  'cut-off.json': ['sheet', /ends too early/],
  'field-twice.json': ['left.foot.pivotHeight', /only once/],
  'empty.json': ['sheet', /fitting sheet in JSON/],
  'blank.json': ['sheet', /fitting sheet in JSON/],
  'list.json': ['sheet', /group of fields/],
  'null.json': ['sheet', /group of fields/],
  'text.json': ['sheet', /group of fields/],
  'number.json': ['sheet', /group of fields/],
  'not-json.json': ['sheet', /JSON \(line 1, column 1: /],
  'other-format.json': ['sheet', /JSON \(line 1, column 1: /],
  'two-sheets.json': ['sheet', /something follows/],
  'deep.json': ['sheet', /more than 16 deep/],
};

describe('text that is no sheet', () => {
  test('every file of the folder is judged here, and the same sheet without a slip reads', () => {
    const files = readdirSync(folder).filter((name) => name.endsWith('.json'));
    expect(files.toSorted()).toEqual([...Object.keys(FILES), 'good.json', 'byte-order-mark.json'].toSorted());
    for (const name of ['good.json', 'byte-order-mark.json']) expect(readSheet(fromFile(name)).ok).toBe(true);
  });

  test.each(Object.entries(FILES))('%s', (name, [path, rule]) => {
    expect(faultsIn(fromFile(name))).toContainEqual(expect.objectContaining({ path, rule: expect.stringMatching(rule) }));
  });

  test('a text of 3 MB is refused before it is looked at', () => {
    expect(faultsIn('{"version":1,"note":"'.padEnd(3_000_000, 'x'))).toEqual([expect.objectContaining({ path: 'sheet', value: '3000000', rule: `must be at most ${SHEET_MAX_BYTES} bytes of text` })]);
    expect(faultsIn('"'.padEnd(1_000_000, 'é'))[0]!.rule).toMatch(/must be JSON/);
    expect(faultsIn('"'.padEnd(1_500_000, 'é'))[0]!.rule).toMatch(/bytes/);   // two bytes a letter
  });

  test.each(['{"a":'.repeat(200_000), '['.repeat(1_000_000), '[1,'.repeat(300_000), `[${'1,'.repeat(900_000)}1]`, '"'.padEnd(1_999_999, '\\')])('a hostile text is refused, not crashed on', (text) => {
    expect(faultsIn(text)[0]!.rule).toMatch(/must be JSON/);
  });
});

const cm = (sheet: Json, place: string, mm: number): Json => changed(sheet, { [place]: mm / 10 });

const TABLE: Record<string, readonly [Json, ...Expected[]]> = {
  'wrong version': [changed(lockedSheet(), { version: 2 }), ['version', /must be 1: sheets of version 1 are read/]],
  'version as text': [changed(lockedSheet(), { version: '1' }), ['version', /must be 1/]],
  'no version': [changed(lockedSheet(), { version: undefined }), ['version', /must be given: 1/]],
  'wrong schema name': [changed(lockedSheet(), { $schema: 'urn:other' }), ['$schema', /urn:rockerbench:fitting-sheet:1/]],
  'units missing': [changed(lockedSheet(), { units: undefined }), ['units', /must be given: one of: mm, in/]],
  'units in cm': [changed(lockedSheet(), { units: 'cm' }), ['units', /one of: mm, in/]],
  'job missing': [changed(lockedSheet(), { job: undefined }), ['job', /must be given: a group of fields/]],
  'reference climbs out of its folder': [changed(lockedSheet(), { 'job.reference': '../../etc/passwd' }), ['job.reference', /letters, digits/]],
  'two dots inside the reference': [changed(lockedSheet(), { 'job.reference': 'K..204' }), ['job.reference', /no two dots together/]],
  'reference with a slash': [changed(lockedSheet(), { 'job.reference': 'K/204' }), ['job.reference', /letters, digits/]],
  'reference with a line end': [changed(lockedSheet(), { 'job.reference': 'K-204\n' }), ['job.reference', /letters, digits/]],
  'reference of 41 letters': [changed(lockedSheet(), { 'job.reference': 'K'.repeat(41) }), ['job.reference', /1 to 40 characters/]],
  'day that does not exist': [changed(lockedSheet(), { 'job.date': '2026-02-29' }), ['job.date', /real date/]],
  'day first': [changed(lockedSheet(), { 'job.date': '11-03-2026' }), ['job.date', /real date/]],
  'date with time': [changed(lockedSheet(), { 'job.prescribed': '2026-03-11T10:00' }), ['job.prescribed', /real date/]],
  'line break in a name': [changed(lockedSheet(), { 'job.maker': 'A\nB' }), ['job.maker', /without control marks/]],
  'mark that turns the line round': [changed(lockedSheet(), { 'job.maker': 'A\u202eB' }), ['job.maker', /without control marks/]],
  'blank name': [changed(lockedSheet(), { 'job.maker': '  ' }), ['job.maker', /1 to 80 characters/]],
  'endless note': [changed(lockedSheet(), { 'job.note': 'x'.repeat(501) }), ['job.note', /1 to 500 characters/]],
  'mass in quotes': [changed(lockedSheet(), { 'wearer.mass': '78' }), ['wearer.mass', /mass in kg/]],
  'negative mass': [changed(lockedSheet(), { 'wearer.mass': -78 }), ['wearer.mass', /17\.9 to 216\.3 kg/]],
  'leg difference not stated': [changed(lockedSheet(), { 'wearer.legDifference': undefined }), ['wearer.legDifference', /must be given/]],
  'difference without its side': [changed(lockedSheet(), { 'wearer.legDifference': { correct: 8, found: 'blocks' } }), ['wearer.legDifference.shorter', /must be given where a difference/]],
  'difference though none was found': [changed(lockedSheet(), { 'wearer.legDifference': { correct: 8, shorter: 'left', found: 'none found' } }), ['wearer.legDifference.correct', /must be 0/]],
  'difference found in a way of one\'s own': [changed(lockedSheet(), { 'wearer.legDifference': { correct: 8, shorter: 'left', found: 'by eye' } }), ['wearer.legDifference.found', /blocks, x-ray, tape, prescription, none found/]],
  'difference not found and without its side': [changed(lockedSheet(), { 'wearer.legDifference': { correct: 8 } }), ['wearer.legDifference.found', /must be given/], ['wearer.legDifference.shorter', /must be given where a difference/]],
  'difference that cannot be and without its side': [changed(lockedSheet(), { 'wearer.legDifference': { correct: '8', found: 'blocks' } }), ['wearer.legDifference.correct', /a length in mm/], ['wearer.legDifference.shorter', /must be given where a difference/]],
  'negative difference': [changed(lockedSheet(), { 'wearer.legDifference': { correct: -8, shorter: 'left', found: 'blocks' } }), ['wearer.legDifference.correct', /0 to 100 mm/]],
  'unknown risk': [changed(lockedSheet(), { 'wearer.risks': ['open wound', 'driving'] }), ['wearer.risks[1]', /one of: reduced feeling/]],
  'risks not a list': [changed(lockedSheet(), { 'wearer.risks': 'open wound' }), ['wearer.risks', /list of risks/]],
  'no shoe': [changed(lockedSheet(), { left: undefined }), ['left', /must be given, or right/]],
  'shoe as text': [changed(lockedSheet(), { left: 'size 42' }), ['left', /group of fields/]],
  'two matches': [changed(pairSheet(), { left: { last: { length: 282 }, order: { kind: 'match', seatHeightNow: 28, ballHeightNow: 12 } } }), ['left.order.kind', /"rocker" on at least one side/]],
  'rocker without a foot': [changed(lockedSheet(), { 'left.foot': undefined }), ['left.foot', /must be given for a rocker/]],
  'order of no kind': [changed(lockedSheet(), { 'left.order': { apex: 62 } }), ['left.order.kind', /must be given/]],
  'order of another kind': [changed(lockedSheet(), { 'left.order': { kind: 'wedge' } }), ['left.order.kind', /kind "rocker" or "match"/]],
  'match without its heights': [changed(pairSheet(), { 'right.order.seatHeightNow': undefined }), ['right.order.seatHeightNow', /must be given: a length/]],
  'match last without a length': [changed(pairSheet(), { 'right.last': {} }), ['right.last.length', /nothing to estimate the last from/]],
  'ball higher than seat': [changed(pairSheet(), { 'right.order.ballHeightNow': 30 }), ['right.order.ballHeightNow', /must not be more than seatHeightNow/]],
  'foot length in cm': [cm(lockedSheet(), 'left.foot.length', 265), ['left.foot.length', /99 to 484\.5 mm/]],
  'foot length in inches': [changed(lockedSheet(), { 'left.foot.length': 10.4 }), ['left.foot.length', /99 to 484\.5 mm/]],
  'hip height in cm': [cm(lockedSheet(), 'left.foot.hipHeight', 890), ['left.foot.hipHeight', /330 to 1643 mm/]],
  'pivot height in cm': [cm(lockedSheet(), 'left.foot.pivotHeight', 78), ['left.foot.pivotHeight', /24 to 147 mm/]],
  'millimetres on a sheet in inches': [changed(lockedSheet(), { units: 'in' }), ['left.foot.length', /3\.898 to 19\.07 in/], ['left.last.tread', / in$/]],
  'mass in pounds': [changed(lockedSheet(), { 'wearer.mass': 241 }), ['wearer.mass', /kg/]],
  'negative length': [changed(lockedSheet(), { 'left.foot.length': -265 }), ['left.foot.length', /99 to 484\.5 mm/]],
  'zero length': [changed(lockedSheet(), { 'left.last.length': 0 }), ['left.last.length', /mm/]],
  'angle in radians would pass, in grads not': [changed(lockedSheet(), { 'left.foot.ankleAngle': 90 }), ['left.foot.ankleAngle', /-45 to 30 °/]],
  'hip and ankle swapped': [changed(lockedSheet(), { 'left.foot.hipHeight': 78, 'left.foot.pivotHeight': 890 }), ['left.foot.hipHeight', /mm/], ['left.foot.pivotHeight', /mm/]],
  'seat and tread swapped': [changed(lockedSheet(), { 'left.last.seatLength': 130, 'left.last.tread': 128 }), ['left.last.seatLength', /less than the tread/]],
  'tread beyond the tip': [changed(lockedSheet(), { 'left.last.tread': 283 }), ['left.last.tread', /less than the length/]],
  'balls swapped': [changed(lockedSheet(), { 'left.foot.ballInner': 167, 'left.foot.ballOuter': 196 }), ['left.foot.ballOuter', /not be more than ballInner/]],
  'ball on the seat': [changed(lockedSheet(), { 'left.foot.ballOuter': 100, 'left.last.seatLength': 104 }), ['left.foot.ballOuter', /at least 129\.8 mm: the ball lies ahead of the seat and of the waist/]],
  'ball on a long seat': [changed(lockedSheet(), { 'left.foot.ballOuter': 135, 'left.last.seatLength': 133, 'left.last.heelBack': 5 }), ['left.foot.ballOuter', /at least 138 mm/]],
  'ball in the waist': [changed(lockedSheet(), { 'left.foot.ballOuter': 105 }), ['left.foot.ballOuter', /at least 129\.8 mm/]],
  'inner ball in the waist': [changed(lockedSheet(), { 'left.foot.ballInner': 132, 'left.foot.ballOuter': 131 }), ['left.foot.ballInner', /at least 135\.4 mm/]],
  'ball beyond the tip': [changed(lockedSheet(), { 'left.foot.ballInner': 290, 'left.last.heelBack': 5 }), ['left.foot.ballInner', /less than 287 mm, where the tip of the last is/]],
  'ball wider than half the last': [changed(lockedSheet(), { 'left.last.ballWidth': 145, 'left.last.heelWidth': 100 }), ['left.last.ballWidth', /at most 141 mm, half the length/]],
  'heel wider than the ball': [changed(lockedSheet(), { 'left.last.ballWidth': 70, 'left.last.heelWidth': 72 }), ['left.last.heelWidth', /35 to 70 mm: half the ball width to all of it/]],
  'heel of a third of the ball': [changed(lockedSheet(), { 'left.last.ballWidth': 95, 'left.last.heelWidth': 32 }), ['left.last.heelWidth', /47\.5 to 95 mm/]],
  'toe set beside the ball': [changed(lockedSheet(), { 'left.last.ballWidth': 60, 'left.last.heelWidth': 50, 'left.last.inflare': -22 }), ['left.last.inflare', /-20 to 20 mm/]],
  'oblique toe set beside the ball': [changed(lockedSheet(), { 'left.last.ballWidth': 90, 'left.last.toeShape': 'oblique', 'left.last.inflare': 19 }), ['left.last.inflare', /-18 to 18 mm/]],
  'last shorter than the foot': [changed(lockedSheet(), { 'left.last.length': 260 }), ['left.last.length', /at least foot length less heelBack, 265 mm/]],
  'pivot ahead of the ball': [changed(lockedSheet(), { 'left.foot.length': 200, 'left.foot.pivotForward': 110, 'left.foot.ballInner': 108, 'left.foot.ballOuter': 104, 'left.last': { length: 215, pitch: 14, toeSpring: 15, seatLength: 50, tread: 154 } }), ['left.foot.pivotForward', /less than the ball length/]],
  'leg too short for its ankle': [changed(lockedSheet(), { 'left.foot.hipHeight': 331, 'left.foot.pivotHeight': 120 }), ['left.foot.hipHeight', /more than 3 times the pivot height/]],
  'pitch missing': [changed(lockedSheet(), { 'left.last.pitch': undefined }), ['left.last.pitch', /rocker follows the last/]],
  'spring missing': [changed(lockedSheet(), { 'left.last.toeSpring': undefined }), ['left.last.toeSpring', /cannot be guessed/]],
  'fixed ankle without an angle': [changed(lockedSheet(), { 'left.foot.ankleAngle': undefined }), ['left.foot.ankleAngle', /1 degree out moves the standing point by a finger's breadth/]],
  'angle and plates': [changed(lockedSheet(), { 'left.foot.heelPlates': { height: 20, span: 200, hipAhead: 60 } }), ['left.foot.heelPlates', /left out where ankleAngle/]],
  'angle and plates that wait': [changed(lockedSheet(), { 'left.foot.heelPlates': { height: null, span: null, hipAhead: null } }), ['left.foot.heelPlates', /left out where ankleAngle/]],
  'plates that wait with a free ankle': [changed(freeSheet(), { 'left.foot.heelPlates': { height: null, span: null, hipAhead: null } }), ['left.foot.heelPlates', /belongs to an ankle that must not bend/]],
  'plates that cannot be': [changed(lockedSheet(), { 'left.foot.ankleAngle': undefined, 'left.foot.heelPlates': { height: 115, span: 80, hipAhead: 20 } }), ['left.foot.heelPlates', /ankle angle of -45 to 30/]],
  'plates without a span': [changed(lockedSheet(), { 'left.foot.ankleAngle': undefined, 'left.foot.heelPlates': { height: 20, hipAhead: 60 } }), ['left.foot.heelPlates.span', /must be given/]],
  'hip ahead with a fixed ankle': [changed(lockedSheet(), { 'left.foot.hipAhead': 60 }), ['left.foot.hipAhead', /belongs to an ankle that is free/]],
  'ankle angle with a free ankle': [changed(freeSheet(), { 'left.foot.ankleAngle': 3 }), ['left.foot.ankleAngle', /belongs to an ankle that must not bend/]],
  'plates with a free ankle': [changed(freeSheet(), { 'left.foot.heelPlates': { height: 20, span: 200, hipAhead: 60 } }), ['left.foot.heelPlates', /belongs to an ankle that must not bend/]],
  'prosthesis with a living foot': [changed(lockedSheet(), { 'left.foot.prosthesis': { heelRise: 10 } }), ['left.foot.prosthesis', /belongs to a prosthetic foot/]],
  'ankle angle of a prosthetic foot': [changed(prostheticSheet(), { 'left.foot.ankleAngle': 3 }), ['left.foot.ankleAngle', /belongs to an ankle/]],
  'prosthetic foot without its heel rise': [changed(prostheticSheet(), { 'left.foot.prosthesis': undefined }), ['left.foot.prosthesis.heelRise', /cannot be guessed/]],
  'prosthetic toe joint': [changed(prostheticSheet(), { 'left.foot.stiff.joint': 'toe joint' }), ['left.foot.stiff.joint', /must be "whole foot"/]],
  'angle found by eye': [changed(lockedSheet(), { 'left.foot.ankleAngle': { value: 2, how: 'by eye' } }), ['left.foot.ankleAngle.how', /one of: goniometer/]],
  'locked pivot not measured': [changed(lockedSheet(), { 'left.foot.pivotForward': undefined, 'left.foot.pivotHeight': undefined }), ['left.foot.pivotForward', /must be measured where the ankle/], ['left.foot.pivotHeight', /or give malleolusHeight/]],
  'nothing to estimate the hip from': [changed(lockedSheet(), { 'left.foot.hipHeight': undefined, 'wearer.stature': undefined }), ['left.foot.hipHeight', /wearer.crotchHeight or wearer.stature/]],
  'nothing to estimate the pivot from': [changed(freeSheet(), { 'left.foot.pivotHeight': undefined, 'wearer.stature': undefined }), ['left.foot.pivotHeight', /or wearer.stature/]],
  'misspelt field': [changed(lockedSheet(), { 'left.foot.pivotHight': 78 }), ['left.foot.pivotHight', /not a field/]],
  'field in the wrong group': [changed(lockedSheet(), { 'left.last.pivotHeight': 78 }), ['left.last.pivotHeight', /not a field/]],
  'field of another object': [JSON.parse(JSON.stringify(lockedSheet()).replace('"version":1', '"version":1,"__proto__":{"units":"in"},"constructor":1')) as Json, ['__proto__', /not a field/], ['constructor', /not a field/]],
  'measure without a value': [changed(lockedSheet(), { 'left.foot.length': { how: 'size stick' } }), ['left.foot.length.value', /must be given/]],
  'measure taken once': [changed(lockedSheet(), { 'left.foot.length': { value: 265, twice: false } }), ['left.foot.length.twice', /must be true, or left out/]],
  'measure as a list': [changed(lockedSheet(), { 'left.foot.length': [265] }), ['left.foot.length', /a length in mm/]],
  'size in an unknown system': [changed(lockedSheet(), { 'left.foot.length': { size: 42, system: 'continental' } }), ['left.foot.length.system', /one of: mondopoint/]],
  'size in the wrong system': [changed(lockedSheet(), { 'left.foot.length': { size: 42, system: 'mondopoint' } }), ['left.foot.length.size', /must stand for 99 to 484\.5 mm/]],
  'size where a width is wanted': [changed(lockedSheet(), { 'left.last.ballWidth': { size: 42, system: 'uk' } }), ['left.last.ballWidth.size', /not a field/], ['left.last.ballWidth.value', /must be given/]],
  'two heights': [changed(lockedSheet(), { 'left.last.heights': [[0, 14], [282, 15]] }), ['left.last.heights', /at least 3 pairs/]],
  'heights out of order': [changed(lockedSheet(), { 'left.last.heights': [[0, 14], [200, 0], [190, 0], [282, 15]] }), ['left.last.heights[2][0]', /further forward/]],
  'heights that end early': [changed(lockedSheet(), { 'left.last.heights': [[0, 14], [100, 8], [270, 15]] }), ['left.last.heights', /cover the last from 0 to its length, 282 mm/]],
  'heights that begin behind the last': [changed(lockedSheet(), { 'left.last.heights': [[-4, 14], [100, 8], [282, 15]] }), ['left.last.heights[0][0]', /must be -1 to 514\.5 mm/]],
  'height as long as a last': [changed(lockedSheet(), { 'left.last.heights': [[0, 14], [100, 80], [282, 15]] }), ['left.last.heights[1][1]', /must be -5 to 60 mm/]],
  'heights with another toe spring': [changed(lockedSheet(), { 'left.last.heights': [[0, 14], [60, 14], [202, 0], [282, 25]] }), ['left.last.toeSpring', /within 3 mm with the measured heights, which stand at 25 mm at the tip/]],
  'heights with another pitch': [changed(lockedSheet(), { 'left.last.heights': [[0, 20], [60, 20], [202, 0], [282, 15]] }), ['left.last.pitch', /within 3 mm with the measured heights, which stand at 20 mm at the centre of the seat/]],
  'height without its place': [changed(lockedSheet(), { 'left.last.heights': [[0, 14], [100], [282, 15]] }), ['left.last.heights[1]', /a pair/]],
  'given toe arc without a radius': [changed(lockedSheet(), { 'left.order.toe': { rule: 'given' } }), ['left.order.toe.radius', /must be given with rule "given"/]],
  'radius with another rule': [changed(lockedSheet(), { 'left.order.toe': { rule: 'for-toe-off', toeOffAngle: 30, radius: 200 } }), ['left.order.toe.radius', /must be left out with rule "for-toe-off"/]],
  'spring with the default rule': [changed(lockedSheet(), { 'left.order.toe': { rule: 'pivot-to-toe', toeSpring: 30 } }), ['left.order.toe.toeSpring', /must be left out/]],
  'apex in mm': [changed(lockedSheet(), { 'left.order.apex': 175 }), ['left.order.apex', /40 to 90 %/]],
  'flat of 80': [changed(lockedSheet(), { 'left.order.standingFlat': 80 }), ['left.order.standingFlat', /0 to 60 mm/]],
  'crest turned half round': [changed(lockedSheet(), { 'left.order.crestAngle': 0 }), ['left.order.crestAngle', /70 to 110 °/]],
  'taper too steep': [changed(lockedSheet(), { 'left.order.taper': { heelInner: 30 } }), ['left.order.taper.heelInner', /-15 to 25 °/]],
  'edge too wide': [changed(lockedSheet(), { 'left.order.edgeBeyond': { ball: 8 } }), ['left.order.edgeBeyond.ball', /0 to 6 mm/]],
  'minimum of nothing': [changed(lockedSheet(), { 'left.order.minima': { seat: 0 } }), ['left.order.minima.seat', /1 to 60 mm/]],
  'unknown foam': [changed(lockedSheet(), { 'left.order.foam': 'sponge' }), ['left.order.foam', /one of: firm EVA/]],
  'chord gap of nothing': [changed(lockedSheet(), { 'making.chordGap': 0 }), ['making.chordGap', /0\.005 to 0\.5 mm/]],
  'tool without reach': [changed(lockedSheet(), { 'making.tool': { diameter: 12 } }), ['making.tool.reach', /must be given/]],
  'split as a word': [changed(lockedSheet(), { 'making.mould': { part: 'foam body', split: 'yes' } }), ['making.mould.split', /true or false/]],
  'override twice': [changed(lockedSheet(), { overrides: [{ code: 'LEAN', by: 'A', reason: 'B' }, { code: 'LEAN', by: 'C', reason: 'D' }] }), ['overrides[1].code', /only once/]],
  'override for a shoe that is not there': [changed(lockedSheet(), { overrides: [{ code: 'LEAN', side: 'right', by: 'A', reason: 'B' }] }), ['overrides[0].side', /a shoe on this sheet/]],
  'override without a name': [changed(lockedSheet(), { overrides: [{ code: 'LEAN', reason: 'B' }] }), ['overrides[0].by', /must be given: one line of text/]],
};

describe('fields that are wrong', () => {
  test('the sheets they are made from read', () => {
    for (const sheet of [lockedSheet(), freeSheet(), prostheticSheet(), pairSheet()]) expect(faultsIn(JSON.stringify(sheet))).toEqual([]);
    expect(Object.keys(TABLE).length + Object.keys(FILES).length).toBeGreaterThan(100);
  });

  test.each(Object.entries(TABLE))('%s', (_, [sheet, ...expected]) => {
    const faults = faultsIn(JSON.stringify(sheet));
    for (const [path, rule] of expected) expect(faults).toContainEqual(expect.objectContaining({ path, rule: expect.stringMatching(rule) }));
  });

  test.each(Object.entries(TABLE).filter(([, [, ...expected]]) => expected.length === 1))('%s: nothing else is complained of', (name, [sheet, expected]) => {
    if (name === 'millimetres on a sheet in inches') return;
    expect(faultsIn(JSON.stringify(sheet)).map(({ path }) => path)).toEqual([expected![0]]);
  });
});

describe('how faults speak', () => {
  const only = (sheet: Json): string => faultsIn(JSON.stringify(sheet)).map(({ text }) => text).join('\n');

  test('where, the rule, what came, what to do', () => {
    expect(only(cm(lockedSheet(), 'left.foot.length', 272)))
      .toBe('left.foot.length must be 99 to 484.5 mm; got 27.2. Lengths are in mm: is it in cm? 27.2 cm would be 272 mm.');
    expect(only(changed(lockedSheet(), { 'left.foot.hipHeight': 35 }))).toContain('is it in inches? 35 inches would be 889 mm.');
    expect(only(changed(lockedSheet(), { 'left.order.targets': { seatHeightAtMost: 1, free: ['apex'] } }))).toContain('1 cm would be 10 mm, 1 inch would be 25.4 mm.');
    expect(only(changed(lockedSheet(), { 'wearer.stature': 1.68 }))).toContain('got 1.68. Lengths are in mm: is it in m? 1.68 m would be 1680 mm.');
    expect(only(changed(lockedSheet(), { 'left.order.minima': { seat: 0.8 } }))).toContain('is it in cm or inches? 0.8 cm would be 8 mm, 0.8 inches would be 20.32 mm.');
    expect(only(changed(lockedSheet(), { 'left.foot.heelPlates': { height: null, span: 200, hipAhead: 60 } }))).toContain('Give heelPlates or ankleAngle, not both: take the heelPlates block out, or ankleAngle.');
    expect(only(changed(lockedSheet(), { 'left.foot.pivotHeight': '7,8' }))).toContain('got "7,8". Write the number alone, without quotes and with a decimal point.');
    expect(only(changed(lockedSheet(), { 'left.foot.hipAhead': 60 }))).toContain('got 60. Here the ankle stands at one angle, and the hip follows from it: give heelPlates or ankleAngle.');
  });

  test.each([
    ['left.foot.pivotHight', 'Did you mean pivotHeight?'],
    ['left.foot.Length', 'Did you mean length?'],
    ['left.order.seatHeightNow', 'seatHeightNow goes with the kind match.'],
    ['left.last.pivotHeight', 'pivotHeight belongs in left.foot.'],
    ['wearer.reference', 'reference belongs in job.'],
    ['left.order.toe.zzz', 'Known here: rule, radius, toeSpring, toeOffAngle, endAngle.'],
  ])('%s: %s', (place, help) => {
    const sheet = changed(lockedSheet(), { 'left.order.toe': { rule: 'pivot-to-toe' } });
    expect(only(changed(sheet, { [place]: 78 }))).toContain(`is not a field of the sheet; got 78. ${help}`);
  });

  test('a misspelt field and the missing one it stands for are one fault', () => {
    const spelt = (right: string, wrong: string, sheet = lockedSheet()): Json => JSON.parse(JSON.stringify(sheet).replace(`"${right}"`, `"${wrong}"`)) as Json;
    expect(only(changed(lockedSheet(), { 'left.foot.ankleAngle': undefined, 'left.foot.ankelAngle': 3 })))
      .toBe('left.foot.ankelAngle is not a field of the sheet, and ankleAngle is missing; got 3. Was ankleAngle meant?');
    for (const [right, wrong] of [['version', 'verson'], ['wearer', 'waerer'], ['legDifference', 'legDiference'], ['left', 'lefft'], ['pitch', 'pich'], ['joint', 'jiont']] as const)
      expect(faultsIn(JSON.stringify(spelt(right, wrong))).map(({ rule }) => rule), wrong).toEqual([`is not a field of the sheet, and ${right} is missing`]);
    expect(only(changed(lockedSheet(), { 'left.foot.pivotHight': 78 }))).not.toContain('is missing');
    const both = only(changed(lockedSheet(), { 'left.last.pitch': undefined, 'left.last.pich': 14, 'left.last.pitsh': 15 })).split('\n');
    expect(both).toHaveLength(2);
    expect(both.filter((text) => text.includes('is missing'))).toHaveLength(1);
  });

  test('text that is no JSON shows its line, and where in it', () => {
    const said = (text: string): string => faultsIn(text)[0]!.text;
    expect(said(fromFile('comma-decimal.json'))).toMatch(/^sheet must be JSON \(line 5, column 81: .*\); got "….*"length": 26, <here> 5, "pivotHeight": 78, "h…"\.$/);
    expect(said('{\n  "version": 1,\n\t"units": "mm",\n\n}')).toContain('got ""units": "mm", <here> }".');
    expect(said('{"version": 1\r\n\r\n')).toContain('got "{"version": 1 <here>".');
    for (const text of [...Object.keys(FILES).map(fromFile), '{\n\n\n"a": x}']) expect(said(text)).not.toContain('\\u000');
  });

  test('all faults come in one trip, from form, limits and rules alike', () => {
    const sheet = changed(lockedSheet(), {
      version: 3, 'wearer.mass': 'heavy', 'wearer.wieght': 78, 'left.foot.length': 26.5, 'left.foot.hipHeight': 89, 'left.foot.ankleAngle': undefined,
      'left.last.tread': 60, 'left.order.toe': { rule: 'given' }, 'wearer.legDifference.correct': 5,
    });
    expect(faultsIn(JSON.stringify(sheet)).map(({ path }) => path).toSorted()).toEqual([
      'left.foot.ankleAngle', 'left.foot.hipHeight', 'left.foot.length', 'left.last.tread', 'left.order.toe.radius', 'version',
      'wearer.legDifference.correct', 'wearer.legDifference.shorter', 'wearer.mass', 'wearer.wieght',
    ].toSorted());
  });

  test('values are shown short, on one line, with marks that do not print as their codes', () => {
    for (const value of ['x'.repeat(500), 'a\u202eb\nc\u0007d', { a: 'x'.repeat(500) }]) {
      const [fault] = faultsIn(JSON.stringify(changed(lockedSheet(), { 'left.foot.length': value })));
      expect(fault!.value.length).toBeLessThanOrEqual(80);
      expect(fault!.text).not.toMatch(/[\p{Cc}\p{Cf}]/u);
    }
  });

  test('no sentence of the validator leaks through, nobody shouts', () => {
    const texts = [...Object.keys(FILES).map(fromFile), ...Object.values(TABLE).map(([sheet]) => JSON.stringify(sheet))].flatMap(faultsIn).map(({ text }) => text);
    for (const text of texts) expect(text).not.toMatch(/Invalid|expected|undefined|got NaN|!|Too (big|small)|Unrecognized/);
  });
});

test('in a list a number beyond its limits and a field that is missing are told together', () => {
  const sheet = JSON.parse(JSON.stringify(lockedSheet())) as Record<string, unknown>, good = { name: 'a', thickness: 6, density: 0.2, length: 900, width: 600, material: 'firm EVA' };
  sheet['making'] = { rack: [{ ...good, thickness: -3 }, { ...good, name: 'b', density: undefined }, { ...good, name: 'c', length: 10 }] };
  expect(faultsIn(JSON.stringify(sheet)).map(({ path }) => path).toSorted()).toEqual(['making.rack[0].thickness', 'making.rack[1].density', 'making.rack[2].length']);
  sheet['left'] = { ...(sheet['left'] as object), last: { ...((sheet['left'] as Record<string, object>)['last']), heights: [[0, 12], ['x', 900]] } };
  expect(faultsIn(JSON.stringify(sheet)).filter(({ path }) => path.includes('heights')).map(({ path }) => path)).toEqual(['left.last.heights[1][0]', 'left.last.heights[1][1]']);
});

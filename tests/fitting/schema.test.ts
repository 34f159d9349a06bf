import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { FOAMS, OUTSOLES } from '../../src/materials/materials.ts';
import { RANGES, type RangeName } from '../../src/fitting/ranges.ts';
import { sheetJsonSchema } from '../../src/fitting/schema.ts';
import { JOINTS, JOINT_STATES, LEG_FINDINGS, BLOCK_FACES, CUTTER_ENDS, JIG_FACES, MOULD_PARTS, PAPER_SIZES, SHORE_SCALES, WAYS_OF_MAKING, RISKS, SEXES, SIDES, SIZE_SYSTEMS, TOE_RULES, TOE_SHAPES } from '../../src/fitting/words.ts';
import { obeys, type Schema } from './jsonSchemaJudge.ts';
import { changed, freeSheet, lockedSheet, pairSheet, prostheticSheet, type Json } from './sheets.ts';

// The judge is our own small reading of JSON Schema 2020-12 (json-schema.org, core and validation), apart from the library that writes the schema.

const schema = sheetJsonSchema() as Schema;
const isFine = (sheet: unknown): boolean => obeys(sheet, schema, schema);
const samples = readdirSync('samples').map((name) => [name, JSON.parse(readFileSync(`samples/${name}/sheet.json`, 'utf8')) as Json] as const);

/** Every field the schema knows: its place without the side, and what stands there. */
function* fields(node: Schema, place: string): Generator<readonly [string, Schema]> {
  const ref = node['$ref'] as string | undefined;
  if (ref) return yield* fields((schema['$defs'] as Record<string, Schema>)[ref.replace('#/$defs/', '')]!, '');
  for (const [name, inner] of Object.entries((node['properties'] ?? {}) as Record<string, Schema>)) {
    yield [`${place}.${name}`.replace(/^\./, ''), inner];
    yield* fields(inner, `${place}.${name}`.replace(/^\./, ''));
  }
  const forms = ['anyOf', 'oneOf', 'prefixItems'].flatMap((word) => (node[word] ?? []) as Schema[]);
  for (const inner of [...forms, ...(node['items'] ? [node['items'] as Schema] : [])]) yield* fields(inner, place);
}
const ALL = [...fields(schema, '')];
const isNumber = (node: Schema): boolean => node['type'] === 'number' || ['anyOf', 'prefixItems'].some((word) => ((node[word] ?? []) as Schema[]).some(isNumber)) || (typeof node['items'] === 'object' && isNumber(node['items'] as Schema));

describe('the published schema', () => {
  test('says what it is', () => {
    expect(schema).toMatchObject({ $schema: 'https://json-schema.org/draft/2020-12/schema', $id: 'urn:rockerbench:fitting-sheet:1', title: 'Fitting sheet', type: 'object' });
    expect(JSON.stringify(sheetJsonSchema())).toBe(JSON.stringify(schema));
  });

  test('every field is described, and every number with its unit', () => {
    expect(ALL.length).toBeGreaterThan(120);
    for (const [place, node] of ALL) {
      expect(node['description'], place).toEqual(expect.any(String));
      if (isNumber(node) && place !== 'version') expect(node['description'], place).toMatch(/Unit: (mm or in|degrees|kg|g|g\/cm³|g\/m²|MPa|percent|size number|plain number)\./);
    }
  });

  test('every number of the sheet has its row in the range table, and every row its number', () => {
    const numbers = ALL.filter(([, node]) => isNumber(node)).flatMap(([place]) => (place === 'last.heights' ? ['last.heights.forward', 'last.heights.up'] : place.endsWith('.accuracy') ? (RANGES[place.replace('.accuracy', '') as RangeName].unit === 'deg' ? 'accuracy.angle' : 'accuracy.length') : place.replace(/\.value$/, '')));
    expect([...new Set(numbers)].filter((place) => place !== 'version').toSorted()).toEqual(Object.keys(RANGES).toSorted());
  });

  test('every fixed word can be completed', () => {
    const lists = ALL.flatMap(([, node]) => (node['enum'] ? [JSON.stringify(node['enum'])] : []));
    for (const words of [JOINTS, JOINT_STATES, SEXES, LEG_FINDINGS, TOE_SHAPES, TOE_RULES, SIZE_SYSTEMS, MOULD_PARTS, CUTTER_ENDS, BLOCK_FACES, JIG_FACES, SHORE_SCALES, PAPER_SIZES, WAYS_OF_MAKING, SIDES, Object.keys(FOAMS), Object.keys(OUTSOLES)])
      expect(lists).toContain(JSON.stringify(words));
    expect(JSON.stringify(schema)).toContain(JSON.stringify(RISKS));
  });

  test.each([...samples, ['locked', lockedSheet()], ['free', freeSheet()], ['prosthetic', prostheticSheet()], ['pair', pairSheet()]] as const)('takes the sheet of %s', (_, sheet) => {
    expect(isFine(sheet)).toBe(true);
  });

  test.each([
    ['unknown field', changed(lockedSheet(), { 'left.foot.pivotHight': 78 })],
    ['rocker without a foot', changed(lockedSheet(), { 'left.foot': undefined })],
    ['rocker without a pitch', changed(lockedSheet(), { 'left.last.pitch': undefined })],
    ['no shoe', changed(lockedSheet(), { left: undefined })],
    ['number in quotes', changed(lockedSheet(), { 'left.foot.length': '265' })],
    ['negative length', changed(lockedSheet(), { 'left.foot.length': -265 })],
    ['wrong word', changed(lockedSheet(), { 'left.foot.stiff.state': 'sore' })],
    ['wrong version', changed(lockedSheet(), { version: 2 })],
    ['path in the reference', changed(lockedSheet(), { 'job.reference': '../K' })],
    ['date that is none', changed(lockedSheet(), { 'job.date': '2026-02-30' })],
    ['one of a pair of heights', changed(lockedSheet(), { 'left.last.heights': [[1], [2], [3]] })],
    ['crest turned too far', changed(lockedSheet(), { 'left.order.crestAngle': 120 })],
    ['field of a match on a rocker', changed(lockedSheet(), { 'left.order.seatHeightNow': 20 })],
    ['a list', [lockedSheet()]],
  ] as const)('refuses: %s', (_, sheet) => {
    expect(isFine(sheet)).toBe(false);
  });

  test('a match needs neither foot nor pitch', () => {
    expect(isFine(pairSheet())).toBe(true);
    expect(pairSheet()['right']).not.toHaveProperty('foot');
  });
});

import { FIELD_WORDS, ROW_WORDS } from './fieldWords.ts';
import { sheetJsonSchema } from '../../src/fitting/schema.ts';
import { inDegrees } from '../../src/geometry/units.ts';
import { GRADE_UP_TO } from '../../src/stiffener/grades.ts';
import type { FieldShown } from './protocol.ts';

/** As much of a JSON Schema as the sheet's uses. */
interface Schema {
  readonly type?: string;
  readonly description?: string;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly enum?: readonly string[];
  readonly const?: unknown;
  readonly items?: Schema | false;
  readonly prefixItems?: readonly Schema[];
  readonly required?: readonly string[];
  readonly $ref?: string;
  readonly format?: string;
  readonly maxLength?: number;
  readonly minItems?: number;
}

/** Told elsewhere on the page, or by tools of their own. */
const NOT_ASKED = new Set(['$schema', 'version', 'overrides']);

/** Every field of the sheet the page can ask for, in the sheet's order; made from the one definition of the sheet. */
export function fieldsOfSheet(): FieldShown[] {
  const schema = sheetJsonSchema() as Schema & { readonly $defs: { readonly shoe: Schema } };
  return Object.entries(schema.properties!).flatMap(([name, field]) =>
    NOT_ASKED.has(name) ? [] : fieldsIn(field.$ref ? schema.$defs.shoe : field, name));
}

function fieldsIn(schema: Schema, path: string, forKind?: FieldShown['forKind']): FieldShown[] {
  if (schema.oneOf) return schema.oneOf.flatMap((variant) => {
    const kind = variant.properties!.kind!.const as FieldShown['forKind'];
    return childrenOf(variant, path, kind);
  });
  if (schema.properties) return childrenOf(schema, path, forKind);
  const group = groupInstead(schema);
  if (group) return [{ path, ...namesOf(path, schema), kind: 'number', either: { at: path, as: 'number' } }, ...childrenOf(group, path).map((field): FieldShown => ({ ...field, either: { at: path, as: 'group' } }))];
  if (schema.items && (schema.items.properties ?? schema.items.prefixItems)) return [listOf(schema.items, path, schema, forKind)];
  const shape = shapeOf(schema);
  return shape ? [{ path, ...namesOf(path, schema), ...shape, ...(forKind ? { forKind } : {}), ...oneOrOther(path) }] : [];
}

/** How stiff a stiffener is to be is told by a grade or by a number of degrees; a grade stands for the most that it may bend. */
function oneOrOther(path: string): Pick<FieldShown, 'orNumber' | 'inPlaceOf'> {
  const [, stiffener, name] = /^(.*\.order\.stiffener)\.(wanted|bendAtMost)$/.exec(path) ?? [];
  if (name === 'bendAtMost') return { inPlaceOf: `${stiffener}.wanted` };
  return name === 'wanted' ? { orNumber: { at: `${stiffener}.bendAtMost`, words: 'a number of degrees', from: Object.fromEntries(Object.entries(GRADE_UP_TO).map(([grade, bend]) => [grade, Number(inDegrees(bend).toFixed(6))])) } } : {};
}

const childrenOf = ({ properties }: Schema, path: string, forKind?: FieldShown['forKind']): FieldShown[] =>
  Object.entries(properties!).flatMap(([name, child]) => NOT_ASKED.has(name) || name === 'kind' ? [] : fieldsIn(child, `${path}.${name}`, forKind));

/** The group that may stand in place of a number; one that tells more of the number itself is none. */
const groupInstead = ({ anyOf = [] }: Schema): Schema | undefined => (anyOf.some(({ properties }) => properties?.value) ? undefined : anyOf.find(({ properties }) => properties));

/** A list of rows that all have the same fields, or of pairs of numbers. */
function listOf(row: Schema, path: string, schema: Schema, forKind?: FieldShown['forKind']): FieldShown {
  const columns = row.prefixItems ? row.prefixItems.flatMap((one, i) => fieldsIn(one, `${path}[${i}]`)) : childrenOf(row, path);
  const needed = (column: string): boolean => row.prefixItems !== undefined || row.required?.includes(column) === true;
  return {
    path, ...namesOf(path, schema), kind: 'list', unit: '', row: ROW_WORDS[path.replace(OF_SHOE, '')] ?? 'row', ...(forKind ? { forKind } : {}),
    columns: columns.map((column) => ({ ...column, path: column.path.slice(path.length), required: needed(column.path.slice(path.length + 1)) })),
  };
}

type Shape = Pick<FieldShown, 'kind'> & Partial<Pick<FieldShown, 'words' | 'measured' | 'accuracy' | 'some'>>;

/** Longer writing is pasted, and stands on several lines. */
const ONE_LINE = 1000;

function shapeOf(schema: Schema): Shape | undefined {
  if (schema.anyOf) return { kind: 'number', measured: true, ...(schema.anyOf.some(({ properties }) => properties?.accuracy) ? { accuracy: true } : {}) };
  if (schema.enum) return { kind: 'word', words: schema.enum };
  if (schema.type === 'array' && schema.items && schema.items.enum) return { kind: 'ticks', words: schema.items.enum, ...(schema.minItems ? { some: true } : {}) };
  if (schema.type === 'number') return { kind: 'number' };
  if (schema.type === 'boolean') return { kind: 'yes' };
  if (schema.type === 'string') return { kind: schema.format === 'date' ? 'date' : (schema.maxLength ?? 0) > ONE_LINE ? 'lines' : 'text' };
  return undefined;
}

const OF_SHOE = /^(left|right)\./;
const UNIT = / Unit: ([^.]+)\./, USUAL = / Usual: ([^.]+(?:\.\d[^.]*)*)\./;
const SIGNS: Readonly<Record<string, string>> = { 'mm or in': 'length', degrees: '°', percent: '%', 'plain number': '' };

function namesOf(path: string, { description = '' }: Schema): Pick<FieldShown, 'label' | 'help' | 'unit'> {
  const unit = UNIT.exec(description)?.[1], help = description.replace(UNIT, '').replace(USUAL, ' Usual: $1.');
  return { label: labelOf(path), help, unit: unit === undefined ? '' : SIGNS[unit] ?? unit };
}

/** `pivotForward` as a maker says it. */
function labelOf(path: string): string {
  const name = path.split('.').pop()!, own = FIELD_WORDS[path.replace(OF_SHOE, '')];
  return own ?? name.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);
}

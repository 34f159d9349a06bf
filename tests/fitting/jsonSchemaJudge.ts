/** A small judge of JSON Schema 2020-12: only the words our schema uses. It knows nothing of the reader. */
export interface Schema { readonly [word: string]: unknown }

const KNOWN = new Set([
  '$schema', '$id', '$ref', '$defs', 'id', 'title', 'description', 'type', 'properties', 'required', 'additionalProperties', 'enum', 'const', 'anyOf', 'oneOf',
  'items', 'prefixItems', 'minItems', 'maxItems', 'minimum', 'maximum', 'maxLength', 'pattern', 'format', 'if', 'then',
]);

function typeOf(value: unknown): string {
  if (value === null) return 'null';
  return Array.isArray(value) ? 'array' : typeof value;
}

const isGroup = (value: unknown): value is Record<string, unknown> => typeOf(value) === 'object';

/** True when a value obeys a schema. @throws Error for a word this judge does not know: it would pass what it cannot judge */
export function obeys(value: unknown, schema: Schema | false, root: Schema): boolean {
  if (schema === false) return false;
  const strange = Object.keys(schema).find((word) => !KNOWN.has(word));
  if (strange) throw new Error(`schema word ${strange} is not judged`);
  const all = (list: unknown): readonly Schema[] => (list ?? []) as readonly Schema[];
  const under = (inner: unknown): boolean => obeys(value, inner as Schema, root);
  const shared = (ref: string): Schema => (root['$defs'] as Record<string, Schema>)[ref.replace('#/$defs/', '')]!;
  return (schema['$ref'] === undefined || under(shared(schema['$ref'] as string)))
    && (schema['type'] === undefined || typeOf(value) === schema['type'])
    && (schema['const'] === undefined || value === schema['const'])
    && (schema['enum'] === undefined || (schema['enum'] as unknown[]).includes(value))
    && (schema['anyOf'] === undefined || all(schema['anyOf']).some(under))
    && (schema['oneOf'] === undefined || all(schema['oneOf']).filter(under).length === 1)
    && (schema['if'] === undefined || !under(schema['if']) || under(schema['then']))
    && obeysAsText(value, schema) && obeysAsNumber(value, schema) && obeysAsList(value, schema, root) && obeysAsGroup(value, schema, root);
}

const obeysAsText = (value: unknown, { maxLength = Infinity, pattern = '' }: Schema): boolean =>
  typeof value !== 'string' || (value.length <= (maxLength as number) && new RegExp(pattern as string, 'u').test(value));

const obeysAsNumber = (value: unknown, { minimum = -Infinity, maximum = Infinity }: Schema): boolean =>
  typeof value !== 'number' || (value >= (minimum as number) && value <= (maximum as number));

function obeysAsList(value: unknown, { prefixItems = [], items, minItems = 0, maxItems = Infinity }: Schema, root: Schema): boolean {
  if (!Array.isArray(value)) return true;
  const first = prefixItems as readonly Schema[];
  return value.length >= (minItems as number) && value.length <= (maxItems as number)
    && value.every((item, i) => (first[i] ? obeys(item, first[i], root) : items === undefined || obeys(item, items as Schema, root)));
}

function obeysAsGroup(value: unknown, { properties = {}, required = [], additionalProperties }: Schema, root: Schema): boolean {
  if (!isGroup(value)) return true;
  const known = properties as Record<string, Schema>;
  return (required as readonly string[]).every((name) => Object.hasOwn(value, name))
    && Object.entries(value).every(([name, inner]) => (Object.hasOwn(known, name) ? obeys(inner, known[name]!, root) : additionalProperties !== false));
}

import { sheetJsonSchema } from './schema.ts';
import type { Path } from './faults.ts';

/** The parts of the published schema that hold field names. */
interface Node {
  readonly description?: string;
  readonly const?: unknown;
  readonly properties?: Readonly<Record<string, Node>>;
  readonly items?: Node | false;
  readonly prefixItems?: readonly Node[];
  readonly anyOf?: readonly Node[];
  readonly oneOf?: readonly Node[];
  readonly $ref?: string;
}

/** One group of fields: where it stands on the sheet (without list numbers) and what may stand in it. */
interface FieldGroup { readonly path: readonly string[]; readonly names: readonly string[]; readonly fields: Readonly<Record<string, Node>> }

function* groupsUnder(node: Node, path: readonly string[], shared: Readonly<Record<string, Node>>): Generator<FieldGroup> {
  const { properties = {}, items, anyOf = [], oneOf = [], $ref } = node;
  if ($ref) yield* groupsUnder(shared[$ref.split('/').at(-1)!]!, path, shared);
  if (node.properties) yield { path, names: Object.keys(properties), fields: properties };
  for (const [name, child] of Object.entries(properties)) yield* groupsUnder(child, [...path, name], shared);
  for (const child of [...anyOf, ...oneOf, ...(items ? [items] : [])]) yield* groupsUnder(child, path, shared);
}

/** The schema never changes, so its names are gathered once, when the first unknown field comes. */
let gathered: readonly FieldGroup[] | undefined;

/** Every group of fields the schema knows; a place that takes two forms appears once for each. */
function fieldGroups(): readonly FieldGroup[] {
  if (gathered) return gathered;
  const { $defs = {}, ...root } = sheetJsonSchema() as Node & { readonly $defs?: Record<string, Node> };
  gathered = [...groupsUnder(root, [], $defs)];
  return gathered;
}

/** How many letters have to be added, dropped or changed to make one word of the other (Levenshtein). */
function lettersApart(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++)
      next.push(Math.min(next[j - 1]! + 1, row[j]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)));
    row = next;
  }
  return row[b.length]!;
}

/** Names that differ by more than a third of their letters are other words, not slips. */
const isSlip = (apart: number, name: string): boolean => apart <= Math.max(2, Math.floor(name.length / 3));

function nearest(name: string, known: readonly string[]): string | undefined {
  const ranked = known
    .filter((candidate) => Math.abs(candidate.length - name.length) <= 6)
    .map((candidate) => ({ candidate, apart: lettersApart(candidate.toLowerCase(), name.toLowerCase()) }))
    .sort((a, b) => a.apart - b.apart);
  return ranked[0] && isSlip(ranked[0].apart, name) ? ranked[0].candidate : undefined;
}

/** The groups that may stand at a place. */
function groupsAt(place: Path): readonly FieldGroup[] {
  const here = place.filter((step) => typeof step === 'string').join('.');
  return fieldGroups().filter(({ path }) => path.join('.') === here);
}
const knownAt = (place: Path): readonly string[] => groupsAt(place).flatMap(({ names }) => names);

/** What a field is and how it is taken: the first sentence of its description. */
export function aboutField(path: Path): string {
  const name = String(path.at(-1)), found = groupsAt(path.slice(0, -1)).find(({ fields }) => Object.hasOwn(fields, name));
  return /^.*?\.(?=\s|$)/.exec(found?.fields[name]?.description ?? '')?.[0] ?? '';
}

/** The field of the same place that a name is a slip for, if one is near. */
export const meantBy = (name: string, place: Path): string | undefined => nearest(name, knownAt(place));

/** What a field that is not known at its place was most likely meant to be, as a sentence; empty when nothing is near. */
export function suggestion(name: string, place: Path): string {
  const groups = fieldGroups(), known = knownAt(place), kind = groupsAt(place).find(({ names }) => names.includes(name))?.fields.kind?.const, near = nearest(name, known);
  if (typeof kind === 'string') return `${name} goes with the kind ${kind}.`;
  if (near) return `Did you mean ${near}?`;
  const side = place[0] === 'left' || place[0] === 'right' ? place[0] : undefined;
  const inWorkshop = place[0] === 'making';   // what a shoe has by this name is something else
  const home = groups.find(({ path, names }) => names.includes(name) && (!inWorkshop || path[0] === 'making') && (side === undefined || path[0] === side || !['left', 'right'].includes(path[0] ?? '')));
  if (home) return `${name} belongs in ${home.path.length === 0 ? 'the sheet itself' : home.path.join('.')}.`;
  return known.length === 0 ? '' : `Known here: ${[...new Set(known)].join(', ')}.`;
}

import { distance, type Point } from '../../src/geometry/point.ts';

/** A reader of DXF text that knows nothing of the writer: pairs of code and value, entities from the section of that name. */
interface Entity { readonly type: string; readonly layer: string; readonly from: Point; readonly to: Point; readonly centre: Point; readonly radius: number; readonly at: (share: number) => Point }
interface Letters { readonly text: string; readonly at: Point; readonly height: number; readonly turn: number }
export interface ReadDxf {
  /** Lines and arcs in the order of the file. Arcs run counter-clockwise, as the format has them. */
  readonly entities: readonly Entity[];
  readonly letters: readonly Letters[];
  /** The pieces of a layer as closed chains, whichever way round each piece is written. @throws Error where a chain is open */
  readonly chains: (layer: string) => Entity[][];
}

export function readDxf(text: string): ReadDxf {
  const objects = objectsOf(text), entities = objects.flatMap((object) => entityOf(object) ?? []);
  const letters = objects.filter(({ type }) => type === 'TEXT').map(({ values: v }): Letters => ({ text: v.get(1)!, at: [Number(v.get(10)), Number(v.get(20))], height: Number(v.get(40)), turn: Number(v.get(50) ?? 0) }));
  return { entities, letters, chains: (layer) => chained(entities.filter((entity) => entity.layer === layer)) };
}

interface Read { readonly type: string; readonly values: ReadonlyMap<number, string> }
function objectsOf(text: string): Read[] {
  const lines = text.split('\r\n'), pairs = Array.from({ length: (lines.length - 1) / 2 }, (_, i): [number, string] => [Number(lines[2 * i]), lines[2 * i + 1]!]);
  const start = pairs.findIndex(([code, value], i) => code === 2 && value === 'ENTITIES' && pairs[i - 1]![1] === 'SECTION'), found: { type: string; values: Map<number, string> }[] = [];
  for (const [code, value] of pairs.slice(start + 1)) {
    if (code === 0 && value === 'ENDSEC') break;
    if (code === 0) found.push({ type: value, values: new Map() }); else found.at(-1)!.values.set(code, value);
  }
  return found;
}

function entityOf({ type, values }: Read): Entity | undefined {
  const real = (code: number): number => Number(values.get(code)), layer = values.get(8)!, one: Point = [real(10), real(20)];
  if (type === 'LINE') {
    const to: Point = [real(11), real(21)], at = (share: number): Point => [one[0] + (to[0] - one[0]) * share, one[1] + (to[1] - one[1]) * share];
    return { type, layer, from: one, to, centre: one, radius: Infinity, at };
  }
  if (type !== 'ARC') return undefined;
  const radius = real(40), turn = (((real(51) - real(50)) % 360) + 360) % 360;
  const at = (share: number): Point => { const angle = ((real(50) + turn * share) * Math.PI) / 180; return [one[0] + radius * Math.cos(angle), one[1] + radius * Math.sin(angle)]; };
  return { type, layer, from: at(0), to: at(1), centre: one, radius, at };
}

const JOINED = 1e-6;
function chained(pieces: readonly Entity[]): Entity[][] {
  const left = [...pieces], chains: Entity[][] = [];
  while (left.length > 0) {
    const first = left.shift()!, chain = [first];
    let end = first.to;
    while (distance(end, first.from) > JOINED) {
      const i = left.findIndex(({ from, to }) => distance(from, end) <= JOINED || distance(to, end) <= JOINED);
      if (i < 0) throw new Error(`the chain of layer ${first.layer} that begins at ${first.from.join(', ')} is open at ${end.join(', ')}`);
      const [next] = left.splice(i, 1);
      end = distance(next!.from, end) <= JOINED ? next!.to : next!.from;
      chain.push(next!);
    }
    chains.push(chain);
  }
  return chains;
}

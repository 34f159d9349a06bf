import type { Asked } from './assess.ts';
import { EDGE_HEIGHTS, type Bench, type Open } from './choices.ts';
import { onceForAlike, type Pack, type Sought } from './pack.ts';
import { inShort, laidIn } from './layers.ts';
import { fewest, searched, type Tried } from './search.ts';

/** Other ways to a pack that was sought, side by side with it. */

/** Another way. @property way in words @property byCore whether an order of its core alone gets it */
export interface Alternative { readonly way: string; readonly tried: Tried; readonly byCore: boolean }

/**
 * The fewest plies that keep to what must be, and the best of each kind: each core by itself, no core, edges turned up, some
 * plies under the foam body. What is laid as the pack itself, or as another way before it, is told once. Worked out once for packs that are alike.
 */
export const alternativesTo: (pack: Pack) => readonly Alternative[] = onceForAlike((pack, sought) => {
  const { asked, stiffener, plate, underFoam } = pack, least = fewest(sought.open, sought.bench, asked), all: Alternative[] = [
    ...(least ? [{ way: 'fewest plies with nothing that stops', tried: least, byCore: false }] : []),
    ...kindsOf(pack, sought).flatMap((kind) => bestOf(kind, asked)),
  ];
  const laid = [inShort(stiffener, underFoam, plate), ...all.map(({ tried }) => laidIn(tried, plate))];
  return all.filter((_, i) => laid.indexOf(laid[i + 1]!) === i + 1);
}, []);

function bestOf({ way, open, bench, byCore }: Kind, asked: Asked): Alternative[] {
  const tried = searched(open, bench, asked);
  return tried ? [{ way, tried, byCore }] : [];
}

interface Kind { readonly way: string; readonly open: Open; readonly bench: Bench; readonly byCore: boolean }

function kindsOf({ order }: Pack, { open, bench, otherwise }: Sought): Kind[] {
  const flat: Open = { ...open, edges: open.edges.filter((edges) => edges === 0) }, names = [...new Set(open.cores.map((core) => core?.name))], edges = order.edges > 0 ? order.edges : EDGE_HEIGHTS[0];
  const turned = otherwise({ ...order, edges }), under = otherwise({ ...order, underFoam: true });
  return [
    ...names.map((name): Kind => ({ way: name === undefined ? 'plies alone' : `around ${name}`, open: { ...flat, cores: open.cores.filter((core) => core?.name === name) }, bench, byCore: true })),
    { way: 'with edges turned up', open: { ...turned.open, edges: [edges] }, bench: turned.bench, byCore: false },
    ...(order.underFoam ? [] : [{ way: 'some plies under the foam body', open: { ...under.open, cores: under.open.cores.filter((core) => core?.foam) }, bench: under.bench, byCore: false }]),
  ];
}

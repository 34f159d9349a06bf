import { inDegrees, type Mm } from '../geometry/units.ts';
import type { Pack } from './pack.ts';
import { at, type PlacedPly, type Stiffener } from './stiffener.ts';

/** One layer of a pack, as it is laid from the last down; angles in degrees. @property over of a strip, mm from the heel */
export interface LaidLayer { readonly what: 'ply' | 'core' | 'foam body'; readonly name: string; readonly thickness: Mm; readonly angle?: number; readonly over?: { readonly from: Mm; readonly to: Mm } }

/** What lies under the last, from it down. A core that changes along the shoe is told as thick as at the ball. */
export function layersDown({ stiffener: { below, above, core }, plate, underFoam }: Pick<Pack, 'stiffener' | 'plate' | 'underFoam'>): LaidLayer[] {
  const plies = (all: readonly PlacedPly[]): LaidLayer[] => all.toReversed().map(({ ply, angle, over }) => ({ what: 'ply', name: ply.name, thickness: ply.thickness, angle: inDegrees(angle), ...(over ? { over } : {}) }));
  const between: LaidLayer[] = core ? [{ what: underFoam ? 'foam body' : 'core', name: core.name, thickness: at(core.thickness, plate.ball) }] : [];
  return [...plies(above), ...between, ...plies(below)];
}

const count = (plies: readonly PlacedPly[], name = ''): string => {
  const full = plies.filter(({ over }) => !over).length, strips = plies.length - full;
  return `${full} ${full === 1 ? 'ply' : 'plies'}${name}${strips === 0 ? '' : ` with ${strips} ${strips === 1 ? 'strip' : 'strips'} across the ball`}`;
};

/** "4 plies of carbon twill 200 above and 1 ply below 6 mm of birch plywood, edges turned up 6 mm" */
export function inShort({ below, above, core, edges = 0 }: Stiffener, foam: boolean): string {
  const name = [...above, ...below][0]?.ply.name ?? '', turned = edges > 0 ? `, edges turned up ${length(edges)}` : '';
  if (!core) return `${count(below, ` of ${name}`)}${turned}`;
  return `${count(above, ` of ${name}`)} above and ${count(below)} below ${foam || typeof core.thickness !== 'number' ? core.name : `${length(core.thickness)} of ${core.name}`}${turned}`;
}

const length = (value: Mm): string => `${Number(value.toFixed(1))} mm`;

import { inDegrees, type Mm } from '../geometry/units.ts';
import { directionWords } from './fibres.ts';
import type { Pack } from './pack.ts';
import type { Tried } from './search.ts';
import { at, type Attached, type CoreLayer, type PlacedPly, type Plate, type Sheets, type Stiffener, type Stretch } from './stiffener.ts';

/** One layer of a pack, as it is laid from the last down. */
export interface LaidLayer {
  readonly what: 'ply' | 'core' | 'foam body';
  readonly name: string;
  readonly thickness: Mm;
  /** Degrees. */
  readonly angle?: number;
  /** Ways they run, in words, as on the sheet. */
  readonly fibres?: string;
  readonly sheets?: Sheets;
  /** Of a strip, mm from the heel. */
  readonly over?: Stretch;
}

/** What lies under the last, from it down. A core that changes along the shoe is told as thick as at the ball. */
export function layersDown({ stiffener: { below, above, core }, plate, underFoam }: Pick<Pack, 'stiffener' | 'plate' | 'underFoam'>): LaidLayer[] {
  const plies = (all: readonly PlacedPly[]): LaidLayer[] => all.toReversed().map(({ ply, angle, over }) => ({ what: 'ply', name: ply.name, thickness: ply.thickness, angle: inDegrees(angle), fibres: directionWords({ ply, angle }, 'left'), ...(over ? { over } : {}) }));
  const between: LaidLayer[] = core ? [{ what: underFoam ? 'foam body' : 'core', name: `${core.name}${sheetWords(core)}`, thickness: at(core.thickness, plate.ball), ...(core.sheets ? { sheets: core.sheets } : {}) }] : [];
  return [...plies(above), ...between, ...plies(below)];
}

/** "3 plies of carbon unidirectional 300 and 1 of glass twill 163 with 1 strip across the ball"; names left out where all of the pack is of one cloth that was named before. */
function count(plies: readonly PlacedPly[], { ball }: Pick<Plate, 'ball'>, named = true): string {
  const full = plies.filter(({ over }) => !over), names = [...new Set(full.map(({ ply }) => ply.name))];
  const each = names.map((name, i) => { const n = full.filter(({ ply }) => ply.name === name).length; return `${n}${i === 0 ? (n === 1 ? ' ply' : ' plies') : ''}${named ? ` of ${name}` : ''}`; });
  return `${each.join(' and ')}${stripsWords(plies.filter(({ over }) => over), ball, names)}`;
}

/** " with 1 strip across the ball, 1 strip 170 to 240 mm from the heel" */
function stripsWords(plies: readonly PlacedPly[], ball: Mm, named: readonly string[]): string {
  const other = [...new Set(plies.map(({ ply }) => ply.name))].filter((name) => !named.includes(name)), of = other.length > 0 ? ` of ${other.join(' and ')}` : '';
  const strips = plies.flatMap(({ over }) => over ?? []), across = strips.filter(({ from, to }) => from < ball && to > ball), elsewhere = strips.filter((one) => !across.includes(one));
  const many = across.length === 0 ? [] : [`${across.length} ${across.length === 1 ? 'strip' : 'strips'}${of} across the ball`];
  const all = [...many, ...elsewhere.map(({ from, to }) => `a strip${of} ${Math.round(from)} to ${Math.round(to)} mm from the heel`)];
  return all.length === 0 ? '' : ` with ${all.join(' and ')}`;
}

/** "4 plies of carbon twill 200 above and 1 ply below 6 mm of birch plywood, edges turned up 6 mm" */
export function inShort({ below, above, core, edges = 0, attached }: Stiffener, foam: boolean, plate: Pick<Plate, 'ball'>): string {
  const turned = `${edges > 0 ? `, edges turned up ${length(edges)}` : ''}${attached.flatMap((layer) => stripWords(layer)).join('')}`;
  if (!core) return `${count(below, plate)}${turned}`;
  const oneCloth = new Set([...above, ...below].map(({ ply }) => ply.name)).size === 1;
  const between = foam || typeof core.thickness !== 'number' ? core.name : `${length(core.thickness)} of ${core.name}${sheetWords(core)}`;
  return `${count(above, plate)} above and ${count(below, plate, !oneCloth)} below ${between}${turned}`;
}

/** "4 sheets of 1.5 mm"; nothing of a core that is one sheet. */
export const stackedOf = ({ sheets }: Pick<CoreLayer, 'sheets'>, thick: (value: Mm) => string): string => (sheets && sheets.count > 1 ? `${sheets.count} sheets of ${thick(sheets.thickness)}` : '');
const sheetWords = (core: CoreLayer): string => { const stacked = stackedOf(core, length); return stacked && `, ${stacked}`; };

/** A pack that was tried, in short. */
export const laidIn = ({ stiffener, choice }: Pick<Tried, 'stiffener' | 'choice'>, plate: Pick<Plate, 'ball'>): string => inShort(stiffener, choice.core?.foam === true, plate);

/** ", with a shank of spring steel 1.5 × 12 mm" */
const stripWords = ({ name, thickness, width, yieldsAt }: Attached): string[] =>
  (yieldsAt === undefined || width === undefined || typeof thickness !== 'number' ? [] : [`, with a ${name} ${Number(thickness.toFixed(1))} × ${length(width)}`]);

const length = (value: Mm): string => `${Number(value.toFixed(1))} mm`;

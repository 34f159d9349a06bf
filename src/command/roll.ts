import { resolve } from 'node:path';
import type { RolledFigure, SolidRoll, Misplaced } from '../checks/solidRoll.ts';
import { inUnitOf, mm, rounded } from '../checks/say.ts';
import type { Design } from '../design.ts';
import type { LengthUnit } from '../fitting/lengthUnit.ts';
import type { Side } from '../fitting/words.ts';
import type { Mesh } from '../geometry/mesh.ts';
import { stlMesh, type NotStl } from '../geometry/stlMesh.ts';
import { inDegrees, type Mm } from '../geometry/units.ts';
import type { RockerShoe } from '../pair/shoe.ts';
import { designFrom } from './designFrom.ts';
import { EXIT, jsonText, onDisk, printable, Refusal, type Exit } from './refusal.ts';
import { fittingFrom } from './sheetFile.ts';
import { leftOf, table, wrapped } from './textTable.ts';
import type { World } from './world.ts';

export interface AskedToRoll { readonly sheet: string; readonly solid: string; readonly side: Side | undefined; readonly json: boolean }

/** Rolls a solid that lies in a file and prints how it differs from the sole as planned. Writes no file. @throws Refusal */
export async function roll(world: World, { sheet, solid, side, json }: AskedToRoll): Promise<Exit> {
  const fitting = await fittingFrom(world, { sheet, with: [] }), design = await designFrom(fitting), shoe = shoeOf(design, side, sheet);
  const { solidRoll, solidRollNumbers } = await import('../checks/solidRoll.ts'), rolled = solidRoll(shoe, fitting, await meshIn(world, solid));
  if (rolled.kind === 'misplaced') throw new Refusal(EXIT.sheet, misplacedWords(solid, rolled, fitting.units));
  world.out.write(json ? jsonText({ reference: fitting.job.reference, ...solidRollNumbers(rolled) }) : wordsOf(`${fitting.job.reference} ${rolled.side}: ${printable(solid)}`, rolled, fitting.units, world.out.columns));
  return EXIT.good;
}

/** The shoe that rolls; of two the one that was named. @throws Refusal */
function shoeOf({ shoes }: Design, side: Side | undefined, sheet: string): RockerShoe {
  const rockers = shoes.flatMap((shoe) => (shoe.kind === 'rocker' ? [shoe] : [])), named = rockers.filter((shoe) => side === undefined || shoe.side === side);
  if (named.length === 1) return named[0]!;
  const has = rockers.map((shoe) => shoe.side).join(' and ');
  throw new Refusal(EXIT.commandLine, side === undefined ? `Which shoe is it? ${printable(sheet)} has a rocker on ${has}: --side left or --side right.` : `The ${side} shoe of ${printable(sheet)} is no rocker; rockers: ${has}.`);
}

/** Larger solids are not read: a scan is thinned first. */
const SOLID_MAX_BYTES = 200_000_000;
const NOT_STL: Readonly<Record<NotStl, string>> = {
  'too short': 'it is too short to be an STL file', 'cut off': 'it is no STL file, or it ends in the middle of a triangle; write or copy it again',
  empty: 'it holds no triangle', 'not a number': 'a corner in it is no number',
};

/** @throws Refusal when it cannot be read */
async function meshIn({ disk, here }: World, path: string): Promise<Mesh> {
  const full = resolve(here, path), there = await onDisk('read', path, () => disk.look(full, 'follow'));
  if (there?.kind !== 'file') throw new Refusal(EXIT.disk, `${printable(path)} is ${there ? 'not a file' : 'not there; is the name spelt right, and the folder?'}`);
  if (there.size > SOLID_MAX_BYTES) throw new Refusal(EXIT.disk, `${printable(path)} is larger than ${SOLID_MAX_BYTES / 1e6} MB; thin the scan out first, a triangle of 1 mm is fine enough.`);
  const mesh = stlMesh(await onDisk('read', path, () => disk.read(full)));
  if (typeof mesh === 'string') throw new Refusal(EXIT.disk, `${printable(path)} cannot be read: ${NOT_STL[mesh]}.`);
  return mesh;
}

function misplacedWords(solid: string, { side, off, looksLike }: Misplaced, units: LengthUnit): string {
  const far = Object.entries(off).map(([where, by]) => `${where} ${inUnitOf(units, mm(by))}`).join(', ');
  return `${printable(solid)} does not lie where the planned ${side} sole lies, so it was not rolled. ${looksLike ? `Its numbers look like ${looksLike}; write it in mm.` : `Its box is off by: ${far}. Turn and move it as the exported sole lies (rearmost point of the last's bottom at 0, forward, floor at 0), and is it the right shoe?`}`;
}

/** A sole that was made after its plan strays by less, even a worn one. */
const OTHERWISE: Mm = 5;

const FIGURE = 40, NUMBER = 24;

function wordsOf(title: string, { triangles, figures, strays, gaps }: SolidRoll, units: LengthUnit, columns: number): string {
  const heads = [{ head: 'figure', most: Math.max(FIGURE, leftOf(columns, [NUMBER, NUMBER, NUMBER])) }, ...['planned', 'this solid', 'difference'].map((head) => ({ head, most: NUMBER }))];
  return [
    ...wrapped(`${title}, ${triangles} triangles, rolled on the hull of its outline beside the sole as planned.`, columns), '',
    ...table(heads, figures.map((figure) => row(figure, units))).filter((line) => line !== ''), '',
    ...strays.flatMap(({ point, most, roll: at }) => wrapped(`The ${point} comes ${inUnitOf(units, mm(Math.abs(most), 2))} ${most < 0 ? 'below' : 'above'} its planned height at most, rolled by ${rounded(inDegrees(at), 1)}°.`, columns)),
    ...(strays.some(({ most }) => Math.abs(most) > OTHERWISE) ? wrapped(`That is more than ${inUnitOf(units, mm(OTHERWISE, 0))}: is it this shoe, and does it lie as the exported sole lies?`, columns) : []),
    ...(gaps.length === 0 ? ['It touches the floor all along, heel to toe.'] : gaps.flatMap((gap) => wrapped(gapWords(gap, units), columns))),
  ].map((line) => `${line}\n`).join('');
}

function row({ planned: { label, value }, found, estimated }: RolledFigure, units: LengthUnit): string[] {
  const length = (one: number): string => inUnitOf(units, mm(one));
  return [label, `${length(value)}${estimated ? ' (est.)' : ''}`, length(found), length(found - value)];
}

const gapWords = ({ from, to, deep, hipDips }: SolidRoll['gaps'][number], units: LengthUnit): string =>
  inUnitOf(units, `From ${mm(from, 0)} to ${mm(to, 0)} from the heel it does not touch: ${mm(deep)} deep. It falls across there, and the hip dips by ${mm(hipDips, 2)}.`);

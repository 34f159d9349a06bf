import { basename, dirname, join, resolve } from 'node:path';
import type { Finding } from '../checks/finding.ts';
import type { Fitting } from '../fitting/fitting.ts';
import { SIDES } from '../fitting/words.ts';
import { finished } from '../geometry/finished.ts';
import type { Answer } from '../targets/seek.ts';
import type { TradeOff } from '../targets/tradeOff.ts';
import { findingsTable } from './findingsTable.ts';
import { EXIT, jsonText, onDisk, printable, Refusal, type Exit } from './refusal.ts';
import { FaultySheet, sheetText } from './sheetFile.ts';
import { table } from './textTable.ts';
import type { World } from './world.ts';

export interface AskedToSeek { readonly sheet: string; readonly json: boolean; readonly curve: boolean; readonly take: string | undefined }

/** Prints the best rocker within the targets of a sheet; with `take` writes a new sheet with its values, whole or not at all. @throws Refusal */
export async function seek(world: World, asked: AskedToSeek): Promise<Exit> {
  const { readSheet, SHEET_MAX_BYTES } = await import('../fitting/readSheet.ts'), text = await sheetText(world, asked.sheet, SHEET_MAX_BYTES);
  const reading = readSheet(text);
  if (!reading.ok) throw new FaultySheet(reading.faults);
  if (asked.take !== undefined) await requireFree(world, asked.take);
  const fitting = (await import('../designWith.ts')).packsCounted(reading.fitting), found = await answersFor(world, fitting, asked.curve);
  if (found.length === 0) throw new Refusal(EXIT.sheet, `No shoe on ${printable(asked.sheet)} has targets to seek for; they stand at order.targets of a rocker.`);
  world.out.write(asked.json ? jsonText(await numbersOf(fitting, found)) : await wordsOf(fitting, found));
  const none = found.some(({ answer }) => !answer.ok);
  if (asked.take !== undefined && !none) await take(world, { text, fitting, found, into: asked.take, quiet: asked.json });
  if (asked.take !== undefined && none) world.err.write(`${printable(asked.take)} was not written: not every shoe can keep to its limits.\n`);
  return none ? EXIT.sheet : EXIT.good;
}

interface Sought { readonly answer: Answer; readonly curve: TradeOff | undefined }

async function answersFor({ err }: World, fitting: Fitting, curve: boolean): Promise<Sought[]> {
  const { seek: seeking } = await import('../targets/seek.ts'), { tradeOff } = await import('../targets/tradeOff.ts');
  return SIDES.flatMap((side) => {
    if (err.isTerminal && fitting.shoes[side]?.order.kind === 'rocker') err.write(`Seeking for the ${side} shoe.\n`);
    const answer = finished(seeking(fitting, side));
    return answer ? [{ answer, curve: curve ? finished(tradeOff(fitting, side)) : undefined }] : [];
  });
}

/** As in design.json: nothing hangs on the last digit. */
const DIGITS = 6;

async function numbersOf({ job: { reference } }: Fitting, found: readonly Sought[]): Promise<object> {
  const { answerNumbers, curveNumbers } = await import('../exports/targetNumbers.ts');
  const shoes = found.map(({ answer, curve }) => ({ ...answerNumbers(answer), ...(curve ? { curve: curveNumbers(curve) } : {}) }));
  return { reference, shoes: JSON.parse(JSON.stringify(shoes, (_, value: unknown) => (typeof value === 'number' ? Number(value.toFixed(DIGITS)) : value))) as object };
}

async function wordsOf({ job: { reference }, units }: Fitting, found: readonly Sought[]): Promise<string> {
  const { blameSaid, curveRows, CURVE_HEADS, FIGURE_HEADS, figureRows, HELD_UP, LIMIT_HEADS, limitRows, lossSaid, sayOn, VALUE_HEADS, valueRows } = await import('../targets/words.ts'), say = sayOn(units);
  return found.map(({ answer, curve }) => {
    const told = answer.ok
      ? [`${reference} ${answer.side}: ${lossSaid(answer.best.loss, say)}`, ...rowsUnder(VALUE_HEADS, valueRows(answer.best, say)), ...rowsUnder(LIMIT_HEADS, limitRows(answer, answer.best, say)), ...rowsUnder(FIGURE_HEADS, figureRows(answer, answer.best, say))]
      : [`${reference} ${answer.side}: no rocker keeps to all limits.`, ...blameSaid(answer.blame, say)];
    return [...told, ...(answer.heldUp ? [HELD_UP] : []), ...(curve ? rowsUnder(CURVE_HEADS, curveRows(curve, say)) : [])].map((line) => `${line}\n`).join('');
  }).join('\n');
}

/** Rows close together, below an empty line. */
const rowsUnder = (heads: readonly string[], rows: readonly (readonly string[])[]): string[] =>
  ['', ...table(heads.map((head) => ({ head, most: WIDEST })), rows).filter((line) => line !== '')];
const WIDEST = 44;

/** @throws Refusal where something lies there already */
async function requireFree({ disk, here }: World, into: string): Promise<void> {
  const full = resolve(here, into);
  if (await onDisk('written', into, () => disk.look(full, 'show')))
    throw new Refusal(EXIT.disk, `${printable(into)} is there already and stays as it is; take another name.`);
}

interface Taking { readonly text: string; readonly fitting: Fitting; readonly found: readonly Sought[]; readonly into: string; readonly quiet: boolean }

/** Writes the new sheet, once it has been read again, and says what checks would find on it that they do not find now. */
async function take(world: World, { text, fitting, found, into, quiet }: Taking): Promise<void> {
  const { withTaken } = await import('../targets/taken.ts'), { readSheet } = await import('../fitting/readSheet.ts'), { readJson } = await import('../fitting/jsonText.ts');
  const json = readJson(text), sheet = found.reduce<unknown>((made, { answer }) => (answer.ok ? withTaken(made, answer.side, answer.best) : made), json.ok ? json.value : {});
  const written = jsonText(sheet as object), again = readSheet(written);
  if (!again.ok) throw new FaultySheet(again.faults);
  await writeWhole(world, into, written);
  if (quiet) return;
  const fresh = await newFindings(fitting, again.fitting);
  world.out.write(`\n${printable(into)} is written, with the values that change. The sheet they were sought for stays as it is.\n`);
  if (fresh.length) world.out.write(`rockerbench check finds on it, besides what it finds now:\n${findingsTable(fresh, world.out, fitting.units === 'in')}`);
}

/** Into a hidden file beside it, which is renamed once it is on the disk. */
async function writeWhole({ disk, here, process }: World, into: string, text: string): Promise<void> {
  const full = resolve(here, into), part = join(dirname(full), `.${basename(full)}.part-${process.id}`);
  try {
    await onDisk('written', into, () => disk.write(part, new TextEncoder().encode(text)));
    await onDisk('written', into, () => disk.rename(part, full));
  } catch (error) {
    await disk.remove(part).catch(() => undefined);
    throw error;
  }
}

/** Warnings and stops that the values bring with them. */
async function newFindings(before: Fitting, after: Fitting): Promise<readonly Finding[]> {
  const { design } = await import('../design.ts'), old = design(before), made = design(after);
  const known = new Set(old.ok ? old.design.findings.map(nameOf) : []);
  return made.ok ? made.design.findings.filter((finding) => finding.severity !== 'note' && !known.has(nameOf(finding))) : [];
}
const nameOf = ({ code, side, severity }: Finding): string => `${code} ${side ?? ''} ${severity}`;

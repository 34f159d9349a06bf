import type { Finding } from '../checks/finding.ts';
import { stopsLeft } from '../checks/overrides.ts';
import { designFrom, NoShape } from './designFrom.ts';
import { findingsTable, tally } from './findingsTable.ts';
import { EXIT, type Exit } from './refusal.ts';
import { FaultySheet, fittingFrom } from './sheetFile.ts';
import type { World } from './world.ts';

/** Prints what a careful maker would want to know before cutting. Writes no file. @throws Refusal */
export async function check(world: World, asked: { readonly sheet: string; readonly json: boolean }): Promise<Exit> {
  return asked.json ? checkForMachines(world, asked.sheet) : checkForMakers(world, asked.sheet);
}

const exitFor = (findings: readonly Finding[]): Exit => (stopsLeft(findings).length ? EXIT.stops : EXIT.good);

async function checkForMakers(world: World, sheet: string): Promise<Exit> {
  const fitting = await fittingFrom(world, sheet), { findings } = await designFrom(fitting), { out } = world;
  if (findings.length) out.write(`${findingsTable(findings, out, fitting.units === 'in')}\n`);
  out.write(`${fitting.job.reference}: ${tally(findings)}\n${howToGoOn(findings)}`);
  return exitFor(findings);
}

/** One JSON text on the standard output whatever comes of it: findings, or what keeps them from being found. */
async function checkForMachines(world: World, sheet: string): Promise<Exit> {
  const print = (value: object): void => world.out.write(`${JSON.stringify(value, undefined, 2)}\n`);
  try {
    const fitting = await fittingFrom(world, sheet), { findings } = await designFrom(fitting);
    print({ reference: fitting.job.reference, findings });
    return exitFor(findings);
  } catch (error) {
    if (error instanceof FaultySheet) print({ faults: error.faults });
    if (error instanceof NoShape) print({ troubles: error.troubles });
    throw error;
  }
}

/** What can be done about the stops that are left, a line; empty when there are none. */
export function howToGoOn(findings: readonly Finding[]): string {
  const codes = [...new Set(stopsLeft(findings).map(({ code }) => code))];
  return codes.length === 0 ? '' : `While a stop is left nothing is made. Correct the sheet, or take the stop on your own name under overrides: ${codes.join(', ')}.\n`;
}

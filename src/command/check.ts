import type { Design } from '../checks/design.ts';
import type { Finding } from '../checks/finding.ts';
import { stopsLeft } from '../checks/overrides.ts';
import { designFrom } from './designFrom.ts';
import { findingsTable, tally } from './findingsTable.ts';
import type { MakingName } from '../fitting/words.ts';
import { EXIT, jsonText, type Exit } from './refusal.ts';
import { FaultySheet, fittingFrom } from './sheetFile.ts';
import type { World } from './world.ts';

type AskedToCheck = { readonly sheet: string; readonly with: readonly MakingName[]; readonly spread: boolean; readonly stiffener: boolean };

/** Prints what a careful maker would want to know before cutting. Writes no file. @throws Refusal */
export async function check(world: World, asked: AskedToCheck & { readonly json: boolean }): Promise<Exit> {
  return asked.json ? checkForMachines(world, asked) : checkForMakers(world, asked);
}

const exitFor = ({ findings, mouldFaults }: Design): Exit =>
  mouldFaults.length ? EXIT.sheet : stopsLeft(findings).length ? EXIT.stops : EXIT.good;

/** Findings first; a mould that cannot be made takes nothing away from what is known of the soles. */
async function checkForMakers(world: World, asked: AskedToCheck): Promise<Exit> {
  const fitting = await fittingFrom(world, asked), design = await designFrom(fitting), { out } = world, { findings, mouldFaults } = design;
  if (findings.length) out.write(`${findingsTable(findings, out, fitting.units === 'in')}\n`);
  out.write(`${fitting.job.reference}: ${tally(findings)}\n${howToGoOn(findings)}`);
  if (asked.spread) out.write(`\n${(await import('./spreadTable.ts')).spreadTable(design, out.columns)}`);
  if (asked.stiffener) out.write(`\n${(await import('./stiffenerTable.ts')).stiffenerTable(design, out.columns)}`);
  if (mouldFaults.length) world.err.write(`${new FaultySheet(mouldFaults).message}\n`);
  return exitFor(design);
}

/** One JSON text on the standard output; what keeps the findings from being found is printed where it ends up. */
async function checkForMachines(world: World, asked: AskedToCheck): Promise<Exit> {
  const fitting = await fittingFrom(world, asked), design = await designFrom(fitting), { findings, mouldFaults } = design;
  world.out.write(jsonText({ reference: fitting.job.reference, findings, ...(asked.spread ? { spread: await spreadOf(design) } : {}), ...(asked.stiffener ? { stiffeners: await stiffenersOf(design) } : {}), ...(mouldFaults.length ? { faults: mouldFaults } : {}) }));
  return exitFor(design);
}

async function stiffenersOf({ shoes, fitting }: Design): Promise<readonly object[]> {
  const [{ packFor }, { packNumbers }] = await Promise.all([import('../stiffener/pack.ts'), import('../exports/packNumbers.ts')]);
  return shoes.flatMap((shoe) => { const numbers = packNumbers(packFor(shoe, fitting)); return numbers ? [{ side: shoe.side, ...numbers }] : []; });
}

async function spreadOf(design: Design): Promise<readonly object[]> {
  const [{ linearSpread }, { sampledSpread }, { spreadNumbers, sampleNumbers }] = await Promise.all([import('../spread/linear.ts'), import('../spread/sampled.ts'), import('../exports/spreadNumbers.ts')]);
  const samples = sampledSpread(design);
  return linearSpread(design).map((spread, i) => ({ side: spread.side, ...spreadNumbers(spread), samples: sampleNumbers(samples[i]!) }));
}

/** What can be done about the stops that are left; empty when there are none. */
export function howToGoOn(findings: readonly Finding[]): string {
  const codes = [...new Set(stopsLeft(findings).map(({ code }) => code))];
  return codes.length === 0 ? '' : `While a stop is left nothing is made. Correct the sheet; or take the stop on your own name, and write on the sheet
  "overrides": [${codes.map((code) => `{ "code": "${code}", "by": "your name", "reason": "why" }`).join(',\n                ')}]
`;
}

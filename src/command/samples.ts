import { join } from 'node:path';
import { EXIT, onDisk, printable, Refusal, type Exit } from './refusal.ts';
import type { World } from './world.ts';

/** Lists the samples that come with the package, or prints the sheet of one. @throws Refusal */
export async function samples(world: World, name: string | undefined): Promise<Exit> {
  const folder = join(world.home, 'samples'), names = await sampleNames(world, folder);
  if (name === undefined) {
    const widest = Math.max(...names.map((one) => one.length));
    for (const one of names) world.out.write(`${one.padEnd(widest)}  ${about(await sheetOf(world, folder, one))}\n`);
    world.err.write(`\nThe clients are invented, and so are their measures. ${BEGIN}\n`);
  } else if (names.includes(name)) {
    world.out.write(await sheetOf(world, folder, name));
    world.err.write(`Every measure on this sheet is that of the sample "${name}", not of your client. ${BEGIN}\n`);
  } else throw new Refusal(EXIT.commandLine, `There is no sample "${printable(name)}". Samples: ${names.join(', ')}.`);
  return EXIT.good;
}

async function sampleNames({ disk }: World, folder: string): Promise<string[]> {
  const names = await onDisk('looked into', folder, () => disk.list(folder));
  const kinds = await Promise.all(names.map((name) => disk.look(join(folder, name, SHEET), 'follow')));
  return names.filter((_, i) => kinds[i]?.kind === 'file').sort();
}

const BEGIN = 'For a client of your own begin with an empty sheet: rockerbench help blank';
const SHEET = 'sheet.json';

async function sheetOf({ disk }: World, folder: string, name: string): Promise<string> {
  const path = join(folder, name, SHEET);
  return new TextDecoder().decode(await onDisk('read', path, () => disk.read(path)));
}

/** As much of a sample's sheet as its line in the list needs; the samples are held to the schema by their tests. */
interface SampleSheet {
  readonly units: string;
  readonly job: { readonly reference: string };
  readonly left?: SampleShoe;
  readonly right?: SampleShoe;
}
interface SampleShoe { readonly foot?: { readonly stiff: { readonly joint: string; readonly state: string } }; readonly order: { readonly kind: string } }

function about(text: string): string {
  const { units, job, left, right } = JSON.parse(text) as SampleSheet;
  const shoe = (side: string, { foot, order }: SampleShoe): string =>
    `${side} ${order.kind}${order.kind === 'rocker' && foot ? ` (${foot.stiff.joint}, ${foot.stiff.state})` : ''}`;
  return [job.reference, ...(left ? [shoe('left', left)] : []), ...(right ? [shoe('right', right)] : []), `in ${units === 'in' ? 'inches' : 'mm'}`].join(', ');
}

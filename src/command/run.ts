import { join } from 'node:path';
import { commandLine, type Asked } from './commandLine.ts';
import { helpText } from './help.ts';
import { EXIT, jsonText, onDisk, Refusal, type Exit } from './refusal.ts';
import type { World } from './world.ts';

/**
 * The whole command: reads its words, does what they ask for and says in plain words what went wrong.
 * @param words the words after the command's name
 * @returns what to end with, see EXIT
 */
export async function run(words: readonly string[], world: World): Promise<Exit> {
  try { return await perform(commandLine(words), world); }
  catch (error) {
    const refusal = error instanceof Refusal ? error : new Refusal(EXIT.bug, `${BUG}\n${error instanceof Error ? error.stack : String(error)}`);
    world.err.write(`${refusal.message.trimEnd()}\n`);
    if (forMachines(words)) world.out.write(jsonText(refusal.forMachines()));
    return refusal.exit;
  }
}

const BUG = 'This is a fault of rockerbench, not of your sheet. Nothing was made. Please report it with the sheet:';

/** Whoever asks for JSON gets one JSON text, whatever comes of it. */
const forMachines = ([verb, ...rest]: readonly string[]): boolean => (verb === 'check' || verb === 'seek' || verb === 'roll') && rest.includes('--json');

/** What a verb needs is loaded only when it is asked for: help and faults come at once. */
async function perform(asked: Asked, world: World): Promise<Exit> {
  switch (asked.verb) {
    case 'make': return (await import('./make.ts')).make(world, asked);
    case 'check': return (await import('./check.ts')).check(world, asked);
    case 'seek': return (await import('./seek.ts')).seek(world, asked);
    case 'roll': return (await import('./roll.ts')).roll(world, asked);
    case 'samples': return (await import('./samples.ts')).samples(world, asked.name);
    case 'blank': return (await import('./blank.ts')).blank(world, asked);
    case 'schema': return printed(world, jsonText((await import('../fitting/schema.ts')).sheetJsonSchema()));
    case 'help': return printed(world, helpText(asked.about));
    case 'version': return printed(world, `${await version(world)}\n`);
  }
}

function printed({ out }: World, text: string): Exit {
  out.write(text);
  return EXIT.good;
}

async function version({ disk, home }: World): Promise<string> {
  const path = join(home, 'package.json'), text = new TextDecoder().decode(await onDisk('read', path, () => disk.read(path)));
  return (JSON.parse(text) as { readonly version: string }).version;
}

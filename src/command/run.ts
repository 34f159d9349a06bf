import { join } from 'node:path';
import { commandLine, type Asked } from './commandLine.ts';
import { helpText } from './help.ts';
import { EXIT, onDisk, Refusal, type Exit } from './refusal.ts';
import type { World } from './world.ts';

/**
 * The whole command: reads its words, does what they ask for and says in plain words what went wrong.
 * @param words the words after the command's name
 * @returns what to end with, see EXIT
 */
export async function run(words: readonly string[], world: World): Promise<Exit> {
  try { return await perform(commandLine(words), world); }
  catch (error) {
    if (error instanceof Refusal) {
      world.err.write(`${error.message.trimEnd()}\n`);
      return error.exit;
    }
    world.err.write(`This is a fault of rockerbench, not of your sheet. Nothing was made. Please report it with the sheet:\n${error instanceof Error ? error.stack : String(error)}\n`);
    return EXIT.bug;
  }
}

/** What a verb needs is loaded only when it is asked for: help and faults come at once. */
async function perform(asked: Asked, world: World): Promise<Exit> {
  switch (asked.verb) {
    case 'make': return (await import('./make.ts')).make(world, asked);
    case 'check': return (await import('./check.ts')).check(world, asked);
    case 'samples': return (await import('./samples.ts')).samples(world, asked.name);
    case 'schema': return printed(world, `${JSON.stringify((await import('../fitting/schema.ts')).sheetJsonSchema(), undefined, 2)}\n`);
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

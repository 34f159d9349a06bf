#!/usr/bin/env node
import { realWorld } from './realWorld.ts';
import { run } from './run.ts';

// Whoever reads the output may stop early, as `head` does; that is no fault.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => { if (error.code !== 'EPIPE') throw error; });
}
process.exitCode = await run(process.argv.slice(2), realWorld());

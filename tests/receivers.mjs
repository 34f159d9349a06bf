#!/usr/bin/env node
// Holds made files to programs that share nothing with this one: node tests/receivers.mjs FOLDER...
// admesh must read every STL without mending anything. Where ROCKERBENCH_CHECKERS names a folder, its stlcheck.py,
// dxfcheck.py and pagecheck.py are run as well. Ends with 1 if any file is refused, or if there is nothing to judge.
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';

const folders = process.argv.slice(2), checkers = process.env.ROCKERBENCH_CHECKERS;
const files = folders.flatMap((folder) => readdirSync(folder, { recursive: true }).map((name) => join(folder, name)));
const refusals = [];
const judged = {};

/** Runs a program on a file; whatever it complains of is kept under the file's name. */
function judge(file, judgeName, command, words, complaintIn = exitComplaint) {
  const ran = spawnSync(command, words, { encoding: 'utf8', maxBuffer: 2 ** 26 });
  judged[judgeName] = (judged[judgeName] ?? 0) + 1;
  const complaint = ran.error?.message ?? complaintIn(ran);
  if (complaint) refusals.push(`${file}: ${judgeName}: ${complaint}`);
}

const exitComplaint = ({ status, stdout, stderr }) => (status === 0 ? '' : `ended with ${status}: ${lastLine(stdout) || lastLine(stderr)}`);
const lastLine = (text) => text.trim().split('\n').at(-1);

// admesh ends with 0 for holes and flips too, so its counts are read.
const COUNTS = ['Degenerate facets', 'Edges fixed', 'Facets removed', 'Facets added', 'Facets reversed', 'Backwards edges', 'Normals fixed'];

function admeshComplaint(ran) {
  if (ran.status !== 0) return exitComplaint(ran);
  const open = /Total disconnected facets\s*:\s*(\d+)\s+(\d+)/.exec(ran.stdout);
  if (!open || open[1] !== '0' || open[2] !== '0') return `disconnected facets: ${open ? open.slice(1).join(' ') : 'no count'}`;
  const bad = COUNTS.map((name) => [name, new RegExp(`${name}\\s*:\\s*(\\d+)`).exec(ran.stdout)?.[1]]).filter(([, count]) => count !== '0');
  return bad.map(([name, count]) => `${name}: ${count ?? 'no count'}`).join(', ');
}

/** Layers that must be closed all round, by the end of the file's name. */
const CLOSED = { '_outlines.dxf': ['FEATHER_LINE', 'EDGE_LINE', 'GROUND_LINE'], '_outsole-flat.dxf': ['OUTSOLE_FLAT'] };
const closedIn = (file) => Object.entries(CLOSED).flatMap(([end, layers]) => (file.endsWith(end) ? layers : [])).flatMap((layer) => ['--closed', layer]);

const check = (file, tool, words) => judge(file, tool, 'python3', [join(checkers, tool), ...words, file]);

for (const file of files) {
  if (file.endsWith('.stl')) {
    judge(file, 'admesh', 'admesh', [file], admeshComplaint);
    if (checkers) check(file, 'stlcheck.py', ['--strict', '--quiet']);
  }
  if (checkers && file.endsWith('.dxf')) check(file, 'dxfcheck.py', ['--quiet', '--extents', ...closedIn(file)]);
  // Papers carry two lines of 100 mm to prove the print.
  if (checkers && /\.(svg|pdf)$/.test(file)) check(file, 'pagecheck.py', ['--quiet', '--bar', '100', '--bar-both']);
}

for (const refusal of refusals) console.error(refusal);
console.log(`${files.length} files in ${folders.length} folders; ${Object.entries(judged).map(([name, count]) => `${name} ${count}`).join(', ')}; ${refusals.length} refused`);
process.exitCode = refusals.length || !judged.admesh || (checkers && Object.keys(judged).length < 4) ? 1 : 0;

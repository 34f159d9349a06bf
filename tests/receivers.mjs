#!/usr/bin/env node
// Holds made files to programs that share nothing with this one: node tests/receivers.mjs FOLDER...
// admesh must read every STL without mending anything; where PrusaSlicer is installed, it must read every STL and 3MF
// without mending, and find the volume and size that stand in the file. Where ROCKERBENCH_CHECKERS names a folder, its stlcheck.py,
// stlslice.py, dxfcheck.py and pagecheck.py are run as well. Ends with 1 if any file is refused, or if there is nothing to judge.
import { strFromU8, unzipSync } from 'fflate';
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';

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

/** @returns {{ positions: number[][], triangles: number[][] }[]} the solids of an STL or 3MF file, read without the writers */
function solidsIn(file) {
  const bytes = readFileSync(file);
  if (file.endsWith('.3mf')) return Object.entries(unzipSync(bytes)).filter(([name]) => name.endsWith('.model')).flatMap(([, xml]) => objectsIn(strFromU8(xml)));
  const corners = Array.from({ length: bytes.readUInt32LE(80) * 3 }, (_, i) => [0, 4, 8].map((k) => bytes.readFloatLE(96 + Math.floor(i / 3) * 50 + (i % 3) * 12 + k)));
  return [{ positions: corners, triangles: Array.from({ length: corners.length / 3 }, (_, i) => [3 * i, 3 * i + 1, 3 * i + 2]) }];
}

/** Objects in the order of their items, each as it is turned and moved onto the bed: a row of numbers times a matrix of four rows. */
const objectsIn = (xml) => [...xml.matchAll(/<item\b[^>]*>/g)].map(([item]) => {
  const [object] = new RegExp(`<object id="${/\bobjectid="(\d+)"/.exec(item)[1]}"[\\s\\S]*?</object>`).exec(xml), m = (/\btransform="([^"]*)"/.exec(item)?.[1] ?? '1 0 0 0 1 0 0 0 1 0 0 0').split(' ').map(Number);
  const placed = ([x, y, z]) => [0, 1, 2].map((k) => x * m[k] + y * m[3 + k] + z * m[6 + k] + m[9 + k]);
  const numbers = (tag, names) => [...object.matchAll(new RegExp(`<${tag}\\b([^>]*)>`, 'g'))].map(([, words]) => names.map((name) => Number(new RegExp(`\\b${name}="([^"]*)"`).exec(words)[1])));
  return { positions: numbers('vertex', ['x', 'y', 'z']).map(placed), triangles: numbers('triangle', ['v1', 'v2', 'v3']) };
});

function volumeIn(solids) {
  let six = 0;
  for (const { positions, triangles } of solids) for (const corners of triangles) {
    const [[ax, ay, az], [bx, by, bz], [cx, cy, cz]] = corners.map((i) => positions[i]);
    six += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  }
  return six / 6;
}

/** What the slicer mended before it said that all is well. */
const MENDED = ['open_edges', 'edges_fixed', 'degenerate_facets', 'facets_removed', 'facets_reversed', 'backwards_edges'];

/** The slicer reckons in single precision, and takes the turn of a 3MF item apart into three angles, which costs it thousandths. */
const SAME_VOLUME = 1e-4, SAME_SIZE = 0.001, SAME_TURNED = 0.005;

function slicerComplaint(file, ran) {
  const told = (name) => [...ran.stdout.matchAll(new RegExp(`^${name}\\s*=\\s*(\\S+)`, 'gm'))].map(([, value]) => value), solids = solidsIn(file);
  if (ran.status !== 0 || told('manifold').length === 0 || told('manifold').some((word) => word !== 'yes')) return `not a solid: ${lastLine(ran.stdout) || lastLine(ran.stderr)}`;
  const mended = MENDED.filter((name) => told(name).length > 0), volume = told('volume').reduce((sum, one) => sum + Number(one), 0), ours = volumeIn(solids);
  if (mended.length) return `mended ${mended.join(', ')}`;
  if (Math.abs(volume - ours) > SAME_VOLUME * ours) return `volume ${volume} mm3, in the file ${ours}`;
  const sizes = solids.map(({ positions }) => [0, 1, 2].map((k) => Math.max(...positions.map((at) => at[k])) - Math.min(...positions.map((at) => at[k]))));
  const off = ['x', 'y', 'z'].filter((axis, k) => told(`size_${axis}`).some((size, i) => Math.abs(Number(size) - sizes[i]?.[k]) > (file.endsWith('.3mf') ? SAME_TURNED : SAME_SIZE)));
  return off.length ? `size along ${off.join(', ')}` : '';
}

/** Layers that must be closed all round, by the file's name, where the file has them. */
const CLOSED = [
  [/_outlines\.dxf$/, ['FEATHER_LINE', 'EDGE_LINE', 'GROUND_LINE']], [/_outsole-flat\.dxf$/, ['OUTSOLE_FLAT']], [/_mould\.dxf$/, ['CAVITY_EDGE', 'MOULD_BORDER']],
  [/_(jig-board|gauges|trial-templates)[^_]*\.dxf$/, ['CUT_OUT', 'CUT_IN']], [/_stack-sheet-\d+\.dxf$/, ['CUT']], [/_block-\d\.dxf$/, ['BLOCK', 'POCKET']],
  [/_plies\.dxf$/, Array.from({ length: 40 }, (_, i) => [`PLY_${i + 1}`, `CORE_${i + 1}`]).flat()], [/_plies-cloth-\d+\.dxf$/, ['CUT']],
];
/** On a board or a sheet scribed lines may end beside each other, so only what is cut is looked at for gaps. */
const ON_BOARDS = ['CUT_OUT', 'CUT'], NEAR_ON_BOARD = ['--near', '0.2'];

function closedIn(file) {
  const layers = CLOSED.flatMap(([name, wanted]) => (name.test(file) ? wanted : [])), text = readFileSync(file, 'utf8');
  const there = layers.filter((layer) => text.includes(`\r\n  8\r\n${layer}\r\n`));
  return [...there.flatMap((layer) => ['--closed', layer]), ...(layers.some((layer) => ON_BOARDS.includes(layer)) ? NEAR_ON_BOARD : [])];
}

const check = (file, tool, words) => judge(file, tool, 'python3', [join(checkers, tool), ...words, file]);

/** Rocker shoes of a folder by the stem of their files, from the numbers that lie beside them. */
function rockersIn(folder) {
  const design = readdirSync(folder).find((name) => name.endsWith('_design.json'));
  const { shoes } = JSON.parse(readFileSync(join(folder, design), 'utf8')), reference = design.slice(0, -'_design.json'.length);
  return shoes.filter(({ kind }) => kind === 'rocker').map((shoe) => ({ stem: join(folder, `${reference}_${shoe.side}`), ...shoe }));
}

/** A column of vertices runs along the walking line; turning leaves it a rounding off the cut. */
const SAME_PLACE = 1e-4;

/** Turns a solid about the upright through the apex, so that a cut along y = 0 is square to its crest. */
function squareToCrest(file, apexX, turn) {
  const bytes = Buffer.from(readFileSync(file)), [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  for (let at = 84; at < bytes.length; at += 50) for (let k = 0; k < 4; k++) {
    const place = at + 12 * k, zero = k === 0 ? 0 : apexX, x = bytes.readFloatLE(place) - zero, y = bytes.readFloatLE(place + 4);
    bytes.writeFloatLE(x * cos + y * sin + zero, place);
    const across = y * cos - x * sin;
    bytes.writeFloatLE(Math.abs(across) < SAME_PLACE ? 0 : across, place + 4);
  }
  const turned = join(turnedFiles, basename(file));
  writeFileSync(turned, bytes);
  return turned;
}

const clampTo = (x, least, most) => Math.min(most, Math.max(least, x));

/**
 * Arcs long enough to be measured on facets must give back their radius: within 0.05 mm, the mid arc 0.5 mm, or what the
 * length of the arc allows; where arcs meet they kink by less than 0.1 degrees.
 */
function sliceArcs({ stem, side, figures, measures, profile, order }) {
  const figure = (key) => figures.find((one) => one.key === key).value, turn = ((figure('crestAngle') - 90) * Math.PI) / 180;
  // Across a standing flat two arcs do not meet, so their circles prove nothing there.
  const kinks = profile.some(({ name }) => name === 'standing flat') ? [] : ['--max-kink', '0.1'];
  const { value: length } = measures['last.length'], outsole = Number(/([\d.]+) mm/.exec(order.Outsole)[1]);
  for (const [part, inset] of [['sole', 0], ['foam', outsole]]) {
    const words = profile.filter(({ kind }) => kind === 'arc').flatMap(({ name, centreMm: [cx], radiusMm, fromDeg, toDeg }) => {
      // Near the ends of the sole the cut would meet the wall, and the wall would be measured.
      const radius = radiusMm - inset, [a, b] = [fromDeg, toDeg].map((angle) => clampTo(cx + radius * Math.sin((angle * Math.PI) / 180), 0.03 * length, 0.93 * length));
      const run = radius * (Math.asin((b - cx) / radius) - Math.asin((a - cx) / radius));
      const within = Math.max(name.startsWith('mid') ? 0.5 : 0.05, (0.008 * radius * radius) / (run * run));
      return run < 15 ? [] : ['--fit', `${a + 0.01}:${b - 0.01}`, '--expect', String(radius), String(within)];
    });
    check(squareToCrest(`${stem}_${part}.stl`, figure('apex'), side === 'left' ? turn : -turn), 'stlslice.py', ['--y', '0', ...words, ...kinks]);
  }
}

const sliced = spawnSync('prusa-slicer', ['--help']).error === undefined;

for (const file of files) {
  if (sliced && /\.(stl|3mf)$/.test(file)) judge(file, 'slicer', 'prusa-slicer', ['--info', file], (ran) => slicerComplaint(file, ran));
  if (file.endsWith('.stl')) {
    judge(file, 'admesh', 'admesh', [file], admeshComplaint);
    if (checkers) check(file, 'stlcheck.py', ['--strict', '--quiet']);
  }
  if (checkers && file.endsWith('.dxf')) check(file, 'dxfcheck.py', ['--quiet', '--extents', ...closedIn(file)]);
  // Papers carry two lines of 100 mm to prove the print.
  // A curve of numbers is no drawing in scale: it has no line to be measured.
  if (checkers && /\.(svg|pdf)$/.test(file)) check(file, 'pagecheck.py', ['--quiet', ...(file.endsWith('_trade-off.svg') ? [] : ['--bar', '100', '--bar-both'])]);
  // One file of templates is judged as a picture too, as a printer would draw it.
  if (checkers && file === files.find((one) => one.endsWith('_templates.pdf'))) check(file, 'pagecheck.py', ['--quiet', '--raster', '100']);
}

const turnedFiles = mkdtempSync(join(tmpdir(), 'rockerbench-'));
if (checkers) for (const folder of folders) rockersIn(folder).forEach(sliceArcs);
rmSync(turnedFiles, { recursive: true });

for (const refusal of refusals) console.error(refusal);
console.log(`${files.length} files in ${folders.length} folders; ${Object.entries(judged).map(([name, count]) => `${name} ${count}`).join(', ')}; ${refusals.length} refused`);
process.exitCode = refusals.length || !judged.admesh || (checkers && Object.keys(judged).length < 5) ? 1 : 0;

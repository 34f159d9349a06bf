#!/usr/bin/env node
// Hands packs under the last of a sheet to CalculiX (Debian: apt-get install calculix-ccx), an outside judge that knows no beam and
// no laminate theory of ours: npm run --silent build && node tests/outside/solids.mjs [SHEET.json]
// Each layer becomes a sheet of solid elements of twenty nodes with the moduli of its ply turned by its angle, the core one of them
// (composite shells will not do: theirs are one element through the thickness, and a soft core shears between stiff plies); clamped
// at the ball line, as wide as the plate is, dished where it is cambered, pushed up along the load line. Prints how far it goes there
// and how the upper ply is strained 15 mm ahead of the clamp (of a dished one at its edges), theirs against ours. The pack that the
// sheet itself asks for is one of them. Ends with 1 where one of them is off by more than OFF: the beam holds no
// plate from bowing across, and the clamp does; and fibres that run off the edge of a plate that narrows bear less than it counts.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const dist = (path) => import(new URL(`../../dist/${path}`, import.meta.url));
const [{ readSheet, design }, { assess }, { plateUnder }, { plyOf }, { CORES }, { soleBeam, heldSole, bentCuts }, { strainIn }, { loadAhead, BENCH_MOMENT }, { packFor }, { camberUnder }] = await Promise.all([
  dist('index.js'), dist('stiffener/assess.js'), dist('stiffener/plate.js'), dist('stiffener/ply.js'), dist('materials/stiffeners.js'), dist('stiffener/sole.js'), dist('stiffener/strained.js'), dist('stiffener/loads.js'), dist('stiffener/pack.js'), dist('stiffener/plate.js'),
]);

const OFF = 0.15, ALONG = 2.5, ACROSS = 12, PROBE = 15, MASS = 80;
const sheet = process.argv[2] ?? 'samples/ferry-pilot/sheet.json';

const cloth = (name, angle = 0) => ({ ply: plyOf({ kind: 'cloth', cloth: name }).value, angle: (angle * Math.PI) / 180 });
const TWILL = 'carbon twill 200', UD = 'carbon unidirectional 200';
const core = (name, thickness) => ({ name, material: CORES[name], thickness });
const packsOn = (shoe, plate, fitting) => ({
  'five plies of twill, 0/90': { below: [0, 0, 0, 0, 0].map((angle) => cloth(TWILL, angle)), above: [], attached: [] },
  'five plies of twill, 0/90 and ±45 by turns': { below: [0, 45, 0, 45, 0].map((angle) => cloth(TWILL, angle)), above: [], attached: [] },
  'two and three plies round 3 mm of leather board': { below: [cloth(TWILL), cloth(TWILL, 45)], above: [cloth(TWILL), cloth(TWILL, 45), cloth(TWILL)], core: core('leather board', 3), attached: [] },
  'two and two round 4 mm of birch plywood, straight fibres outside': { below: [cloth(UD), cloth(TWILL, 45)], above: [cloth(TWILL, 45), cloth(UD)], core: core('birch plywood', 4), attached: [] },
  'two and two round 6 mm of cork': { below: [cloth(TWILL), cloth(TWILL)], above: [cloth(TWILL), cloth(TWILL)], core: core('cork', 6), attached: [] },
  // A dished plate flattens as it bends, which no beam knows: half of what is typed is counted, and this says whether that is enough.
  'five plies of twill, dished by 3 mm, half of it counted': { below: Array(5).fill(cloth(TWILL)), above: [], attached: [], camber: { height: camberUnder({ ...shoe.last, camber: 3 }, plate), counted: 'half' } },
  ...ownPack(packFor(shoe, fitting)),
});

/** What the sheet asks for, where it does: flat, without what lies on it, and each ply all along. */
function ownPack(pack) {
  if (!pack || pack.underFoam) return {};
  const { below, above, core: between } = pack.stiffener, long = ({ ply, angle }) => ({ ply, angle });
  return { 'what the sheet asks for': { below: below.map(long), above: above.map(long), ...(between ? { core: between } : {}), attached: [] } };
}

/** Layers from the bottom up; a core alike in all directions but for its own shear, which the elements take as it is told. */
function layersOf({ below, above, core: between }) {
  const ply = ({ ply: { thickness, lamina: { e1, e2, g12, nu12 } }, angle }) => ({ thickness, angle, moduli: [e1, e2, e2, nu12, nu12, 0.3, g12, g12, g12] });
  const middle = between ? [{ thickness: between.thickness, angle: 0, core: true, moduli: [...Array(3).fill(between.material.modulus.counted), 0, 0, 0, ...Array(3).fill(between.material.shear.counted)] }] : [];
  return [...below.map(ply), ...middle, ...above.map(ply)];
}

/** Places along from the clamp to the plate's end, among them the probe and the load line. */
function placesOf(plate, loadAt) {
  const cut = (from, to) => { const n = Math.max(1, Math.round((to - from) / ALONG)); return Array.from({ length: n }, (_, i) => from + ((to - from) * i) / n); }, probe = plate.ball + PROBE;
  return [...cut(plate.ball, probe), ...cut(probe, loadAt), ...cut(loadAt, plate.to), plate.to].filter((x, i, all) => i === 0 || x - all[i - 1] > 1e-6);
}

const halved = (places) => places.flatMap((x, i) => (i === 0 ? [x] : [(places[i - 1] + x) / 2, x]));

/** Bricks with their corners on even places of a grid and the middles of their edges between two of them. */
function meshOf(plate, loadAt, layers, bow) {
  const xs = placesOf(plate, loadAt), rows = halved(xs), columns = 2 * ACROSS + 1, levels = halved(layers.reduce((all, { thickness }) => [...all, all.at(-1) + thickness], [0]));
  const id = (row, column, level) => 1 + (row * columns + column) * levels.length + level, odd = (...at) => at.filter((one) => one % 2 === 1).length;
  const nodes = rows.flatMap((x, row) => Array.from({ length: columns }, (_, column) => levels.flatMap((z, level) => (odd(row, column, level) > 1 ? [] : [[id(row, column, level), x, plate.width(x) * (column / (columns - 1) - 0.5), z + bow(x) * (2 * column / (columns - 1) - 1) ** 2]]))).flat());
  const brick = (i, k, l) => {
    const [r, c, z] = [2 * i, 2 * k, 2 * l], round = (level) => [id(r, c, level), id(r + 2, c, level), id(r + 2, c + 2, level), id(r, c + 2, level)], middles = (level) => [id(r + 1, c, level), id(r + 2, c + 1, level), id(r + 1, c + 2, level), id(r, c + 1, level)];
    return [...round(z), ...round(z + 2), ...middles(z), ...middles(z + 2), ...round(z + 1)];
  };
  const number = (i, k, l) => 1 + (i * ACROSS + k) * layers.length + l, all = (n) => [...Array(n).keys()];
  const elements = layers.map((_, l) => all(xs.length - 1).flatMap((i) => all(ACROSS).map((k) => [number(i, k, l), ...brick(i, k, l)])));
  const row = (x) => { const at = rows.findIndex((one) => Math.abs(one - x) < 1e-6); return nodes.filter(([node]) => Math.floor((node - 1) / (columns * levels.length)) === at).map(([node]) => node); };
  const loadRow = rows.findIndex((one) => Math.abs(one - loadAt) < 1e-6), loaded = all(layers.length + 1).map((level) => all(columns).map((column) => id(loadRow, column, 2 * level)));
  const ahead = xs.findIndex((x) => Math.abs(x - plate.ball - PROBE) < 1e-6);
  return { nodes, elements, clamp: row(plate.ball), loaded, probed: (bow(plate.ball) > 0 ? [0, ACROSS - 1] : all(ACROSS)).map((k) => number(ahead - 1, k, layers.length - 1)), probe: (xs[ahead - 1] + xs[ahead]) / 2 };
}

/** The share of a line load that each node of quadratic elements takes. */
const shares = Array.from({ length: 2 * ACROSS + 1 }, (_, i) => (i % 2 === 1 ? 4 : i === 0 || i === 2 * ACROSS ? 1 : 2) / (6 * ACROSS));

function inputOf({ nodes, elements, clamp, loaded, probed }, layers, load) {
  const lines = (list) => list.reduce((all, one, i) => all + one + (i === list.length - 1 ? '' : i % 10 === 9 ? ',\n' : ', '), ''), rows = (list) => list.map(lines).join('\n');
  const turned = ({ angle }) => [Math.cos(angle), Math.sin(angle), 0, -Math.sin(angle), Math.cos(angle), 0].map((value) => value.toFixed(12));
  return [
    '*NODE, NSET=ALL', rows(nodes),
    ...layers.flatMap((layer, i) => [
      `*ELEMENT, TYPE=C3D20R, ELSET=L${i}`, rows(elements[i]), `*ORIENTATION, NAME=O${i}`, turned(layer).join(', '), `*MATERIAL, NAME=M${i}`, '*ELASTIC, TYPE=ENGINEERING CONSTANTS', `${layer.moduli.slice(0, 8).join(', ')}\n${layer.moduli[8]}, 293.`, `*SOLID SECTION, ELSET=L${i}, MATERIAL=M${i}, ORIENTATION=O${i}`,
    ]),
    '*ELSET, ELSET=PROBE', lines(probed), '*NSET, NSET=CLAMP', lines(clamp), '*NSET, NSET=LOAD', lines(loaded.flat()),
    '*BOUNDARY', 'CLAMP, 1, 3, 0.', '*STEP', '*STATIC', '*CLOAD', ...loaded.flatMap((row) => row.map((node, i) => `${node}, 3, ${(load.force * shares[i]) / loaded.length}`)),
    '*NODE PRINT, NSET=LOAD', 'U', '*EL PRINT, ELSET=PROBE, GLOBAL=YES', 'E', '*END STEP', '',
  ].join('\n');
}

/** The mean of how far the load line went, and the mean strain along the shoe at the upper points of the topmost ply. */
function run(input, { probed }) {
  const folder = mkdtempSync(join(tmpdir(), 'pack-'));
  try {
    writeFileSync(join(folder, 'pack.inp'), input);
    const ran = spawnSync('ccx', ['-i', 'pack'], { cwd: folder, encoding: 'utf8', env: { ...process.env, OMP_NUM_THREADS: '2' } });
    if (ran.error) throw new Error(`CalculiX is missing (Debian: apt-get install calculix-ccx): ${ran.error.message}`);
    const dat = readFileSync(join(folder, 'pack.dat'), 'utf8').split('\n').map((line) => line.trim().split(/\s+/).map(Number));
    const moved = dat.filter((line) => line.length === 4 && line.every(Number.isFinite)), strains = dat.filter((line) => line.length === 8 && line.every(Number.isFinite) && probed.includes(line[0]));
    if (moved.length === 0 || strains.length === 0) throw new Error(`CalculiX told nothing:\n${ran.stdout.slice(-2000)}`);
    // Of the eight points of a brick the last four are the upper ones.
    const highest = probed.flatMap((element) => strains.filter(([id]) => id === element).slice(-4).map((line) => line[2]));
    return { droop: moved.reduce((sum, [, , , z]) => sum + z, 0) / moved.length, strain: Math.abs(highest.reduce((sum, one) => sum + one, 0) / highest.length) };
  } finally { rmSync(folder, { recursive: true, force: true }); }
}

/** How far below its face the upper points of the topmost ply lie. */
const belowFace = (layers) => layers.at(-1).thickness * 0.5 * (1 - 1 / Math.sqrt(3));

function ours(stiffener, plate, layers, lever, at, bow) {
  const read = assess(stiffener, plate, { mass: MASS, wanted: 'rigid', lever });
  if (!read.ok) throw new Error(read.faults.map(({ text }) => text).join(' '));
  const load = loadAhead(plate.ball, lever, BENCH_MOMENT, MASS), beam = soleBeam(stiffener, plate, [load.at, at]), cuts = bentCuts(beam, heldSole(beam, 'bench')(load));
  const { section, bent } = cuts.reduce((best, one) => (Math.abs(one.x - at) < Math.abs(best.x - at) ? one : best)), face = section.faces.at(-1);
  return { load, droop: read.value.bench.bend * lever, strain: Math.abs(strainIn(section, face, bent, Math.max(...face.outermost) - belowFace(layers) - 0.5 * bow(at) * (1 - (1 - 1 / ACROSS) ** 2))) };
}

const reading = readSheet(readFileSync(sheet, 'utf8')), designing = reading.ok ? design(reading.fitting) : undefined;
const shoe = designing?.ok ? designing.design.shoes.find(({ kind }) => kind === 'rocker') : undefined;
if (!shoe) { console.error(`${sheet} has no rocker that can be worked out`); process.exit(2); }
// Flat: what the shank's curve does is another matter.
const plate = { ...plateUnder(shoe.last, shoe.shape.feather, shoe.shape.upper), rise: undefined }, lever = Math.floor(Math.min(70, plate.to - plate.ball - 4));
console.log(`${sheet}, ${shoe.side}: clamped at ${plate.ball.toFixed(1)} mm, loaded ${lever} mm ahead with ${BENCH_MOMENT * MASS} N·m; theirs / ours`);
let worst = 0;
for (const [name, stiffener] of Object.entries(packsOn(shoe, plate, designing.design.fitting))) {
  const bow = stiffener.camber?.height ?? (() => 0), layers = layersOf(stiffener), mesh = meshOf(plate, plate.ball + lever, layers, bow), { load, droop, strain } = ours(stiffener, plate, layers, lever, mesh.probe, bow), judged = run(inputOf(mesh, layers, load), mesh);
  const ratios = [judged.droop / droop, judged.strain / strain];
  // Near the clamp a dished plate is held dished, and strained less than one that has flattened by half: there only more than ours counts.
  worst = Math.max(worst, Math.abs(ratios[0] - 1), ratios[1] - 1, ...(stiffener.camber ? [] : [1 - ratios[1]]));
  console.log(`${name}: goes ${judged.droop.toFixed(3)} / ${droop.toFixed(3)} mm = ${ratios[0].toFixed(3)}; strained ${(100 * judged.strain).toFixed(4)} / ${(100 * strain).toFixed(4)} % = ${ratios[1].toFixed(3)}`);
}
if (worst > OFF) { console.error(`off by up to ${(100 * worst).toFixed(0)} %, more than ${100 * OFF}`); process.exit(1); }

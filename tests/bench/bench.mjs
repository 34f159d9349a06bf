// What it costs, as ratios measured in one run: node --expose-gc tests/bench/bench.mjs (npm run bench builds first).
// Candidates of a group are run in turn, round after round, so that a busy machine slows them alike; medians are compared.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import stl from '@jscad/stl-serializer';
import { booleanSole, gridAsPolyhedron, openEdgesOf } from './alternatives.mjs';
import { design, faultsOf, figuresOf, linearSpread, readSheet, solidsOf, spreadSteps, stlBytes, stridesAt, toGeom3, triangleCount, walkingOf } from '../../dist/index.js';
import { findingsOf } from '../../dist/checks/findings.js';
import { soleFrom } from '../../dist/solid/fromRocker.js';
import { rockerCase } from '../../dist/design.js';
import { meshOf } from '../../dist/solid/body.js';

/** The text of a sample that orders nothing besides the soles but what is named. */
function sheetText(name, besides = []) {
  const { making, ...rest } = JSON.parse(readFileSync(`samples/${name}/sheet.json`, 'utf8'));
  return JSON.stringify({ ...rest, making: Object.fromEntries(Object.entries(making ?? {}).filter(([group]) => besides.includes(group))) });
}
const sheet = (name, besides) => readSheet(sheetText(name, besides)).fitting;
const fitting = sheet('ferry-pilot', ['mould']), made = design(fitting).design, shoe = made.shoes.find(({ kind }) => kind === 'rocker');
const given = rockerCase(shoe.fitting), { bodies, shape, solids } = shoe;
const onlyRight = (of) => ({ ...of, shoes: { right: of.shoes.right } }), dished = onlyRight(fitting), wanting = onlyRight(sheet('market-gardener'));
/** The same shoe with a stiffener of which only the thickness is known. */
const plain = { ...wanting, shoes: { right: { ...wanting.shoes.right, order: { ...wanting.shoes.right.order, stiffener: 1.5, pack: undefined } } } };

/** Figures and solids are worked out once for each shoe. */
const afresh = (one) => ({ ...one });
/** What was asked lately is not worked out again, so each time the last is longer by a hair. */
let hair = 0;
const longer = (length) => length + (hair += 1e-7);
const anew = (of) => ({ ...of, shoes: { right: { ...of.shoes.right, last: { ...of.shoes.right.last, length: { ...of.shoes.right.last.length, value: longer(of.shoes.right.last.length.value) } } } } });
const unpoured = onlyRight(sheet('ferry-pilot'));

const now = () => Number(process.hrtime.bigint()) / 1e6;
const median = (times) => [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)];

/** Medians in ms, by name; `rounds` of every candidate in turn after two of warm-up. */
function race(candidates, rounds) {
  const times = Object.fromEntries(Object.keys(candidates).map((name) => [name, []]));
  for (let round = -2; round < rounds; round++) {
    for (const [name, work] of Object.entries(candidates)) {
      const start = now();
      work();
      if (round >= 0) times[name].push(now() - start);
    }
  }
  return Object.fromEntries(Object.entries(times).map(([name, all]) => [name, median(all)]));
}

function table(title, medians, unitName, notes = {}) {
  const base = medians[unitName];
  console.log(`\n${title} (ratios to: ${unitName})`);
  for (const [name, ms] of Object.entries(medians)) console.log(`  ${name.padEnd(52)} ${(ms / base).toFixed(2).padStart(9)}   ${ms.toFixed(2).padStart(9)} ms  ${notes[name] ?? ''}`);
}

const stages = race({
  'solve one shoe': () => soleFrom({ ...given, last: { ...given.last, length: longer(given.last.length) } }),
  'checks of the pair': () => findingsOf({ ...made, shoes: made.shoes.map(afresh) }),
  'figures of one shoe': () => figuresOf(afresh(shoe), fitting),
  'three solids at 0.05 mm': () => solidsOf(afresh(bodies), 0.05),
  'three solids at 0.02 mm': () => solidsOf(afresh(bodies), 0.02),
  'solve, checks and solids, plain last': () => design(anew(plain)),
  'the same, the fewest plies of a rigid stiffener found besides': () => design(anew(wanting)),
  'solve, checks and solids, last dished by 2 mm': () => design(anew(unpoured)),
  'the same with a mould to be checked': () => design(anew(dished)),
  'STL of the three solids, with the closed-skin gate': () => Object.values(solids).forEach((mesh) => stlBytes(mesh, 'bench')),
  'the same through JSCAD and its serializer': () => Object.values(solids).forEach((mesh) => stl.serialize({ binary: true }, toGeom3(mesh))),
}, 25);
const WANTED = 16, inTime = (name) => `wanted: under ${WANTED} ms, here ${stages[name] < WANTED ? 'held' : 'missed'}`;
table('Stages, the ferry pilot\'s rocker unless said otherwise', stages, 'solve one shoe',
  Object.fromEntries(Object.keys(stages).filter((name) => name.startsWith('solve, ')).map((name) => [name, inTime(name)])));

const turned = design(sheet('baker', [])).design;
const through = (steps) => { for (;;) { const step = steps.next(); if (step.done) return step.value; } };
const variants = race({
  'solve one shoe, outline and all': () => soleFrom({ ...given, last: { ...given.last, length: longer(given.last.length) } }),
  'which measure decides, by slopes': () => linearSpread({ ...made }),
  'the same by 2,000 variants, crest square across': () => through(spreadSteps(made)),
  'by 2,000 variants of each, two rockers with turned crests': () => through(spreadSteps(turned)),
}, 3);
table('How sure a pair is', variants, 'solve one shoe, outline and all', Object.fromEntries(Object.keys(variants).slice(2).map((name) => [name, `wanted: under 2000 ms, here ${variants[name] < 2000 ? 'held' : 'missed'}`])));

const walking = walkingOf(made), FRAMES = 1000, FRAME_WANTED = 1;
const frames = race({
  'worked out anew, figures and all': () => walkingOf({ ...made }),
  [`${FRAMES} frames of both shoes`]: () => { for (let i = 0; i < FRAMES; i++) stridesAt(walking, i / 301); },
}, 15);
const frame = frames[`${FRAMES} frames of both shoes`] / FRAMES;
table('A pair walking', frames, 'worked out anew, figures and all', { [`${FRAMES} frames of both shoes`]: `a frame ${frame.toFixed(3)} ms, wanted: under ${FRAME_WANTED} ms, here ${frame < FRAME_WANTED ? 'held' : 'missed'}` });

const ways = race({
  'rows along the crest, ours': () => meshOf(bodies.whole, 0.05),
  'the same rows handed to JSCAD as a polyhedron': () => gridAsPolyhedron(solids.whole),
  'JSCAD booleans: profile across, cut by the outline': () => booleanSole(shape, 0.05),
}, 3);
table('One sole at 0.05 mm, three ways', ways, 'rows along the crest, ours', {
  'rows along the crest, ours': `${triangleCount(solids.whole)} triangles, faults: ${faultsOf(solids.whole).length}`,
  'JSCAD booleans: profile across, cut by the outline': `open edges: ${openEdgesOf(booleanSole(shape, 0.05))}`,
});

const cambered = soleFrom({ ...given, last: { ...given.last, camber: 4 } }).bodies.whole;
const gaps = [0.2, 0.05, 0.02, 0.005, 0.002], counts = gaps.map((gap) => triangleCount(meshOf(cambered, gap)));
const meshing = race(Object.fromEntries(gaps.map((gap, i) => [`gap ${gap} mm, ${counts[i]} triangles`, () => meshOf(cambered, gap)])), 5);
table('Time against triangles', meshing, Object.keys(meshing)[0]);
const times = Object.values(meshing), slope = Math.log(times.at(-1) / times[1]) / Math.log(counts.at(-1) / counts[1]);
console.log(`  time grows as triangles to the power ${slope.toFixed(2)} (1 is linear; below it the fixed part shows)`);

const folder = mkdtempSync(join(tmpdir(), 'rockerbench-'));
let turn = 0;
const run = (...words) => { const { status, stderr } = spawnSync(process.execPath, words, { encoding: 'utf8' }); if (status !== 0) throw new Error(stderr); };
function make(name, besides, ...words) {
  const path = join(folder, `${name}-${besides.length}.json`);
  writeFileSync(path, sheetText(name, besides));
  return () => run('dist/command/main.js', 'make', path, ...words, '--into', join(folder, String(turn++)));
}
const ALL = 'make, a pair with everything besides';
const commands = race({
  'bare node': () => run('-e', '0'), 'make, a pair': make('market-gardener', []), 'make, a pair with a mould each': make('bookbinder', ['mould']), [ALL]: make('market-gardener', ['rack'], '--with', 'all'),
}, 5);
rmSync(folder, { recursive: true });
const limit = 3 * commands['bare node'] + 1000, verdict = (name) => name === ALL ? '' : `wanted: under ${limit.toFixed(0)} ms, here ${commands[name] < limit ? 'held' : 'missed'}`;
table('The whole command', commands, 'bare node', Object.fromEntries(Object.keys(commands).slice(1).map((name) => [name, verdict(name)])));

/** Memory held by what is made, from a process of its own for each. */
const memory = (words) => Number(spawnSync(process.execPath, ['--expose-gc', '--input-type=module', '-e', `${words}; console.log(process.resourceUsage().maxRSS)`], { encoding: 'utf8' }).stdout.trim().split('\n').at(-1)) / 1024;
const bare = memory(''), prepare = `import { readFileSync } from 'node:fs'; import { design, readSheet, solidsOf } from './dist/index.js'; const shoe = design(readSheet(readFileSync('samples/ferry-pilot/sheet.json', 'utf8')).fitting).design.shoes.find(({ kind }) => kind === 'rocker')`;
console.log(`\nPeak memory above bare node: library and one design ${(memory(prepare) - bare).toFixed(0)} MB, with solids at 0.002 mm ${(memory(`${prepare}; solidsOf(shoe.bodies, 0.002)`) - bare).toFixed(0)} MB, with one JSCAD boolean sole ${(memory(`${prepare}; const { booleanSole } = await import('./tests/bench/alternatives.mjs'); booleanSole(shoe.shape, 0.05)`) - bare).toFixed(0)} MB`);

import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

/** The folders in the order of the data; a folder imports only folders with a lower number. */
const rank: Readonly<Record<string, number>> = {
  geometry: 0, materials: 0, fitting: 1, prescription: 2, last: 3, profile: 4, solid: 5, pair: 7, roll: 7.5, walk: 7.6, stiffener: 7.7, checks: 8, spread: 8.4, targets: 8.5, making: 9, exports: 10,
  'designWith.ts': 10.5, 'design.ts': 11, command: 12, 'index.ts': 12,
};
const packages: Readonly<Record<string, readonly string[]>> = {
  fitting: ['zod'], solid: ['@jscad/modeling'], targets: ['yalps'], making: ['manifold-3d', 'clipper2-ts'], exports: ['jspdf', 'fflate'], command: ['node:'],
};

const sources = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'));
const importsOf = (file: string): string[] =>
  [...readFileSync(`src/${file}`, 'utf8').matchAll(/^(?:import|export)\b[^'\n]*(?:\n[^'\n]*)*?\bfrom '([^']+)'|\bimport\('([^']+)'\)/gm)].map((match) => (match[1] ?? match[2])!);

function against(file: string, imports: readonly string[]): string[] {
  const home = file.split('/')[0]!;
  return imports.filter((wanted) => {
    if (!wanted.startsWith('.')) return !(packages[home] ?? []).some((name) => wanted.startsWith(name));
    const target = new URL(wanted, `file:///src/${file}`).pathname.split('/')[2]!;
    if (target === home) return false;
    return !(rank[target]! < rank[home]!);
  }).map((wanted) => `${file} -> ${wanted}`);
}

test('every folder has its place in the order', () => {
  expect(sources.length).toBeGreaterThan(40);
  expect([...new Set(sources.map((file) => file.split('/')[0]!))].filter((folder) => rank[folder] === undefined)).toEqual([]);
});

test('imports only point back along the story of the data', () => {
  expect(sources.flatMap((file) => against(file, importsOf(file)))).toEqual([]);
});

const viewed = readdirSync('viewer', { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'));
const importsIn = (path: string): string[] =>
  [...readFileSync(path, 'utf8').matchAll(/^(?:import|export)\b[^'\n]*(?:\n[^'\n]*)*?\bfrom '([^']+)'|\bimport\('([^']+)'\)/gm)].map((match) => (match[1] ?? match[2])!);

test('the bench view calls the same stages, never the command, and the stages know nothing of it', () => {
  expect(viewed.length).toBeGreaterThan(15);
  expect(viewed.filter((file) => importsIn(`viewer/${file}`).some((wanted) => wanted.includes('src/command')))).toEqual([]);
  expect(sources.filter((file) => importsOf(file).some((wanted) => wanted.includes('viewer')))).toEqual([]);
});

test('what is heavy stays in the worker: the page itself takes no schema, papers or kernels', () => {
  const page = viewed.filter((file) => !file.startsWith('desk/') || file === 'desk/ask.ts').flatMap((file) => importsIn(`viewer/${file}`).map((wanted) => `${file} -> ${wanted}`));
  expect(page.filter((line) => /zod|jspdf|manifold|clipper2|@jscad|src\/design\.ts|fitting\/schema\.ts|exports\/pdf\.ts/.test(line))).toEqual([]);
});

/** Packages that come with a file before anything runs: what is only typed, or loaded when it is asked for, does not. */
function loadedWith(file: string, seen = new Set<string>()): ReadonlySet<string> {
  seen.add(file);
  const at = readFileSync(file, 'utf8').replaceAll(/^(?:import|export) type\b[^;]*;/gm, '').matchAll(/^(?:import|export)\b[^'\n]*(?:\n[^'\n]*)*?\bfrom '([^']+)'/gm);
  for (const [, wanted] of at) {
    const next = wanted!.startsWith('.') ? new URL(wanted!, `file:///${file}`).pathname.slice(1) : wanted!;
    if (!seen.has(next)) { if (next.endsWith('.ts')) loadedWith(next, seen); else seen.add(next); }
  }
  return seen;
}

test('the first shoe waits for no package that only some ask for: neither nesting, kernel, JSCAD nor papers', () => {
  const heavy = (file: string): string[] => [...loadedWith(file)].filter((one) => /^(clipper2|manifold|jspdf|@jscad)/.test(one)).sort();
  expect(heavy('viewer/desk/worker.ts')).toEqual([]);
  expect(heavy('viewer/desk/files.ts')).toEqual(expect.arrayContaining(['clipper2-ts', 'jspdf']));
});

test('the rule can fail', () => {
  expect(against('profile/arcs.ts', ['../solid/body.ts', '../fitting/words.ts', 'node:fs'])).toEqual(['profile/arcs.ts -> ../solid/body.ts', 'profile/arcs.ts -> node:fs']);
});

test('sines and their kin come from geometry/trig.ts: each engine has last digits of its own, and files must not hang on them', () => {
  const own = (text: string): boolean => /Math\.(a?sin|a?cos|a?tan2?)h?\b/.test(text);
  expect(sources.filter((file) => file !== 'geometry/trig.ts' && own(readFileSync(`src/${file}`, 'utf8')))).toEqual([]);
  expect(own('const x = Math.atan2(y, x);')).toBe(true);
});

test('the stages are pure: no clock, no chance, no disk outside the command', () => {
  const stages = sources.filter((file) => !file.startsWith('command/'));
  const impure = stages.filter((file) => /Date\.now|new Date\(\)|Math\.random|performance\.now|process\.|\bfetch\(/.test(readFileSync(`src/${file}`, 'utf8')));
  expect(impure).toEqual([]);
});

import { expect, test } from 'vitest';
import { commandLine, VERBS, type Asked } from '../../src/command/commandLine.ts';
import { run } from '../../src/command/run.ts';
import { watched } from './fakeWorld.ts';

const MEANT: readonly (readonly [string, Asked])[] = [
  ['make s.json', { verb: 'make', sheet: 's.json', with: [], into: undefined, replace: false }],
  ['make s.json --into out --replace', { verb: 'make', sheet: 's.json', with: [], into: 'out', replace: true }],
  ['make --replace --into=out/x s.json', { verb: 'make', sheet: 's.json', with: [], into: 'out/x', replace: true }],
  ['make -- --odd.json', { verb: 'make', sheet: '--odd.json', with: [], into: undefined, replace: false }],
  ['make s.json --with jig,gauges', { verb: 'make', sheet: 's.json', with: ['jig', 'gauges'], into: undefined, replace: false }],
  ['check s.json --with all', { verb: 'check', sheet: 's.json', with: ['mould', 'block', 'print', 'jig', 'gauges', 'stack', 'plies', 'templates', 'wedges', 'card'], json: false, spread: false, stiffener: false }],
  ['make --help', { verb: 'help', about: 'make' }],
  ['make s.json -h', { verb: 'help', about: 'make' }],
  ['check s.json', { verb: 'check', sheet: 's.json', with: [], json: false, spread: false, stiffener: false }],
  ['check --json s.json', { verb: 'check', sheet: 's.json', with: [], json: true, spread: false, stiffener: false }],
  ['seek s.json', { verb: 'seek', sheet: 's.json', json: false, curve: false, take: undefined }],
  ['seek --curve --take new.json s.json --json', { verb: 'seek', sheet: 's.json', json: true, curve: true, take: 'new.json' }],
  ['blank ankle --rocker left --to s.json', { verb: 'blank', foot: 'ankle', rocker: 'left', to: 's.json' }],
  ['blank --to=a/s.json toe --rocker both', { verb: 'blank', foot: 'toe', rocker: 'both', to: 'a/s.json' }],
  ['blank -h', { verb: 'help', about: 'blank' }],
  ['schema', { verb: 'schema' }],
  ['samples', { verb: 'samples', name: undefined }],
  ['samples baker', { verb: 'samples', name: 'baker' }],
  ['help', { verb: 'help', about: undefined }],
  ['help check', { verb: 'help', about: 'check' }],
  ['--help', { verb: 'help', about: undefined }],
  ['-h', { verb: 'help', about: undefined }],
  ['--version', { verb: 'version' }],
];

for (const [words, asked] of MEANT) test(`rockerbench ${words}`, () => expect(commandLine(words.split(' '))).toEqual(asked));

const WRONG: readonly (readonly [string[], string])[] = [
  [[], 'Verbs: make, check, seek, roll, blank, schema, samples, help.'],
  [[''], 'is no verb'],
  [['mkae', 's.json'], '"mkae" is no verb of rockerbench. Verbs: make'],
  [['toString'], 'is no verb'],
  [['s.json'], 'rockerbench make s.json'],
  [['--json', 'check'], 'is no verb'],
  [['make'], 'make needs a fitting sheet'],
  [['make', ''], 'make needs a fitting sheet'],
  [['make', 'a.json', 'b.json'], 'got "b.json" as well'],
  [['make', 'a.json', '--with', 'jig,glue'], 'Got "glue"'],
  [['make', 'a.json', '--with'], '--with needs a name'],
  [['make', 'a.json', '--into'], '--into needs a name'],
  [['make', 'a.json', '--into', '--replace'], '--into needs a name'],
  [['make', 'a.json', '--into='], '--into needs a name'],
  [['make', 'a.json', '--into', 'a', '--into', 'b'], '--into was given twice'],
  [['make', 'a.json', '--replace=yes'], '--replace takes nothing after it, and got "yes"'],
  [['make', 'a.json', '--json'], 'make has no option --json. Its options: --with, --into, --replace, --help.'],
  [['make', 'a.json', '--constructor'], 'make has no option --constructor'],
  [['make', 'a.json', '--no-replace'], 'make has no option --no-replace'],
  [['make', 'a.json', '-r'], 'make has no option -r'],
  [['check', 'a.json', '--js\u001b[31m'], '--js\\u001b[31m'],
  [['blank'], 'what must not bend: toe, ankle, prosthesis; got ""'],
  [['blank', 'knee', '--rocker', 'left', '--to', 's.json'], 'got "knee"'],
  [['blank', 'ankle', '--to', 's.json'], '--rocker left, right or both; got ""'],
  [['blank', 'ankle', '--rocker', 'up', '--to', 's.json'], 'got "up"'],
  [['blank', 'ankle', '--rocker', 'left'], 'name of a new file after --to'],
  [['blank', 'ankle', 'toe', '--rocker', 'left', '--to', 's.json'], 'got "toe" as well'],
  [['schema', 'x'], 'schema takes no words after it'],
  [['samples', 'a', 'b'], 'samples takes one word after it'],
  [['help', 'nothing'], 'There is no help about "nothing"'],
];

for (const [words, message] of WRONG) {
  test(`rockerbench ${JSON.stringify(words)} is refused with 2`, async () => {
    const { world, said } = watched();
    expect(await run(words, world)).toBe(2);
    expect(said.err).toContain(message);
    expect(said.err).toContain('rockerbench --help');
    expect(said.out).toBe('');
  });
}

test('help says how each verb is used, and what the command ends with', async () => {
  const { world, said } = watched();
  expect(await run(['--help'], world)).toBe(0);
  for (const verb of VERBS) expect(said.out).toContain(`rockerbench ${verb}`);
  for (const code of [0, 1, 2, 3, 4, 5]) expect(said.out).toMatch(new RegExp(`^  ${code}    `, 'm'));
  for (const verb of VERBS) {
    const one = watched();
    expect(await run([verb, '--help'], one.world)).toBe(0);
    expect(one.said.out).toMatch(new RegExp(`^rockerbench ${verb}`));
    expect(one.said.err).toBe('');
  }
});

test('no line of help is wider than a terminal', async () => {
  for (const words of [['help'], ...VERBS.map((verb) => ['help', verb])]) {
    const { world, said } = watched();
    await run(words, world);
    for (const line of said.out.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80);
  }
});

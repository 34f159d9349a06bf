import type { Choice } from '../../src/exports/labels.ts';
import { FINE_GAP } from './ask.ts';
import { extrasFor } from './extras.ts';
import { fieldsOfSheet } from './fields.ts';
import { outcomeOf } from './outcome.ts';
import type { DeskAnswer, Ask, FileShown } from './protocol.ts';
import { lineToPage } from './line.ts';
import { thrownWords } from '../keep/thrown.ts';

const page = lineToPage<Ask, DeskAnswer>();

page.onmessage = ({ data }) => {
  void answerTo(data).catch((error: unknown): DeskAnswer => ({ kind: 'failed', id: data.id, text: thrownWords(error) }))
    .then((answer) => page.postMessage(answer, buffersIn(answer)));
};

/** Where the labels of the side drawing stood last. */
let choices: readonly Choice[] = [];

async function answerTo(ask: Ask): Promise<DeskAnswer> {
  if (ask.kind === 'design') {
    const looked = outcomeOf(ask, choices, await extrasFor(ask.extras, ask.sheet, ask.chordGap === FINE_GAP));
    choices = looked.choices ?? choices;
    return { kind: 'design', id: ask.id, outcome: looked.outcome };
  }
  if (ask.kind === 'fields') return { kind: 'fields', id: ask.id, fields: fieldsOfSheet() };
  return { kind: 'files', id: ask.id, files: await filesOf(ask.sheet) };
}

/** The very files the command writes. What only they need is loaded when they are asked for. */
async function filesOf(sheet: string): Promise<readonly FileShown[]> {
  const { allFiles } = await import('./files.ts');
  return allFiles(sheet);
}

/** Handed over without copying. */
function buffersIn(answer: DeskAnswer): Transferable[] {
  if (answer.kind === 'files') return answer.files.map(({ bytes }) => bytes.buffer as ArrayBuffer);
  if (answer.kind !== 'design' || answer.outcome.kind !== 'shown') return [];
  return answer.outcome.shown.shoes.flatMap(({ solids, ordinary }) => [...solids, ...(ordinary?.solids ?? [])].flatMap(({ positions, triangles }) => [positions.buffer as ArrayBuffer, triangles.buffer as ArrayBuffer]));
}

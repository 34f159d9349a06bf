/** What the command ends with. */
export const EXIT = { good: 0, bug: 1, commandLine: 2, sheet: 3, stops: 4, disk: 5, SIGHUP: 129, SIGINT: 130, SIGTERM: 143 } as const;
export type Exit = (typeof EXIT)[keyof typeof EXIT];

/** Thrown when the command cannot go on and it is no fault of its own: says why and what to do, and with what to end. */
export class Refusal extends Error {
  readonly exit: Exit;

  constructor(exit: Exit, message: string) {
    super(message);
    this.name = 'Refusal';
    this.exit = exit;
  }

  /** The same for machines. */
  forMachines(): object { return { problem: this.message }; }
}

/** How values are printed for machines. */
export const jsonText = (value: object): string => `${JSON.stringify(value, undefined, 2)}\n`;

/** A path or a word as it was typed, with marks that do not print written as their code. */
export const printable = (text: string): string =>
  text.replace(/[\p{Cc}\p{Cf}\p{Cs}\u2028\u2029]/gu, (mark) => `\\u${mark.charCodeAt(0).toString(16).padStart(4, '0')}`);

/** What the disk's errors mean. */
const DISK_WORDS: Readonly<Record<string, string>> = {
  ENOENT: 'it is not there',
  EACCES: 'it is not open to you; ask for the right to use it, or take another place',
  EPERM: 'it is not open to you; ask for the right to use it, or take another place',
  EROFS: 'the disk can only be read; take another place',
  ENOSPC: 'the disk is full; make room, or take another place',
  EDQUOT: 'your share of the disk is full; make room, or take another place',
  EFBIG: 'the disk takes no file that large',
  ENOTDIR: 'a part of the path is not a folder',
  EISDIR: 'it is a folder',
  ELOOP: 'its links lead in a circle',
  ENAMETOOLONG: 'the name is too long for the disk',
  EMFILE: 'too many files are open; close some programs',
  EIO: 'the disk reports a fault of its own',
  EEXIST: 'something lies there already',
  ENOTEMPTY: 'something lies there already',
  EBUSY: 'another program is using it; close that program',
};

interface DiskError { readonly code: string; readonly message: string }
const isDiskError = (error: unknown): error is DiskError =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' && 'syscall' in error;

/** Does something on disk; what fails there is said in plain words. @throws Refusal */
export async function onDisk<T>(what: string, path: string, work: () => Promise<T>): Promise<T> {
  try { return await work(); }
  catch (error) {
    if (!isDiskError(error)) throw error;
    throw new Refusal(EXIT.disk, `${printable(path)} cannot be ${what}: ${DISK_WORDS[error.code] ?? error.message}.`);
  }
}

import { zipSync } from 'fflate';
import type { FileShown } from '../desk/protocol.ts';

/** The same files give the same bytes: a zip has no date before 1980. */
const SAME_DAY = new Date(1980, 0, 1);

export const zipOf = (files: readonly FileShown[]): Uint8Array =>
  zipSync(Object.fromEntries(files.map(({ name, bytes }) => [name, bytes])), { mtime: SAME_DAY, level: 6 });

/** Long enough for a slow device to take it up. */
const LATER = 60_000;

/** Opens a paper in a tab of its own, to be printed from there; saves it where the browser opens no tab. */
export function openToPrint({ name, bytes }: FileShown): void {
  const address = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: 'application/pdf' }));
  setTimeout(() => URL.revokeObjectURL(address), LATER);
  if (!window.open(address)) offer(name, bytes, 'application/pdf');
}

/** Lets the browser save bytes under a name. */
export function offer(name: string, bytes: Uint8Array, type: string): void {
  const address = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type })), link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), LATER);
}

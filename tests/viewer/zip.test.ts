import { unzipSync } from 'fflate';
import { afterEach, expect, test, vi } from 'vitest';
import { zipOf } from '../../viewer/keep/zip.ts';

const bytes = (length: number, step: number): Uint8Array => Uint8Array.from({ length }, (_, i) => (i * i * step) % 251);
const files = [
  { name: 'K-219-left-foam.stl', bytes: bytes(20_000, 7) }, { name: 'K-219 job sheet.pdf', bytes: bytes(3_000, 13) },
  { name: 'größe.json', bytes: new TextEncoder().encode('{"größe": "42 ⅔"}') }, { name: 'empty.svg', bytes: new Uint8Array() },
];

afterEach(() => { vi.useRealTimers(); });

test('what is unzipped is what went in, byte for byte, under its own name and in its order', () => {
  const out = unzipSync(zipOf(files));
  expect(Object.keys(out)).toEqual(files.map(({ name }) => name));
  for (const file of files) expect(Buffer.from(out[file.name]!).equals(Buffer.from(file.bytes))).toBe(true);
});

test('the same files give the same bytes on any day, other bytes another zip', () => {
  vi.useFakeTimers({ now: new Date('2026-05-06T10:00:00Z') });
  const first = zipOf(files);
  vi.setSystemTime(new Date('2031-11-02T23:59:59Z'));
  expect(Buffer.from(zipOf(files)).equals(Buffer.from(first))).toBe(true);
  expect(Buffer.from(zipOf([{ ...files[0]!, bytes: bytes(20_000, 8) }, ...files.slice(1)])).equals(Buffer.from(first))).toBe(false);
});

/** PKWARE APPNOTE 6.3.10, 4.3.7 and 4.4.6: date at offset 12 of the local header, years from 1980 in the upper seven bits. */
test('every file is dated the first day a zip can name', () => {
  const zip = zipOf(files), view = new DataView(zip.buffer, zip.byteOffset);
  expect([view.getUint32(0, true), view.getUint16(10, true), view.getUint16(12, true)]).toEqual([0x04034b50, 0, (1 << 5) | 1]);
});

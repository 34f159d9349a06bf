/**
 * SHA-256 of bytes, as 64 hexadecimal digits. Written out here because the browser's own is asynchronous and Node's is
 * not in the browser. Source: FIPS PUB 180-4, sections 5.1.1, 6.2 (from memory; checked against its published examples).
 */
export function sha256(bytes: Uint8Array): string {
  const message = padded(bytes), view = new DataView(message.buffer), state = Uint32Array.from(START), schedule = new Uint32Array(64);
  for (let block = 0; block < message.length; block += 64) {
    for (let t = 0; t < 16; t++) schedule[t] = view.getUint32(block + 4 * t);
    compress(state, schedule);
  }
  return Array.from(state, (word) => word.toString(16).padStart(8, '0')).join('');
}

/** The message, a one bit, noughts up to a full block, and its length in bits. */
function padded(bytes: Uint8Array): Uint8Array {
  const message = new Uint8Array(Math.ceil((bytes.length + 9) / 64) * 64), view = new DataView(message.buffer);
  message.set(bytes);
  message[bytes.length] = 0x80;
  view.setUint32(message.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(message.length - 4, bytes.length * 8);
  return message;
}

/** The first 64 primes: the constants are the leading bits behind the point of their square and cube roots. */
const PRIMES = Array.from({ length: 310 }, (_, i) => i + 2).filter((n) => Array.from({ length: 16 }, (_, k) => k + 2).every((d) => d >= n || n % d !== 0));
const leadingBits = (root: number): number => (root - Math.floor(root)) * 2 ** 32;
const START = Uint32Array.from(PRIMES.slice(0, 8), (p) => leadingBits(Math.sqrt(p)));
const ROUND = Uint32Array.from(PRIMES, (p) => leadingBits(Math.cbrt(p)));

const turned = (word: number, by: number): number => (word >>> by) | (word << (32 - by));

function compress(state: Uint32Array, w: Uint32Array): void {
  for (let t = 16; t < 64; t++) {
    const x = w[t - 15]!, y = w[t - 2]!;
    w[t] = w[t - 16]! + (turned(x, 7) ^ turned(x, 18) ^ (x >>> 3)) + w[t - 7]! + (turned(y, 17) ^ turned(y, 19) ^ (y >>> 10));
  }
  let a = state[0]!, b = state[1]!, c = state[2]!, d = state[3]!, e = state[4]!, f = state[5]!, g = state[6]!, h = state[7]!;
  for (let t = 0; t < 64; t++) {
    const one = h + (turned(e, 6) ^ turned(e, 11) ^ turned(e, 25)) + ((e & f) ^ (~e & g)) + ROUND[t]! + w[t]!;
    const two = (turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)) + ((a & b) ^ (a & c) ^ (b & c));
    h = g; g = f; f = e; e = (d + one) | 0; d = c; c = b; b = a; a = (one + two) | 0;
  }
  [a, b, c, d, e, f, g, h].forEach((word, i) => { state[i] = state[i]! + word; });
}

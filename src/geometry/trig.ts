/**
 * Sines, tangents and their inverses from additions, multiplications, divisions and square roots alone. The language
 * leaves the last digit of its own to each engine, and files made in one place must equal those made in another byte for
 * byte. Exact to about the last digit of a double for angles up to a hundred thousand turns.
 * Source: the polynomials and the reduction of fdlibm, Sun Microsystems 1993 (from memory; compared with the language's
 * own by the test).
 */
import type { Rad } from './units.ts';

/** A quarter turn in a part that multiplies exactly and the rest. */
const QUARTER = 1.57079632673412561417e+00, QUARTER_REST = 6.07710050650619224932e-11;

/** Nearer to zero than an eighth of a turn there is nothing to take off. */
const NEAR = 0.785;

interface Reduced { readonly quarters: number; readonly angle: number; readonly rest: number }

function reduced(x: Rad): Reduced {
  const n = Math.round(x * 0.6366197723675814), far = x - n * QUARTER, near = n * QUARTER_REST, angle = far - near;
  return { quarters: ((n % 4) + 4) % 4, angle, rest: far - angle - near };
}

function sineNear(x: number, rest: number): number {
  const z = x * x, v = z * x;
  const r = 8.33333333332248946124e-03 + z * (-1.98412698298579493134e-04 + z * (2.75573137070700676789e-06 + z * (-2.50507602534068634195e-08 + z * 1.58969099521155010221e-10)));
  return x - (z * (0.5 * rest - v * r) - rest + v * 1.66666666666666324348e-01);
}

function cosineNear(x: number, rest: number): number {
  const z = x * x, half = 0.5 * z, w = 1 - half;
  const r = z * (4.16666666666666019037e-02 + z * (-1.38888888888741095749e-03 + z * (2.48015872894767294178e-05 + z * (-2.75573143513906633035e-07 + z * (2.08757232129817482790e-09 - z * 1.13596475577881948265e-11)))));
  return w + (1 - w - half + (z * r - x * rest));
}

export function sin(x: Rad): number {
  if (Math.abs(x) < NEAR) return sineNear(x, 0);
  const { quarters, angle, rest } = reduced(x);
  const size = quarters % 2 === 0 ? sineNear(angle, rest) : cosineNear(angle, rest);
  return quarters < 2 ? size : -size;
}

export function cos(x: Rad): number {
  if (Math.abs(x) < NEAR) return cosineNear(x, 0);
  const { quarters, angle, rest } = reduced(x);
  const size = quarters % 2 === 0 ? cosineNear(angle, rest) : sineNear(angle, rest);
  return quarters === 0 || quarters === 3 ? size : -size;
}

export const tan = (x: Rad): number => sin(x) / cos(x);

/** Angles about which the inverse tangent is unrolled, with what their doubles leave out. */
const ABOUT = [[4.63647609000806093515e-01, 2.26987774529616870924e-17], [7.85398163397448278999e-01, 3.06161699786838301793e-17], [9.82793723247329054082e-01, 1.39033110312309984516e-17], [1.57079632679489655800e+00, 6.12323399573676603587e-17]] as const;

function atanNear(x: number): number {
  const z = x * x, w = z * z;
  const even = z * (3.33333333333329318027e-01 + w * (1.42857142725034663711e-01 + w * (9.09088713343650656196e-02 + w * (6.66107313738753120669e-02 + w * (4.97687799461593236017e-02 + w * 1.62858201153657823623e-02)))));
  const odd = w * (-1.99999999998764832476e-01 + w * (-1.11111104054623557880e-01 + w * (-7.69187620504482999495e-02 + w * (-5.83357013379057348645e-02 - w * 3.65315727442169155270e-02))));
  return x * (even + odd);
}

export function atan(x: number): Rad {
  const size = Math.abs(x);
  if (size < 7 / 16) return x - atanNear(x);
  const [about, turned] = size < 11 / 16 ? [0, (2 * size - 1) / (2 + size)] as const : size < 19 / 16 ? [1, (size - 1) / (size + 1)] as const
    : size < 39 / 16 ? [2, (size - 1.5) / (1 + 1.5 * size)] as const : [3, -1 / size] as const;
  const [angle, rest] = ABOUT[about], found = angle - (atanNear(turned) - rest - turned);
  return x < 0 ? -found : found;
}

const HALF_TURN_REST = 1.2246467991473531772e-16;

/** Angle of the direction (x, y), from -π to π. */
export function atan2(y: number, x: number): Rad {
  if (x === 0 && y === 0) return 0;
  const size = x === 0 ? Math.PI / 2 : atan(Math.abs(y / x)), turned = x < 0 ? Math.PI - (size - HALF_TURN_REST) : size;
  return y < 0 ? -turned : turned;
}

/** NaN outside -1 to 1, like `acos`. */
export const asin = (x: number): Rad => atan2(x, Math.sqrt((1 - x) * (1 + x)));
export const acos = (x: number): Rad => atan2(Math.sqrt((1 - x) * (1 + x)), x);

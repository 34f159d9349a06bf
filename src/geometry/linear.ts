/** A full matrix as its rows. */
export type Matrix = readonly (readonly number[])[];

/** The inverse of a square matrix, by elimination with the largest pivot. @throws RangeError when it has none */
export function inverseOf(matrix: Matrix): Matrix {
  const n = matrix.length, rows = matrix.map((row, i) => [...row, ...matrix.map((_, j) => (i === j ? 1 : 0))]);
  const size = Math.max(...matrix.flat().map(Math.abs));
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(rows[i]![k]!) > Math.abs(rows[best]![k]!)) best = i;
    const pivot = rows[best]!;
    if (!(Math.abs(pivot[k]!) > size * Number.EPSILON * Number.EPSILON)) throw new RangeError('a matrix without an inverse');
    rows[best] = rows[k]!;
    rows[k] = pivot.map((value) => value / pivot[k]!);
    rows.forEach((row, i) => {
      const factor = row[k]!;
      if (i !== k && factor !== 0) rows[i] = row.map((value, j) => value - factor * rows[k]![j]!);
    });
  }
  return rows.map((row) => row.slice(n));
}

/** A matrix times a column. */
export const timesColumn = (matrix: Matrix, column: readonly number[]): number[] => matrix.map((row) => row.reduce((sum, value, j) => sum + value * column[j]!, 0));

/** The lower half of a symmetric matrix with entries near its diagonal only: `rows[i][band − (i − j)]` is the entry at i, j ≤ i. */
export interface Banded { readonly band: number; readonly rows: number[][] }

export const emptyBanded = (n: number, band: number): Banded => ({ band, rows: Array.from({ length: n }, () => new Array<number>(band + 1).fill(0)) });

/** Adds to the entry at i, j; the upper half is the lower one. */
export function addTo({ band, rows }: Banded, i: number, j: number, value: number): void {
  const low = Math.max(i, j), entry = band - Math.abs(i - j);
  rows[low]![entry] = rows[low]![entry]! + value;
}

/** What is left of an entry on the diagonal, as a share of it, where it is rounding alone. */
const NOTHING = 1e-14;

/** Factors of a positive definite banded matrix (Cholesky), with which any number of right sides are solved. @throws RangeError when it is not positive definite */
export function factorsOf({ band, rows }: Banded): (right: readonly number[]) => number[] {
  const n = rows.length, lower = rows.map((row) => [...row]);
  for (let i = 0; i < n; i++) {
    const row = lower[i]!;
    for (let j = Math.max(0, i - band); j <= i; j++) {
      const other = lower[j]!;
      let sum = row[band - (i - j)]!;
      for (let k = Math.max(0, i - band, j - band); k < j; k++) sum -= row[band - (i - k)]! * other[band - (j - k)]!;
      if (i === j && !(sum > NOTHING * row[band]!)) throw new RangeError('a banded matrix that is not positive definite');
      row[band - (i - j)] = i === j ? Math.sqrt(sum) : sum / other[band]!;
    }
  }
  return (right) => {
    const x = [...right];
    for (let i = 0; i < n; i++) {
      for (let k = Math.max(0, i - band); k < i; k++) x[i] = x[i]! - lower[i]![band - (i - k)]! * x[k]!;
      x[i] = x[i]! / lower[i]![band]!;
    }
    for (let i = n - 1; i >= 0; i--) {
      for (let k = i + 1; k <= Math.min(n - 1, i + band); k++) x[i] = x[i]! - lower[k]![band - (k - i)]! * x[k]!;
      x[i] = x[i]! / lower[i]![band]!;
    }
    return x;
  };
}

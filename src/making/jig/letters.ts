/** Ribs are lettered from the heel: A, B, ... Z, then AA, AB, ... */
export function letterOf(index: number): string {
  const last = String.fromCharCode(65 + (index % 26)), before = Math.floor(index / 26);
  return before === 0 ? last : letterOf(before - 1) + last;
}

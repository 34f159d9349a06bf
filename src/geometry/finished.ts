/** Takes every step of what works in steps, one after the other, and gives what it comes to. */
export function finished<Result>(steps: Generator<unknown, Result>): Result {
  for (;;) { const { done, value } = steps.next(); if (done) return value; }
}

/** The runs of neighbours that are there; a gap begins another run. */
export function stretches<Item>(items: readonly (Item | undefined)[]): Item[][] {
  const runs: Item[][] = [[]];
  for (const item of items) {
    if (item !== undefined) runs.at(-1)?.push(item);
    else if (runs.at(-1)?.length) runs.push([]);
  }
  return runs.filter((run) => run.length > 1);
}

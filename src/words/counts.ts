import { listed } from "./lists.ts";

/** `1 ring`, `35 rings`, `2 lengths of cord`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** Numbers in rising order, those that follow one another as a run: `1 to 4, 7, 9 and 10`. */
export function runsText(numbers: readonly number[]): string {
  const runs: [first: number, last: number][] = [];
  for (const n of [...numbers].sort((a, b) => a - b)) {
    const run = runs.at(-1);
    if (run !== undefined && n === run[1] + 1) run[1] = n;
    else runs.push([n, n]);
  }
  // Two are no run.
  return listed(
    runs.flatMap(([first, last]) => {
      if (first === last) return [`${first}`];
      return last === first + 1 ? [`${first}`, `${last}`] : [`${first} to ${last}`];
    }),
  );
}

/** What a generator returns once it has come to its end; what it gives on the way is left. */
export function endOf<T>(steps: Generator<unknown, T>): T {
  for (let step = steps.next(); ; step = steps.next()) if (step.done) return step.value;
}

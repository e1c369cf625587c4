/** `1 ring`, `35 rings`, `2 lengths of cord`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** A count with its thing: “1 window”, “3 windows”. */
export function countText(count: number, thing: string): string {
  return `${count} ${thing}${count === 1 ? "" : "s"}`;
}

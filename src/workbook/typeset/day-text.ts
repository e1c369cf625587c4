/** The day as a maker’s own calendar has it, not the one at Greenwich, so many days on. */
export function dayText(date: Date | undefined, daysOn = 0): string {
  if (date === undefined) return "";
  const day = new Date(date.getFullYear(), date.getMonth(), date.getDate() + daysOn);
  const two = (number: number) => String(number).padStart(2, "0");
  return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
}

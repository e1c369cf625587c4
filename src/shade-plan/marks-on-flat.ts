import type { Form } from "./form.ts";
import type { Size } from "./size.ts";

/** An edge of the shade as it is seen from the room. */
export type SideEdge = "left" | "right";

/**
 * From which edge a column is measured on the cloth laid flat, and how far, mm. A panel that widens towards its hem has
 * no one width to measure across: there each column lies by the edge beside it, along every row.
 */
export function columnFromEdge(
  { form, size }: { form: Pick<Form, "panel">; size: Pick<Size, "finishedWidthMm"> },
  xMm: number,
): { edge: SideEdge; mm: number } {
  const rightMm = size.finishedWidthMm - xMm;
  return form.panel !== undefined && rightMm < xMm
    ? { edge: "right", mm: rightMm }
    : { edge: "left", mm: xMm };
}

/**
 * Rows are marked on the flat cloth and lie elsewhere once it is drawn up: by where they hang nothing is marked on it.
 * On a shade that hangs already they are marked as it hangs.
 */
export function rowsAreDrawnUp({
  existing,
  form,
}: {
  existing?: unknown;
  form: Pick<Form, "marks">;
}): boolean {
  return existing === undefined && form.marks.some(({ kind }) => kind === "row");
}

/** The lower edge is cut in a curve, with its ends above its middle. */
export function hemIsCurved({ panel }: Pick<Form, "panel">): boolean {
  return panel !== undefined && panel.dipMm > 0;
}

/** Where the hem is that rows are measured from: of a lower edge cut in a curve its lowest point, not its ends. */
export function hemInWords(form: Pick<Form, "panel">): string {
  return hemIsCurved(form) ? "the lowest point of the hem" : "the hem";
}

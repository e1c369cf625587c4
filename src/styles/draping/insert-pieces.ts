import type { ResolvedMaking } from "../../job/index.ts";
import type { Form, Size } from "../../shade-plan/index.ts";

/** Cut widths of the pieces of a face whose pleats are cut apart, and whose sides are hemmed, mm. */
export interface InsertPieces {
  sides: number[];
  between: number[];
  pleats: number[];
}

/**
 * The pieces of the face from the left, with their seams and side hems; none without pleats.
 * @param pastSideMm what the outer two have past the side edges
 */
export function insertPieces(
  { hems }: Pick<ResolvedMaking, "hems">,
  size: Pick<Size, "finishedWidthMm">,
  { pleats }: Pick<Form, "pleats">,
  pastSideMm = hems.sideTurnMm * hems.sideTurns,
): InsertPieces {
  const first = pleats[0];
  const last = pleats.at(-1);
  if (first === undefined || last === undefined) return { sides: [], between: [], pleats: [] };
  return {
    sides: [first.xMm, size.finishedWidthMm - last.xMm].map((mm) => mm + hems.seamMm + pastSideMm),
    between: pleats.slice(1).map(({ xMm }, i) => xMm - (pleats[i]?.xMm ?? 0) + 2 * hems.seamMm),
    pleats: pleats.map(({ foldedMm }) => foldedMm + 2 * hems.seamMm),
  };
}

/** The same pieces by name, as they are joined from the left; what lies past the side edges comes on top. */
export function cutApart(
  making: Pick<ResolvedMaking, "hems" | "pleat">,
  size: Pick<Size, "finishedWidthMm">,
  pleats: Form["pleats"],
): Pick<Form, "apart"> {
  if (making.pleat.cut === "in-one" || pleats.length === 0) return {};
  const { sides, between, pleats: inserts } = insertPieces(making, size, { pleats }, 0);
  const [left = 0, right = 0] = sides;
  const numbered = (label: string, n: number, count: number) =>
    count === 1 ? label : `${label} ${n + 1} of ${count}`;
  return {
    apart: [
      { label: "Left side piece", widthMm: left },
      ...inserts.flatMap((widthMm, n) => {
        const next = between[n];
        return [
          { label: numbered("Insert", n, inserts.length), widthMm },
          ...(next === undefined
            ? []
            : [{ label: numbered("Piece between the pleats", n, between.length), widthMm: next }]),
        ];
      }),
      { label: "Right side piece", widthMm: right },
    ],
  };
}

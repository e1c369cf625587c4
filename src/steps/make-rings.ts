import type { Step } from "../shade-plan/index.ts";
import { counted, SMALL_PARTS } from "../words/index.ts";
import type { Bench } from "./bench.ts";
import { catchSteps } from "./make-layers.ts";
import { placed, sentences } from "./wording.ts";

/** Rows from the hem up, columns from the left seen from the room, and a ring at every crossing. */
export function ringSteps(bench: Bench): Step[] {
  return [...(bench.ringsOnPockets ? [] : [rows(bench)]), columns(bench), ...catchSteps(bench), rings(bench)];
}

function rows({ grid, back, len }: Bench): Step {
  return {
    id: "make-rows",
    chapter: "make",
    action: {
      kind: "mark-rows",
      fromHemMm: grid.rows.map((row) => row.fromHemMm),
      columns: grid.columns.length,
    },
    title: "Mark the rows",
    text: `Lay the shade on its face, the hem towards you, and mark on the ${back}, with chalk or pins. Measure every row from the hem up, and never from the row below: ${placed(
      "row",
      grid.rows.map((row) => ({ number: row.number, at: len(row.fromHemMm) })),
    )}. Mark at both sides and in the middle, and join the marks.`,
    check: `From the top row to the top line it is ${len(grid.topSectionMm)}, at both sides.`,
    sheet: "marking",
  };
}

function columns({ grid, form, len, ringsOnPockets }: Bench): Step {
  const pocket = form.ribs.between === undefined ? "pocket" : "second pocket, the lowest first,";
  return {
    id: "make-columns",
    chapter: "make",
    title: "Mark the columns",
    text: `The shade lies on its face, the hem towards you, so its left edge seen from the room is at your right. From that edge mark on every ${ringsOnPockets ? pocket : "row"} ${placed(
      "column",
      grid.columns.map((column) => ({ number: column.number, at: len(column.xMm) })),
    )}.`,
    check: "Each column runs straight from hem to top: lay a long straight edge along it.",
    sheet: "marking",
    figures: ["shape.column-spacing"],
  };
}

function rings({ resolved, grid, layer, ringsOnPockets }: Bench): Step {
  const count = grid.rows.length * grid.columns.length;
  return {
    id: "make-rings",
    chapter: "make",
    action: {
      kind: "sew-ring",
      onto: ringsOnPockets ? "pocket" : "cloth",
      rows: grid.rows.length,
      columns: grid.columns.length,
    },
    title: `Sew ${counted(count, "ring")}`,
    text: sentences(
      `Sew a ring, ${resolved.ring.name}, at every crossing: ${counted(grid.rows.length, "row")} of ${grid.columns.length}, ${counted(count, "ring")} in all.`,
      ringsOnPockets
        ? "Sew it to the free edge of the pocket with four or five stitches, and tack the seam of the pocket to the face there with one thread."
        : "Pin through all layers at the mark first, then take four or five stitches through all of them, and only one thread of the face.",
      layer("blackout") !== undefined &&
        "Take as few stitches through the blackout as will hold: each one shows as a point of light.",
      "Sew the bottom row twice: the cords are tied to it, and it carries the shade.",
    ),
    check: "Tug each ring of the bottom row: none gives.",
    caution: SMALL_PARTS,
    sheet: "back",
  };
}

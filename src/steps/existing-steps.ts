import { LIFT_TRAITS } from "../job/index.ts";
import type { ExistingPlan, Row, Step } from "../shade-plan/index.ts";
import { counted, LADDER, listed, SMALL_PARTS } from "../words/index.ts";
import type { Bench } from "./bench.ts";
import { cordCaution } from "./cord-caution.ts";
import { CORDS_AT_THREADING, DRILL, HOLD_BOARD } from "./hazards.ts";
import { placed, sentences } from "./wording.ts";

/**
 * What is done to a shade that hangs already: it is measured and taken down, what is new is put on, and it is strung,
 * hung and levelled again. Of the steps that make a shade only those stay that this takes.
 */
export function existingSteps(bench: Bench, existing: ExistingPlan, all: readonly Step[]): Step[] {
  const strings = isStrung(existing);
  const of = (chapter: Step["chapter"], stays: (id: string) => boolean) =>
    all.filter((step) => step.chapter === chapter && stays(step.id));
  const { takes } = existing;
  const sews = takes.rings > 0;
  return [
    measured(bench),
    takeDown(bench),
    ...(sews ? [addedRings(bench, existing)] : []),
    ...of("make", (id) => id === "make-sleeves" && takes.sleeves),
    ...removeOld(bench, existing),
    ...of(
      "board",
      (id) =>
        (id === "board-eyes" && takes.eyes > 0) ||
        (id === "board-last-eye" && takes.lastEye) ||
        (id === "board-lock" && takes.lock) ||
        (id === "board-tube" && takes.tube),
    ),
    ...(takes.cords || !strings ? [] : [keepCords(bench)]),
    ...of("string", (id) => staysStrung(id, existing)),
    ...(sews && !takes.cords ? [passRings(bench, existing)] : []),
    ...hangAgain(bench),
    ...of("hang", (id) => id === "hang-try" || id === "hang-cleat" || (id === "hang-control" && takes.tube)),
    ...of("level", (id) => (strings || sews) && (id !== "level-sleeves" || takes.sleeves)),
    ...of("train", () => sews),
  ];
}

/** Cords come out and go in again. */
function isStrung({ takes }: ExistingPlan): boolean {
  return takes.cords || takes.lock || takes.tube;
}

const NEW_CORDS = ["string-cut", "string-tie"];

function staysStrung(id: string, existing: ExistingPlan): boolean {
  const { takes } = existing;
  if (!isStrung(existing) || id === "string-bar" || id.startsWith("string-rail")) return false;
  if (NEW_CORDS.includes(id)) return takes.cords;
  if (id === "string-close-sleeves") return takes.sleeves;
  return id !== "string-saw-tube" || takes.tube;
}

function measured({ grid, size, len, existing }: Bench): Step {
  const { hemFallMm } = grid;
  const columns = grid.columns.filter(({ number }) => existing?.newColumns.includes(number) !== true);
  return {
    id: "measure-hung",
    chapter: "measure",
    title: "Measure the shade as it hangs",
    text: sentences(
      `Let it right down. This plan rests on a shade ${len(size.finishedWidthMm)} wide and ${len(size.finishedLengthMm)} long from the top front edge of the board to the hem, with ${counted(columns.length, "column")} at ${listed(columns.map(({ xMm }) => len(xMm)))} from the left edge seen from the room.`,
      hemFallMm !== undefined &&
        `The hem slopes: its ${hemFallMm < 0 ? "left" : "right"} end hangs ${len(Math.abs(hemFallMm))} lower, and the length is that down to it.`,
      "Measure each row of rings up from the hem right below, at both edges. A row that slants is entered with its height at each.",
      "Look at the window with the shade down, and write down how it is strung before anything is cut.",
    ),
    check:
      "Every measure reads as the plan has it. If one does not, change it in the plan first: cord lengths hang on it.",
    caution: LADDER,
    sheet: "back",
  };
}

function takeDown(bench: Bench): Step {
  return {
    id: "measure-take-down",
    chapter: "measure",
    title: "Take the shade down",
    text: "Raise it, tie the folds with strips of cloth, and have somebody hold it. Loosen its fixings from one end to the other and carry it to a table with its board. Lay it on its face. Try every eye, every fixing and the board itself: whatever is loose, bent, cracked or rusty is changed.",
    check: "The board is straight, and no eye turns under a finger.",
    caution: `${HOLD_BOARD} ${LADDER} ${cordCaution(bench)}`,
    sheet: "back",
  };
}

/** A row above the hem; of one that slants both its ends. */
function rowText({ fromHemMm, ends }: Row, len: (mm: number) => string): string {
  return ends === undefined
    ? len(fromHemMm)
    : `${len(ends.leftFromHemMm)} at the left edge seen from the room and ${len(ends.rightFromHemMm)} at the right`;
}

/** Rows that are new, or have moved, from the hem up. */
function addedRings(bench: Bench, existing: ExistingPlan): Step {
  const { grid, resolved, len, back } = bench;
  const { newRows, newColumns } = existing;
  const rows = grid.rows.filter(({ number }) => newRows.includes(number));
  const columns = grid.columns.filter(({ number }) => newColumns.includes(number));
  const moved = existing.tasks.includes("even-rows");
  return {
    id: "make-added-rings",
    chapter: "make",
    title: `Sew ${counted(existing.takes.rings, "ring")}`,
    text: sentences(
      rows.length > 0 &&
        `Mark on the ${back}, each measured from the hem up: ${placed(
          "row",
          rows.map((row) => ({ number: row.number, at: rowText(row, len) })),
        )}. Sew a ring, ${resolved.ring.name}, on each of these rows at every one of the ${counted(grid.columns.length, "column")}.`,
      columns.length > 0 &&
        `Mark the added ${columns.length === 1 ? "column" : "columns"}, measured from the left edge seen from the room: ${placed(
          "column",
          columns.map(({ number, xMm }) => ({ number, at: len(xMm) })),
        )}. Sew a ring, ${resolved.ring.name}, there on every row.`,
      "Sew each with four or five stitches through all layers and only one thread of the face.",
      moved &&
        "Where the row moves, cut the old ring off first and take its thread out; steam its mark away only if the cloth bears it.",
    ),
    check: "Rings of a column stand in one straight line; tug each new one: none gives.",
    caution: SMALL_PARTS,
    sheet: "back",
  };
}

/** What held or raised it before and does not any more. */
function removeOld({ lift }: Bench, { strung, takes, tasks }: ExistingPlan): Step[] {
  const was = LIFT_TRAITS[strung];
  const gone = [
    ...(was.takeUp === "lock" && (takes.lock || lift.takeUp !== "lock") ? ["the old lock"] : []),
    ...(takes.tube && was.takeUp !== "tube" ? ["the eyes"] : []),
    ...(was.takeUp === "tube" && strung !== lift.kind ? ["the old tube with all that sits on it"] : []),
    ...(lift.hangs !== "tail" && was.hangs === "tail" ? ["the cleat on the wall"] : []),
  ];
  if (gone.length === 0) return [];
  return [
    {
      id: "board-remove-old",
      chapter: "board",
      title: "Take off what goes",
      text: sentences(
        `Draw the cords out of it and take ${listed(gone)} off.`,
        "Fill the old screw holes with glued slivers of wood and let them dry: a new screw beside an open hole breaks out. Where the plan puts a screw within a finger’s breadth of an old hole, see that it bites.",
        tasks.includes("go-cordless") &&
          "Cut the old cords up and put them in the bin at once, so that nobody strings them again.",
      ),
      caution: `${DRILL} ${CORDS_AT_THREADING}`,
      sheet: "board",
    },
  ];
}

/** Cords that stay must be as long as those that would be cut. */
function keepCords({ lift, len }: Bench): Step {
  return {
    id: "string-keep",
    chapter: "string",
    title: "See which cords stay",
    text: `A cord stays where it is whole from end to end and at least as long, knot to end, as this: ${placed(
      "cord",
      lift.cords.map(({ number, cutMm }) => ({ number, at: len(cutMm) })),
      "to",
    )}. Change one that is flat, fuzzy, stiff or knotted, and all of them rather than one of another make: they stretch alike or the hem hangs askew.`,
    check: "All are of one cord, and each has the number of its column on a tag.",
    caution: CORDS_AT_THREADING,
    sheet: "back",
    figures: lift.cords.map(({ number }) => `rig.cord-${number}-length`),
  };
}

function passRings({ grid }: Bench, existing: ExistingPlan): Step {
  const rows = grid.rows
    .filter(({ number }) => existing.newRows.includes(number))
    .map(({ number }) => String(number));
  return {
    id: "string-pass-rings",
    chapter: "string",
    title: "Lead the cords through the new rings",
    text: `Draw each cord out as far as the lowest of the new rows and lead it back up through every ring of its column, ${rows.length === 1 ? "row" : "rows"} ${listed(rows)} as well.`,
    check: "No ring is left out: run a finger up each column.",
    caution: CORDS_AT_THREADING,
    sheet: "back",
  };
}

function hangAgain(bench: Bench): Step[] {
  return [
    {
      id: "hang-again",
      chapter: "hang",
      title: "Put it up again",
      text: "Fold the shade up, tie it loosely and carry it up with its board. Drive each screw into its own old hole only where it still bites; where it turns, plug the hole or go beside it. Then untie the shade and let it down.",
      check: "Pull down hard on the board at both ends: nothing moves.",
      caution: `${HOLD_BOARD} ${cordCaution(bench)}`,
      sheet: "side",
    },
  ];
}

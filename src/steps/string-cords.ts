import type { Lift, Step } from "../shade-plan/index.ts";
import { cordLengthText } from "../units/index.ts";
import { counted } from "../words/index.ts";
import type { Bench } from "./bench.ts";
import { CORDS_AT_THREADING } from "./hazards.ts";
import { placed, sentences } from "./wording.ts";

/** The same for every lift: cords cut and numbered. */
export function cutCords({ resolved, lift, fine, len }: Bench): Step {
  return {
    id: "string-cut",
    chapter: "string",
    title: "Cut and number the cords",
    ...(lift.takeUp === "tube" ? { brief: cutsText(lift, len) } : {}),
    text: sentences(
      `From ${lift.cordName}, ${fine(lift.cordDiameterMm)} thick, cut ${cutsText(lift, len)}.`,
      lift.wovenSleeves !== undefined &&
        `Cut ${counted(lift.wovenSleeves.count, "woven sleeve")} of ${len(lift.wovenSleeves.cutMm)} as well, and draw a cord through each with a bodkin.`,
      "Seal the ends and put a numbered tag on each: a cord has the number of its column, counted from the left seen from the room.",
    ),
    check: `Together they take ${cordLengthText(lift.cordTotalMm, resolved.units)} of cord.`,
    caution: CORDS_AT_THREADING,
    sheet: "back",
    figures: [...lift.cords.map((cord) => `rig.cord-${cord.number}-length`), "rig.cord-total"],
  };
}

/** Along a board no two cords are alike; on spools all are. */
function cutsText({ takeUp, cords }: Lift, len: Bench["len"]): string {
  const [first] = cords;
  if (takeUp !== "tube" || first === undefined) {
    return placed(
      "cord",
      cords.map((cord) => ({ number: cord.number, at: len(cord.cutMm) })),
      "to",
    );
  }
  return `${counted(cords.length, "cord")} of ${len(first.cutMm)}${cords.length > 1 ? ", all alike" : ""}`;
}

/** Each cord on the bottom ring of its own column and up through the others. */
export function tie({ resolved, grid, lift }: Bench): Step {
  const rows = grid.rows.length;
  return {
    id: "string-tie",
    chapter: "string",
    action: { kind: "tie-ring", rings: rows, cords: lift.cords.length },
    title: "Tie the cords to the bottom row",
    text: sentences(
      "Lay the shade flat on its face, the board at the far end: on the table every ring is within reach and no cord carries anything yet. The left edge seen from the room is at your right.",
      `Tie ${lift.cords.length === 1 ? "the cord" : "each cord"} to the bottom ring of its own column with a bowline or another knot that does not slip, its end left long enough to be tied again.`,
      resolved.making.lift.rearRelease === "breakaway" &&
        "Tie it to its part that comes apart instead, and that part to the ring, as its own instructions show: no knot may hold past it.",
      rows > 1 &&
        `Then take it straight up through the other ${counted(rows - 1, "ring")} of the same column, never across to the next.`,
      lift.wovenSleeves !== undefined &&
        "The sleeve goes up with its cord, and every ring grips it: as much sleeve between two rings as there is cloth, no more, its upper end fastened to the board. The cord itself is gripped nowhere and slides inside.",
    ),
    check: "Pull at each cord: the bottom ring of its own column comes up, and no other.",
    sheet: "back",
  };
}

/** Sewn sleeves, closed over the cords once those are in. */
export function closeSleeves({ cloth, lift }: Bench): Step[] {
  if (cloth.sleeves === undefined) return [];
  return [
    {
      id: "string-close-sleeves",
      chapter: "string",
      title: "Close the sleeves over the cords",
      text: `Fold each sleeve over rings and ${lift.cords.length === 1 ? "cord" : "cords"} and sew its open edge down by hand, as far beside the rings as the other one. Catch no cord. Leave the last hand’s breadth above the bottom ring open until the hem is level.`,
      check: "Drawn at its upper end each cord runs freely in its sleeve, there and back.",
      caution: CORDS_AT_THREADING,
      sheet: "back",
    },
  ];
}

/** The weight bar goes in last, when the shade is on its cords. */
export function bar({ board, resolved, form, len }: Bench): Step[] {
  if (form.bar === undefined) return [];
  const barMm = board.barLengthMm;
  return [
    {
      id: "string-bar",
      chapter: "string",
      action: {
        kind: "slide-in",
        what: "bar",
        count: 1,
        ...(barMm === undefined ? {} : { lengthMm: barMm }),
      },
      title: "Slide the bar into the hem",
      text: `Slide the weight bar, ${board.barName ?? resolved.bar.name}${barMm === undefined ? "" : `, ${len(barMm)} long`}, into the bottom hem and close both ends by hand.`,
      check: "The bar lies free in the hem, as far from one side as from the other.",
      sheet: "back",
    },
  ];
}

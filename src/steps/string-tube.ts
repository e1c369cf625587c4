import { fromBoardEndMm, type Step } from "../shade-plan/index.ts";
import { trimmed } from "../units/index.ts";
import { counted, listed } from "../words/index.ts";
import type { TubeBench } from "./bench.ts";
import { CORDS_AT_THREADING, SAW, SPRING, TUBE_TURNS } from "./hazards.ts";
import { bar, closeSleeves, cutCords, tie } from "./string-cords.ts";
import { sentences } from "./wording.ts";

/** From cut cords to a tube under the board with every cord on its own spool. */
export function tubeStringSteps(bench: TubeBench): Step[] {
  return [
    cutCords(bench),
    tie(bench),
    ...closeSleeves(bench),
    sawTube(bench),
    slideOn(bench),
    hangTube(bench),
    ontoSpools(bench),
    ...tension(bench),
    ...bar(bench),
  ];
}

function sawTube({ lift, len }: TubeBench): Step {
  const { tube } = lift;
  return {
    id: "string-saw-tube",
    chapter: "string",
    title: "Saw the tube",
    text: `Saw the lift tube, ${tube.name}, to ${len(tube.lengthMm)}. File the ends smooth, inside and out, and wipe the filings off.`,
    check: "It lies flat on the table along its whole length: a bent tube makes the spools run out of step.",
    caution: SAW,
    sheet: "board",
  };
}

/** Along the board from the left end: the order in which the parts go on. */
function slideOn({ lift }: TubeBench): Step {
  const parts = [
    ...lift.spools.map(({ number, xMm }) => ({ xMm, name: `spool ${number}` })),
    ...lift.supports.map(({ number, xMm }) => ({ xMm, name: `support ${number}` })),
    { xMm: lift.drive.xMm, name: "the drive" },
  ].sort((a, b) => a.xMm - b.xMm);
  return {
    id: "string-slide-on",
    chapter: "string",
    title: "Slide the parts onto the tube",
    text: sentences(
      `Slide them on in this order, from the left end seen from the room: ${listed(parts.map(({ name }) => name))}.`,
      `There is one spool for each column, ${counted(lift.spools.length, "spool")} in all. Turn all of them the same way round.`,
    ),
    check: "Every spool has its cord hole towards you when one of them has.",
    sheet: "lock",
  };
}

function hangTube(bench: TubeBench): Step {
  const { lift, len } = bench;
  const { drive } = lift;
  return {
    id: "string-hang-tube",
    chapter: "string",
    title: "Screw drive and supports to the board",
    brief: `drive ${len(fromBoardEndMm(bench, drive.xMm))} from the left end`,
    text: sentences(
      `Screw the drive, ${drive.name}, under the board, its middle ${len(fromBoardEndMm(bench, drive.xMm))} from the left end, with ${counted(drive.screwsMm.length, "screw")}, then the supports at their marks.`,
      `Set each spool with its middle above its column: ${listed(
        lift.spools.map(({ number, xMm }) => `spool ${number} at ${len(fromBoardEndMm(bench, xMm))}`),
      )} from the left end. Fix it to the tube as its own instructions show.`,
    ),
    check: "Turned by hand the tube runs round without rubbing, and every spool turns with it.",
    sheet: "board",
    figures: ["rig.tube-axis"],
  };
}

/** The shade lies flat and full length: that is the lowered state. */
function ontoSpools({ lift }: TubeBench): Step {
  const wraps = trimmed(lift.wrapsLeft, 0);
  return {
    id: "string-onto-spools",
    chapter: "string",
    action: { kind: "wind-spool", spools: lift.spools.length, turns: lift.wrapsLeft },
    title: "Fasten the cords to their spools",
    text: sentences(
      "The shade still lies flat at its full length, as it will hang when it is down.",
      `Take each cord to the spool above its own column, over the side of the spool that is nearer to the cloth, wind ${wraps} turns on and fasten its end in the spool with a knot that does not slip.`,
      "All cords wind on the same way round. Draw each one just tight before it is fastened.",
      "Cut off what is left beyond the knots and put it in the bin at once.",
    ),
    check: `Each spool has ${wraps} turns on it, every cord is just tight, and no end hangs out.`,
    caution: CORDS_AT_THREADING,
    sheet: "lock",
    figures: ["rig.wraps-left"],
  };
}

/** What turns the tube is made ready while the board still lies on the table. */
function tension({ lift }: TubeBench): Step[] {
  if (lift.poweredBy !== "spring") {
    return [
      {
        id: "string-try-tube",
        chapter: "string",
        title: "Turn the tube once by hand",
        text: "Before anything drives it, turn the tube a few times by hand and back again, and watch the cords run onto their spools.",
        check: "They run on side by side, in step, and come off again down to the turns that stay.",
        caution: TUBE_TURNS,
        sheet: "lock",
      },
    ];
  }
  return [
    {
      id: "string-spring",
      chapter: "string",
      title: "Tension the spring",
      text: "With the cords on their spools, tension the spring as its own instructions show for the weight of this shade, a turn at a time, and lock it with its pin until the board is up.",
      check: "The pin holds, and the tube does not turn by itself.",
      caution: SPRING,
      sheet: "lock",
      figures: ["lift.held-lowered", "lift.held", "lift.spring-band"],
    },
  ];
}

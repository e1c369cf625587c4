import { fromBoardEndMm } from "../../../shade-plan/index.ts";
import type { ShadeContext } from "../../shade-context.ts";
import { isLockContext } from "../../shade-context.ts";
import { type FactLine, factTable } from "../../typeset/fact-list.ts";
import { figureBeside } from "../../typeset/figure.ts";
import { openPage, section } from "../../typeset/heading.ts";
import { table } from "../../typeset/table.ts";
import { TYPE } from "../../typeset/type-scale.ts";
import { count } from "../sentence.ts";
import { stepTicks, type TickLine, tickColumns } from "./tick-lines.ts";

const FIGURE = { figureColumns: 3, maxHeight: 92 };
const KEPT_PT = 60;

/** Up on the wall, level, folds dressed, and what to look at before it is handed over. */
export function hangPage(context: ShadeContext): void {
  const { book } = context;
  openPage(book, {
    title: "Hang, level and dress",
    lead: "Two people and a spirit level. Keep the cords out of reach of children while you work.",
  });
  figureBeside(book, context.sheet("front", 1), FIGURE, (right) => {
    table(book, { ...factTable("Figures to hang it by", facts(context), [1.2, 1]), ...right, after: 8 });
  });
  tickColumns(book, stepTicks(context, ["hang", "level", "train"]));
  const checks = handOver(context);
  section(book, "Before it is handed over", KEPT_PT);
  tickColumns(book, checks);
}

function facts(context: ShadeContext): FactLine[] {
  const { shade, length } = context;
  const { size, grid, board } = shade;
  const one = board.fixing === "brackets" ? "Bracket" : "Screw";
  const places = board.brackets.map(({ xMm }) => length(fromBoardEndMm(shade, xMm))).join(" · ");
  return [
    ...(places === "" ? [] : [{ label: `${one} places from the board’s left end`, text: places }]),
    ...(size.topAboveFloorMm === undefined
      ? []
      : [
          {
            label:
              size.head === undefined
                ? "Top of the board above the floor"
                : "Highest point of the board above the floor",
            text: length(size.topAboveFloorMm),
          },
        ]),
    ...(size.hemAboveFloorMm === undefined
      ? []
      : [{ label: "Hem above the floor, lowered", text: length(size.hemAboveFloorMm) }]),
    { label: "Top line to hem, raised", text: length(grid.raisedHeightMm) },
    ...lockFacts(context),
  ];
}

function lockFacts(context: ShadeContext): FactLine[] {
  if (!isLockContext(context)) return [];
  const { length, shade } = context;
  const { tailLoweredMm, tailRaisedMm, tailEndAboveFloorRaisedMm } = shade.lift;
  return [
    { label: "Cords below the lock, lowered", text: length(tailLoweredMm) },
    { label: "The same, raised", text: length(tailRaisedMm) },
    ...(tailEndAboveFloorRaisedMm === undefined
      ? []
      : [{ label: "Their end above the floor, raised", text: length(tailEndAboveFloorRaisedMm) }]),
  ];
}

/** Steps whose check says whether the shade can be left with those who use it. */
const LAST_CHECKS = ["hang-board", "hang-cleat", "hang-control", "hang-try", "level-look", "train-finish"];

function handOver({ shade }: ShadeContext): TickLine[] {
  const line = (text: string): TickLine => ({ text, style: TYPE.tableBody });
  const checks = shade.steps.flatMap(({ id, check }) =>
    LAST_CHECKS.includes(id) && check !== undefined ? [line(check)] : [],
  );
  const { tests } = shade.safety;
  return [
    ...checks,
    line("The child-safety tag is on the shade and can be read with it lowered."),
    ...(tests.length === 0
      ? []
      : [line(`${count(tests.length, "test")} of the child-safety sheets done and written down.`)]),
  ];
}

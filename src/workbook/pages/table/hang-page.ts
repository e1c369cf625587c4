import { fromBoardEndMm } from "../../../shade-plan/index.ts";
import { counted } from "../../../words/index.ts";
import type { ShadeContext } from "../../shade-context.ts";
import { type FactLine, factTable } from "../../typeset/fact-list.ts";
import { openPage, SECTION_ROOM_PT, SPACE_ABOVE, section } from "../../typeset/heading.ts";
import { table } from "../../typeset/table.ts";
import { TYPE } from "../../typeset/type-scale.ts";
import { stepTicks, type TickLine, tickColumns, tickHeight } from "./tick-lines.ts";

/** The heading over the last checks, with the space about it. */
const HEADING_PT = SPACE_ABOVE + SECTION_ROOM_PT;

/** Up on the wall, level, folds dressed, and what to look at before it is handed over. */
export function hangPage(context: ShadeContext): void {
  const { book } = context;
  openPage(book, {
    title: "Hang, level and dress",
    lead: "Two people and a spirit level. Keep the cords out of reach of children while you work.",
  });
  table(book, { ...factTable("Figures to hang it by", facts(context), [1.2, 1]), after: 8 });
  const checks = handOver(context);
  const checksPt = tickHeight(book, checks);
  tickColumns(book, stepTicks(context, ["hang", "level", "train"]), HEADING_PT + checksPt);
  section(book, "Before it is handed over", checksPt);
  tickColumns(book, checks);
}

function facts(context: ShadeContext): FactLine[] {
  const { shade, length } = context;
  const { size, grid, board } = shade;
  const one = board.fixing === "brackets" ? "Bracket" : "Screw";
  return [
    listed(
      context,
      `${one} places from the board’s left end`,
      board.brackets.map(({ xMm }) => fromBoardEndMm(shade, xMm)),
    ),
    listed(
      context,
      `${size.head === undefined ? "Board" : "Highest point of the board"} · hem above the floor`,
      [size.topAboveFloorMm, size.hemAboveFloorMm],
    ),
    [{ label: "Top line to hem, raised", text: length(grid.raisedHeightMm) }],
    lockFacts(context),
  ].flat();
}

/** Several lengths of one kind on a line; nothing where one of them is not known. */
function listed(
  { length }: ShadeContext,
  label: string,
  lengthsMm: readonly (number | undefined)[],
): FactLine[] {
  const known = lengthsMm.flatMap((one) => (one === undefined ? [] : [length(one)]));
  return known.length === 0 || known.length < lengthsMm.length ? [] : [{ label, text: known.join(" · ") }];
}

function lockFacts(context: ShadeContext): FactLine[] {
  const { lift } = context.shade;
  if (lift.takeUp === "tube") return [];
  const { tailLoweredMm, tailRaisedMm, tailEndAboveFloorRaisedMm } = lift;
  const exit = lift.takeUp === "lock" ? "lock" : "last eye";
  return [
    ...listed(context, `Cords below the ${exit}, down · up`, [tailLoweredMm, tailRaisedMm]),
    ...listed(context, "Their end above the floor, raised", [tailEndAboveFloorRaisedMm]),
  ];
}

/** Steps whose check says whether the shade can be left with those who use it. */
const LAST_CHECKS = ["hang-board", "hang-cleat", "hang-control", "hang-try", "level-look"];

function handOver({ shade }: ShadeContext): TickLine[] {
  const line = (text: string): TickLine => ({ text, style: TYPE.tableBody });
  const checks = shade.steps.flatMap(({ id, check }) =>
    LAST_CHECKS.includes(id) && check !== undefined ? [line(check)] : [],
  );
  const { tests } = shade.safety;
  const tested =
    tests.length === 0 ? "" : `, and ${counted(tests.length, "test")} of the child-safety sheets done`;
  return [...checks, line(`The child-safety tag is on, to be read with the shade lowered${tested}.`)];
}

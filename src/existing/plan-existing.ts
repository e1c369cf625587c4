import { lazy, type StageResult, staged } from "../figures/index.ts";
import { LIFT_TRAITS } from "../job/index.ts";
import type { ExistingPlan } from "../shade-plan/index.ts";
import { columnsOfExisting, rowsOfExisting } from "./as-measured.ts";
import type { ExistingInput } from "./existing-reads.ts";
import { judgeExisting } from "./judge-existing.ts";

/** What is done to a shade that hangs already, what that takes, and what speaks against it; nothing for one that is made. */
export function planExisting(input: ExistingInput): StageResult<ExistingPlan | undefined> {
  const { shade, lift, grid } = input;
  const { existing } = shade;
  if (existing === undefined) return staged(undefined, {});
  const { tasks, strung } = existing;
  const newRows = rowsOfExisting(input).flatMap(({ isNew }, i) => (isNew ? [i + 1] : []));
  const hung = columnsOfExisting(input);
  const newColumns =
    hung.length === grid.columns.length ? hung.flatMap(({ isNew }, i) => (isNew ? [i + 1] : [])) : [];
  const oldRows = grid.rows.length - newRows.length;
  const was = LIFT_TRAITS[strung].takeUp;
  const overEyes = lift.takeUp !== "tube";
  const hadEyes = was !== "tube";
  const onlyStrung = tasks.every((task) => task === "restring" || task === "replace-lock");
  const { columns } = grid;
  const values: ExistingPlan = {
    tasks,
    strung,
    newRows,
    newColumns,
    takes: {
      // Cords of two makes stretch unequally: beside a new one all are changed.
      cords: tasks.includes("restring") || overEyes !== hadEyes || newColumns.length > 0,
      lock: lift.takeUp === "lock" && (was !== "lock" || tasks.includes("replace-lock")),
      eyes: !overEyes ? 0 : hadEyes ? newColumns.length : columns.length,
      lastEye: lift.takeUp === "cleat" && lift.turn.column === undefined && was !== "cleat",
      cleat: lift.hangs === "tail" && (!hadEyes || (lift.takeUp === "cleat" && was !== "cleat")),
      tube: lift.takeUp === "tube" && strung !== lift.kind,
      sleeves: lift.rearCords !== "open" && lift.rearCords !== (existing.rearCords ?? "open") && !onlyStrung,
      rings: newRows.length * columns.length + oldRows * newColumns.length,
    },
  };
  const judged = lazy(() => judgeExisting(input, existing, values));
  return staged(values, { findings: () => judged().findings, workings: () => judged().workings });
}

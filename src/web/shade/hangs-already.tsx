import { parseJSONPointer } from "immutable-json-patch";
import { useId } from "react";
import {
  EXISTING_TASK_WORDS,
  EXISTING_TASKS,
  type Existing,
  type ExistingTask,
  fieldAccepts,
  LIFT_KINDS,
  type RearGuide,
} from "../../job/index.ts";
import type { UnitChoice } from "../../units/index.ts";
import { useFieldClaim } from "../findings/claims.tsx";
import { FieldGroup } from "../findings/field-findings.tsx";
import { Field } from "../inputs/field.tsx";
import { describedBy, FieldFrame } from "../inputs/field-frame.tsx";
import { lengthUnit, type Read, readLength, writeLength } from "../inputs/read-write.ts";
import { Segments } from "../inputs/segments.tsx";
import { choice, length, number } from "../inputs/spec.ts";
import { useDraft } from "../inputs/use-draft.ts";
import { MAKING_FIELDS } from "../settings/making-fields.ts";
import { editField, useCanEdit, useField, useUnits } from "../state/fields.ts";
import { shadePlanOf } from "../state/planning.ts";
import { usePlanner } from "../state/store.ts";

const STRUNG = choice("Raised now by", MAKING_FIELDS.lift.kind.options);
const REAR = choice("Its rear cords run", {
  open: "bare through rings",
  "ring-locked": "in woven sleeves",
  enclosed: "in sewn sleeves",
} satisfies Record<RearGuide, string>);
const MASS = number(
  "Weighs, with its bar",
  0.01,
  200,
  "kg",
  "without the board; taken from its cloths where empty",
);
const YEARS = number("Age of its cords", 0, 100, "years");
const RINGS = {
  kind: "flag",
  label: "Its rings",
  yes: "were pulled at and held",
  no: "have not been tried",
} as const;
const HEM_FALL = length("Its hem slopes by", "the length is measured to its low end");
const HEM_LOW = choice("Low end of the hem", {
  left: "on the left, seen from the room",
  right: "on the right",
});
const MEASURE = length("");

/** A shade that is to be made, or one that hangs already: how it was measured, and what is to be done to it. */
export function HangsAlready({ pointer }: { pointer: string }) {
  const at = `${pointer}/shade/existing`;
  const existing = useField(at) as Existing | undefined;
  return (
    <>
      <Segments<"made" | "hangs">
        label="This shade"
        options={{ made: "is to be made", hangs: "hangs already" }}
        value={existing === undefined ? "made" : "hangs"}
        onChange={(to) => editField(at, to === "made" ? undefined : asPlanned(pointer), "Hangs already")}
        readOnly={!useCanEdit()}
      />
      {existing === undefined ? null : (
        <>
          <Tasks pointer={`${at}/tasks`} tasks={existing.tasks} />
          <FieldGroup>
            <Field pointer={`${at}/strung`} spec={STRUNG} needed="how it is raised now" />
            <MeasureList
              pointer={`${at}/rowsFromHemMm`}
              label="Its rows of rings"
              hint="each up from the hem, with ; between"
              least={1}
            />
            <MeasureList
              pointer={`${at}/rowsFromHemRightMm`}
              label="The same rows at the right edge"
              hint="where they slant; those above are then at the left, seen from the room"
              least={0}
            />
            <MeasureList
              pointer={`${at}/columnsFromLeftMm`}
              label="Its columns of rings"
              hint="each from the left edge, with ; between"
              least={2}
            />
            <Field pointer={`${at}/hemFallMm`} spec={HEM_FALL} unset="level" />
            {(existing.hemFallMm ?? 0) > 0 ? (
              <Field pointer={`${at}/hemLow`} spec={HEM_LOW} unset="on the right" />
            ) : null}
            <Field pointer={`${at}/rearCords`} spec={REAR} unset="bare through rings" />
            <Field pointer={`${at}/massKg`} spec={MASS} />
            <Field pointer={`${at}/cordYears`} spec={YEARS} />
            <Field pointer={`${at}/ringsTried`} spec={RINGS} unset="not said" />
          </FieldGroup>
        </>
      )}
    </>
  );
}

/** What is measured first on a shade that hangs: as one like it would be made. */
function asPlanned(pointer: string): Existing | undefined {
  const { job } = usePlanner.getState();
  const [, room, , window] = parseJSONPointer(pointer).map(Number);
  const plan =
    job && room !== undefined && window !== undefined ? shadePlanOf(job, { room, window }) : undefined;
  return (
    plan && {
      tasks: ["restring"],
      strung: LIFT_KINDS.find((kind) => kind === plan.lift.kind) ?? "cleat",
      rowsFromHemMm: plan.grid.rows.map(({ fromHemMm }) => fromHemMm),
      columnsFromLeftMm: plan.grid.columns.map(({ xMm }) => xMm),
    }
  );
}

function Tasks({ pointer, tasks }: { pointer: string; tasks: readonly ExistingTask[] }) {
  const mine = useCanEdit();
  useFieldClaim(pointer);
  const set = (task: ExistingTask, isOn: boolean) => {
    const next = EXISTING_TASKS.filter((one) => (one === task ? isOn : tasks.includes(one)));
    // Something must be done to it: the last one stays.
    if (next.length > 0) editField(pointer, next, "What is to be done");
  };
  return (
    <fieldset data-pointer={pointer}>
      <legend className="segments-label">What is to be done</legend>
      <div className="fields">
        {EXISTING_TASKS.map((task) => (
          <label key={task} className="check">
            <input
              type="checkbox"
              checked={tasks.includes(task)}
              disabled={!mine}
              onChange={(event) => set(task, event.target.checked)}
            />{" "}
            {EXISTING_TASK_WORDS[task]}
          </label>
        ))}
      </div>
    </fieldset>
  );
}

interface MeasureListProps {
  pointer: string;
  label: string;
  hint: string;
  /** 0 where the list may be left out. */
  least: number;
}

/** Lengths in one line, with semicolons between: a comma may stand in a length. */
function MeasureList({ pointer, label, hint, least }: MeasureListProps) {
  const id = useId();
  const units = useUnits();
  const mine = useCanEdit();
  useFieldClaim(pointer);
  const segments = parseJSONPointer(pointer);
  const draft = useDraft<unknown>({
    value: useField(pointer),
    write: (list) => (Array.isArray(list) ? writeList(list, units) : ""),
    read: (text) => readList(text, least, units, (list) => fieldAccepts(segments, list)),
    commit: (list, joins) => editField(pointer, list, label, joins),
    ...(least > 0 ? { needed: leastText(least) } : {}),
  });
  return (
    <FieldFrame id={id} pointer={pointer} spec={{ ...MEASURE, label, hint }} error={draft.error} wide>
      <span className="field-line">
        <input
          id={id}
          className="field-input"
          autoComplete="off"
          spellCheck={false}
          readOnly={!mine}
          aria-invalid={draft.error === undefined ? undefined : true}
          aria-describedby={describedBy(id, undefined, draft.error)}
          value={draft.shown}
          onFocus={draft.onFocus}
          onChange={draft.onChange}
          onBlur={draft.onBlur}
          onKeyDown={draft.onKeyDown}
        />
        <span className="field-unit">{lengthUnit(MEASURE, units)}</span>
      </span>
    </FieldFrame>
  );
}

function writeList(listMm: readonly number[], units: UnitChoice): string {
  return listMm.map((mm) => writeLength(mm, MEASURE, units)).join("; ");
}

function leastText(least: number): string {
  return least === 1 ? "one measure at least" : `${least} measures at least`;
}

function readList(
  text: string,
  least: number,
  units: UnitChoice,
  takes: (listMm: readonly number[]) => boolean,
): Read<number[]> {
  const listMm: number[] = [];
  for (const part of text.split(/[;\n]/)) {
    if (part.trim() === "") continue;
    const read = readLength(part, MEASURE, units);
    if (!read.ok) return read;
    listMm.push(read.value);
  }
  if (listMm.length < least) return { ok: false, reason: leastText(least) };
  return takes(listMm)
    ? { ok: true, value: listMm }
    : { ok: false, reason: `${listMm.length} measures are more than can be kept here` };
}

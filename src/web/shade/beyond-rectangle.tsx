import { useLocation } from "wouter";
import { valueAt } from "../../figures/index.ts";
import {
  type Beside,
  besideSchema,
  type Head,
  headSchema,
  splitWindow,
  type Window,
} from "../../job/index.ts";
import { FieldGroup } from "../findings/field-findings.tsx";
import { More } from "../frame/more.tsx";
import { Field } from "../inputs/field.tsx";
import { Segments } from "../inputs/segments.tsx";
import { choice, length, number } from "../inputs/spec.ts";
import { withLimits } from "../settings/limits.ts";
import { editField, useCanEdit, useField } from "../state/fields.ts";
import { edit, usePlanner } from "../state/store.ts";
import { useShade } from "./shade-context.tsx";

const BESIDE_FIELDS = withLimits(besideSchema, {
  angleDeg: number("Angle of the two walls", 60, 300, "°", "180 straight on, 135 in a bay, 90 in a corner"),
  wallMm: length("Wall between", "from the opening to the corner; straight on, half of it"),
  shade: { kind: "flag", label: "On the next wall", yes: "another shade", no: "no shade" },
  together: { kind: "flag", label: "Worked", yes: "together with this one", no: "by itself" },
});
const HEAD_FIELDS = withLimits(headSchema, {
  fallMm: length("Fall or rise of the head", "highest point less lowest; the arc above its ends"),
  high: choice("Higher end", { left: "left", right: "right" }, "seen from the room"),
});

const BESIDE = { none: "nothing near", straight: "the next window", bay: "a bay", corner: "a corner" };
type BesideChoice = keyof typeof BESIDE;
const ANGLES: Record<Exclude<BesideChoice, "none">, number> = { straight: 180, bay: 135, corner: 90 };
const HEAD_NAMES = { level: "level", angled: "sloping", arched: "an arc" };

/** Corners and neighbours, a head that is not level, and one opening shared by several shades. */
export function BeyondRectangle() {
  const { pointer } = useShade();
  return (
    <More id="beyond-rectangle" title="Corners, a head that is not level, several shades in one opening">
      <Side pointer={`${pointer}/opening/left`} side="left" />
      <Side pointer={`${pointer}/opening/right`} side="right" />
      <HeadFields pointer={`${pointer}/opening/head`} />
      <Split />
    </More>
  );
}

function besideChoice(beside: Beside | undefined): BesideChoice {
  if (beside === undefined) return "none";
  if (beside.angleDeg >= 170) return "straight";
  return beside.angleDeg > 110 ? "bay" : "corner";
}

function Side({ pointer, side }: { pointer: string; side: "left" | "right" }) {
  const beside = useField(pointer) as Beside | undefined;
  const choose = (to: BesideChoice) =>
    editField(
      pointer,
      to === "none"
        ? undefined
        : { angleDeg: ANGLES[to], wallMm: beside?.wallMm ?? 100, shade: beside?.shade ?? true },
      `At its ${side}`,
    );
  return (
    <>
      <Segments<BesideChoice>
        label={`At its ${side}`}
        options={BESIDE}
        value={besideChoice(beside)}
        onChange={choose}
        readOnly={!useCanEdit()}
      />
      {beside === undefined ? null : (
        <FieldGroup>
          <Field
            pointer={`${pointer}/angleDeg`}
            spec={BESIDE_FIELDS.angleDeg}
            needed="an angle from 60° to 300°"
          />
          <Field
            pointer={`${pointer}/wallMm`}
            spec={BESIDE_FIELDS.wallMm}
            needed="how much wall lies between"
          />
          <Field
            pointer={`${pointer}/shade`}
            spec={BESIDE_FIELDS.shade}
            needed="whether a shade hangs there"
          />
          {beside.shade ? <Field pointer={`${pointer}/together`} spec={BESIDE_FIELDS.together} /> : null}
        </FieldGroup>
      )}
    </>
  );
}

function HeadFields({ pointer }: { pointer: string }) {
  const head = useField(pointer) as Head | undefined;
  return (
    <>
      <Segments<keyof typeof HEAD_NAMES>
        label="Head of the opening"
        options={HEAD_NAMES}
        value={head?.kind ?? "level"}
        onChange={(kind) =>
          editField(
            pointer,
            kind === "level" ? undefined : { kind, fallMm: head?.fallMm ?? 200, high: head?.high ?? "left" },
            "Head",
          )
        }
        readOnly={!useCanEdit()}
      />
      {head === undefined ? null : (
        <FieldGroup>
          <Field pointer={`${pointer}/fallMm`} spec={HEAD_FIELDS.fallMm} needed="how much the head falls" />
          {head.kind === "angled" ? (
            <Field pointer={`${pointer}/high`} spec={HEAD_FIELDS.high} needed="which end is higher" />
          ) : null}
        </FieldGroup>
      )}
    </>
  );
}

/** The window becomes several, side by side; undo brings the one back. */
function Split() {
  const { pointer, job } = useShade();
  const mine = useCanEdit();
  const [, go] = useLocation();
  const split = (parts: number) => {
    const window = valueAt(usePlanner.getState().job, pointer) as Window | undefined;
    if (window === undefined) return;
    const patch = splitWindow(window, pointer, parts);
    edit({ label: `Split into ${parts} side by side`, patch });
    const [first] = patch;
    if (first !== undefined) go(`/job/${job.id}/${first.value.id}`);
  };
  return (
    <fieldset>
      <legend className="segments-label">Split this window into shades side by side</legend>
      <span className="page-actions">
        {[2, 3].map((parts) => (
          <button
            key={parts}
            type="button"
            className="button button-small"
            disabled={!mine}
            onClick={() => split(parts)}
          >
            {parts === 2 ? "Two" : "Three"}
          </button>
        ))}
      </span>
    </fieldset>
  );
}

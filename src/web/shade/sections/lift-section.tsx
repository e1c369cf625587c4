import type { CONTROL_SIDES } from "../../../job/index.ts";
import type { Lift, TubeLift } from "../../../shade-plan/index.ts";
import { cordLengthText, fineText, forceText, lengthText } from "../../../units/index.ts";
import { counted } from "../../../words/index.ts";
import { Fig, LengthFig } from "../../figures/fig.tsx";
import { FieldGroup } from "../../findings/field-findings.tsx";
import { Segments } from "../../inputs/segments.tsx";
import { ShadeFit } from "../../parts/shade-fit.tsx";
import { editField, useCanEdit, useUnits } from "../../state/fields.ts";
import { HardwareChoiceList } from "../hardware-choice-list.tsx";
import { Section } from "../section.tsx";
import { MoreSettings, Settings } from "../setting-group.tsx";
import { useShade, useShadeNow } from "../shade-context.tsx";

/** Settings that every lift has, and those that belong to one of them: what does not apply is not asked. */
const OF_LOCK = ["lock", "seat", "seatMm", "straightRunMm"];
const OF_CLEAT = ["turnEye"];
/** With a lock or without, but not on a tube. */
const OF_EYES = ["eye", "tailMm"];
const OF_TUBE = ["tube", "drive"];
const OF_CONTROL: Record<Lift["hangs"], readonly string[]> = {
  tail: [],
  wand: ["wandMm"],
  loop: ["loopDropMm"],
  nothing: [],
};

const PARTS_OF: Record<Lift["takeUp"], readonly string[]> = {
  lock: ["lock", "cord", "eye", "ring"],
  cleat: ["turnEye", "cord", "eye", "ring"],
  tube: [...OF_TUBE, "cord", "ring"],
};

function firstOf({ takeUp, hangs }: Lift): readonly string[] {
  return ["kind", "rearCords", ...PARTS_OF[takeUp], ...OF_CONTROL[hangs]];
}

/** Settings of the other lifts. */
function notOf({ takeUp }: Lift): readonly string[] {
  const controls = Object.values(OF_CONTROL).flat();
  const others: Record<Lift["takeUp"], readonly string[]> = {
    lock: [...OF_TUBE, ...OF_CLEAT],
    cleat: [...OF_TUBE, ...OF_LOCK],
    tube: [...OF_LOCK, ...OF_CLEAT, ...OF_EYES],
  };
  return [...others[takeUp], ...controls];
}

export function LiftSection() {
  const { plan } = useShade();
  const first = firstOf(plan.lift);
  return (
    <Section id="lift" sentence={<LiftSentence lift={plan.lift} />}>
      <ControlSide />
      <FieldGroup>
        <Settings group="lift" names={first} />
      </FieldGroup>
      <CordTable lift={plan.lift} />
      {plan.lift.takeUp === "lock" ? <ShadeFit /> : null}
      <HardwareChoiceList />
      <MoreSettings
        group="lift"
        but={["controlSide", ...first, ...notOf(plan.lift), "cleatAboveFloorMm"]}
        title={plan.lift.takeUp === "lock" ? "More on lock and cords" : "More on the cords"}
      />
    </Section>
  );
}

function ControlSide() {
  const { plan, pointer } = useShadeNow();
  return (
    <Segments
      label="Control side, seen from the room"
      options={{ left: "left", right: "right" } satisfies Record<(typeof CONTROL_SIDES)[number], string>}
      value={plan.lift.controlSide}
      onChange={(side) => editField(`${pointer}/shade/making/lift/controlSide`, side, "Control side")}
      readOnly={!useCanEdit()}
    />
  );
}

interface LiftProps {
  lift: Lift | TubeLift;
}

function LiftSentence({ lift }: LiftProps) {
  const units = useUnits();
  const cords = (
    <>
      {counted(lift.cords.length, "cord")} of {fineText(lift.cordDiameterMm)},{" "}
      <Fig id="rig.cord-total">{cordLengthText(lift.cordTotalMm, units)}</Fig> in all
    </>
  );
  if (lift.takeUp === "tube") {
    return (
      <>
        {lift.drive.name} on the {lift.controlSide} turns {lift.tube.name.toLowerCase()}; {cords}, wound on
        spools.
        {lift.pullN > 0 ? (
          <>
            {" "}
            The hand pulls <Fig id="lift.pull">{forceText(lift.pullN, units)}</Fig>.
          </>
        ) : null}
      </>
    );
  }
  return (
    <>
      {lift.takeUp === "lock" ? lift.lockName : "No lock: over the last eye and down to a cleat"} on the{" "}
      {lift.controlSide}, {cords}. The hand pulls <Fig id="lift.pull">{forceText(lift.pullN, units)}</Fig>{" "}
      near the top. The cords hang <LengthFig id="rig.tail" mm={lift.tailLoweredMm} /> below the{" "}
      {lift.takeUp === "lock" ? "lock" : "last eye"} when the shade is down,{" "}
      <LengthFig id="rig.tail-raised" mm={lift.tailRaisedMm} /> when it is up.
    </>
  );
}

/** Each cord: where it runs, and how long to cut it. */
function CordTable({ lift }: LiftProps) {
  const units = useUnits();
  const locked = lift.takeUp === "lock";
  return (
    <div className="table-room">
      <table className="table">
        <caption>Cords, numbered from the left seen from the room</caption>
        <thead>
          <tr>
            <th scope="col">Cord</th>
            {locked ? (
              <>
                <th scope="col">Slot</th>
                <th scope="col">In from</th>
              </>
            ) : (
              <th scope="col">{lift.takeUp === "cleat" ? "Along the board" : "Stays on the spool"}</th>
            )}
            <th scope="col">Cut</th>
          </tr>
        </thead>
        <tbody>
          {lift.cords.map((cord) => (
            <tr key={cord.number}>
              <th scope="row">{cord.number}</th>
              {"slot" in cord ? (
                <>
                  <td>{cord.slot}</td>
                  <td>{cord.entersFrom}</td>
                </>
              ) : (
                <td>{lengthText("wrapsMm" in cord ? cord.wrapsMm : cord.runMm, units)}</td>
              )}
              <td>
                <Fig id={`rig.cord-${cord.number}-length`}>{lengthText(cord.cutMm, units)}</Fig>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

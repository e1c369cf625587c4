import type { CONTROL_SIDES } from "../../../job/index.ts";
import { cordLengthText, fineText, forceText, lengthText } from "../../../units/index.ts";
import { Fig, LengthFig } from "../../figures/fig.tsx";
import { Segments } from "../../inputs/segments.tsx";
import { editField, useCanEdit, useUnits } from "../../state/fields.ts";
import { Section } from "../section.tsx";
import { MoreSettings, Settings } from "../setting-group.tsx";
import { useShade } from "../shade-context.tsx";
import { countText } from "./shape-section.tsx";

const PARTS = ["lock", "cord", "eye", "ring"] as const;

export function LiftSection() {
  const { plan, pointer } = useShade();
  return (
    <Section number={4} id="lift" title="Lift" stages={["lift", "rig"]} sentence={<LiftSentence />}>
      <Segments
        label="Control side, seen from the room"
        options={{ left: "left", right: "right" } satisfies Record<(typeof CONTROL_SIDES)[number], string>}
        value={plan.lift.controlSide}
        onChange={(side) => editField(`${pointer}/shade/making/lift/controlSide`, side, "Control side")}
        readOnly={!useCanEdit()}
      />
      <div className="fields">
        <Settings group="lift" names={PARTS} />
      </div>
      <CordTable />
      <MoreSettings
        group="lift"
        but={["controlSide", ...PARTS, "cleatAboveFloorMm"]}
        title="More on lock and cords"
      />
    </Section>
  );
}

function LiftSentence() {
  const { lift } = useShade().plan;
  const units = useUnits();
  return (
    <>
      {lift.lockName} on the {lift.controlSide}, {countText(lift.cords.length, "cord")} of{" "}
      {fineText(lift.cordDiameterMm)},{" "}
      <Fig id="rig.cord-total">{cordLengthText(lift.cordTotalMm, units)}</Fig> in all. The hand pulls{" "}
      <Fig id="lift.pull">{forceText(lift.pullN, units)}</Fig> near the top. The cords hang{" "}
      <LengthFig id="rig.tail" mm={lift.tailLoweredMm} /> below the lock when the shade is down,{" "}
      <LengthFig id="rig.tail-raised" mm={lift.tailRaisedMm} /> when it is up.
    </>
  );
}

/** Each cord: its slot, where it enters, how long to cut it. */
function CordTable() {
  const { lift } = useShade().plan;
  const units = useUnits();
  return (
    <table className="table">
      <caption>Cords, numbered from the left seen from the room</caption>
      <thead>
        <tr>
          <th scope="col">Cord</th>
          <th scope="col">Slot</th>
          <th scope="col">In from</th>
          <th scope="col">Cut</th>
        </tr>
      </thead>
      <tbody>
        {lift.cords.map((cord) => (
          <tr key={cord.number}>
            <th scope="row">{cord.number}</th>
            <td>{cord.slot}</td>
            <td>{cord.entersFrom}</td>
            <td>
              <Fig id={`rig.cord-${cord.number}-length`}>{lengthText(cord.cutMm, units)}</Fig>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

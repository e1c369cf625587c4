import type { Finding } from "../../../figures/index.ts";
import type { MotorLift } from "../../../shade-plan/index.ts";
import { cite } from "../../../sources/index.ts";
import type { TubeInput } from "../../lift-input.ts";

/** A motor moves by itself, and its wiring is not the maker's. */
export function motorPower({ shade }: TubeInput, lift: MotorLift): Finding {
  const words = {
    mains:
      "It is wired by a licensed electrician, by the code of the place and the motor’s own instructions, and never by this plan.",
    "low-voltage":
      "Its charger or power supply is used as its maker says; anything that joins it to the mains is a licensed electrician’s work.",
    unknown:
      "Whether it runs on the mains is not said. If it does, a licensed electrician wires it, by the code of the place and the motor’s own instructions.",
  } as const;
  return {
    shadeId: shade.shadeId,
    id: "lift.motor-power",
    path: `${shade.path}/shade/making/lift/drive`,
    stage: "lift",
    severity: lift.power === "low-voltage" ? "note" : "unproven",
    text: `“${lift.drive.name}” moves by itself. ${words[lift.power ?? "unknown"]} Set its ends of travel by its instructions before the shade is left alone with it.`,
    cite: cite("common-practice", "electrical work by those licensed for it"),
    remedies: [],
  };
}

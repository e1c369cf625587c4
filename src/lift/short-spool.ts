import type { Finding } from "../figures/index.ts";
import type { Lift } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { cordLengthText, lengthText } from "../units/index.ts";
import type { LiftShade } from "./lift-input.ts";

/** Is any cord longer than a spool holds? */
export function shortSpool(shade: LiftShade, { cords }: Pick<Lift, "cords">): Finding[] {
  const { spoolMm } = shade.cord;
  const longest = Math.max(0, ...cords.map(({ cutMm }) => cutMm));
  if (spoolMm === undefined || longest <= spoolMm) return [];
  return [
    {
      stage: "rig",
      shadeId: shade.shadeId,
      remedies: [],
      id: "rig.short-spool",
      severity: "stop",
      path: `${shade.path}/shade/making/lift/cord`,
      text: `The longest cord is ${lengthText(longest, shade.units)}; a spool of “${shade.cord.name}” holds ${cordLengthText(spoolMm, shade.units)}. A lift cord is never joined: take a longer spool.`,
      cite: cite("common-practice", "a lift cord runs in one piece"),
    },
  ];
}

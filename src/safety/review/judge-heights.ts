import type { Finding } from "../../figures/index.ts";
import { settingPatch } from "../../job/index.ts";
import { cite } from "../../sources/index.ts";
import { lengthText } from "../../units/index.ts";
import { CLEAT_REACH, cleatAstray } from "./cleat-astray.ts";
import { cordCause } from "./cord-causes.ts";
import type { CordGeometry } from "./cord-geometry.ts";
import { hasLead, leadMm } from "./quantities/lead.ts";
import type { ReviewInput } from "./review-input.ts";

/** Heights that decide what a child reaches: asked where they were not said, and a cleat that nobody winds a cord on. */
export function judgeHeights({ shade }: Pick<ReviewInput, "shade">, geometry: CordGeometry): Finding[] {
  const { pulls, loop, topAboveFloorMm, footholdMm } = geometry;
  const asked = judgeLead(shade, geometry);
  const atFront = pulls.length > 0 || loop !== undefined;
  if (!atFront && leadMm(geometry) === 0) return asked;
  const base = { stage: "safety", shadeId: shade.shadeId } as const;
  if (atFront && topAboveFloorMm === undefined) {
    asked.push({
      ...base,
      id: "safety.height-unknown",
      severity: "unproven",
      path: `${shade.path}/opening/sillAboveFloorMm`,
      text: "How high above the floor does the opening begin? What hangs at the front ends somewhere above the floor, or on it: until the height is measured, no rule on heights is shown to hold.",
      cite: cite("cord-rules-at-a-glance"),
      remedies: [],
    });
  }
  if (footholdMm === undefined) {
    asked.push({
      ...base,
      id: "safety.foothold-unknown",
      severity: "unproven",
      path: `${shade.path}/opening/footholds`,
      text: "Is there anything at this window that a child can stand on: a bed or cot, a chair, a window seat, stairs or a landing, furniture? How high above the floor is each? Heights of cords and cleats are counted from the highest.",
      cite: cite("cordless-advice"),
      remedies: [
        {
          label: "There is nothing to stand on",
          patch: [{ op: "add", path: `${shade.path}/opening/footholds`, value: [] }],
        },
      ],
    });
  }
  const astray = cleatAstray(geometry);
  if (astray === undefined) return asked;
  const text = (mm: number) => lengthText(mm, shade.units);
  const { cleatAboveFloorMm } = shade.making.lift;
  return [
    ...asked,
    {
      ...base,
      id: "safety.cleat-astray",
      severity: "fix",
      path: `${shade.path}/shade/making/lift/cleatAboveFloorMm`,
      cause: cordCause("cleat"),
      text: `${astray}: ${text(cleatAboveFloorMm)} above the floor. A cleat counts only if the cord is wound on it every time: between the height that the rules ask for and ${text(CLEAT_REACH.value)}, and below the ${pulls[0]?.from ?? "lock"}.`,
      cite: CLEAT_REACH.cite,
      remedies: [1600, 1500].map((heightMm) => ({
        label: `Fix the cleat ${text(heightMm)} above the floor`,
        patch: settingPatch(shade, "lift", "cleatAboveFloorMm", heightMm),
      })),
    },
  ];
}

/** How a motor’s lead runs: no rule that was read is shown to hold for one that nobody followed. */
function judgeLead(shade: ReviewInput["shade"], geometry: CordGeometry): Finding[] {
  if (!hasLead(geometry)) return [];
  const base = {
    severity: "unproven",
    stage: "safety",
    shadeId: shade.shadeId,
    cause: cordCause("lead"),
    cite: cite("cordless-advice"),
  } as const;
  const at = (key: "leadLooseMm" | "leadLowMm") => `${shade.path}/shade/making/lift/${key}`;
  if (geometry.leadLooseMm === undefined) {
    return [
      {
        ...base,
        id: "safety.lead-unknown",
        path: at("leadLooseMm"),
        text: "How do the lead of the motor and that of its charger run? They are cords too: what is the longest stretch that hangs free between two clips, and how high above the floor is its lowest point?",
        remedies: [
          {
            label: "There is none, or all of it is clipped",
            patch: settingPatch(shade, "lift", "leadLooseMm", 0),
          },
        ],
      },
    ];
  }
  if (geometry.leadLooseMm === 0 || geometry.leadLowMm !== undefined) return [];
  return [
    {
      ...base,
      id: "safety.lead-height-unknown",
      path: at("leadLowMm"),
      text: `How high above the floor is the lowest point of the ${lengthText(geometry.leadLooseMm, shade.units)} of lead that hang free? Until it is measured, no rule on heights is shown to hold for it.`,
      remedies: [
        {
          label: "Clip the lead to board and wall along all of its length",
          patch: settingPatch(shade, "lift", "leadLooseMm", 0),
        },
      ],
    },
  ];
}

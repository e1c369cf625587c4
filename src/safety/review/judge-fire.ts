import type { Finding } from "../../figures/index.ts";
import { cite } from "../../sources/index.ts";
import type { ReviewInput } from "./review-input.ts";

/** In a public building somebody asks for a flame test of the cloth, which no plan can do. */
export function judgeFire({ shade }: Pick<ReviewInput, "shade">): Finding[] {
  if (shade.purpose !== "public-building") return [];
  return [
    {
      id: "safety.flame-test",
      severity: "unproven",
      stage: "safety",
      shadeId: shade.shadeId,
      path: `${shade.path}/shade/face`,
      text: "Which flame test does the public building ask for, and is there a test report for this batch of face cloth, lining and trims? Usual are, as reported, BS 5867-2 (United Kingdom), NFPA 701 (United States) and EN 13773 (Europe). The fire authority and local codes decide.",
      cite: cite("flame-tests"),
      remedies: [],
    },
  ];
}

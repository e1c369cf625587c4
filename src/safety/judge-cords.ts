import type { Finding } from "../figures/index.ts";
import { hangingCords } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { hangingTexts } from "./hanging-cords.ts";
import { cordCause } from "./review/cord-causes.ts";
import type { ReviewInput } from "./review/review-input.ts";

/** What the cords of this shade come to, before any rule is read. */
export function judgeCords({ shade, size, lift }: Pick<ReviewInput, "shade" | "size" | "lift">): Finding[] {
  const hanging = hangingTexts({ shade, size, lift });
  if (hanging.length === 0) return [];
  const finding: Finding = {
    stage: "safety",
    shadeId: shade.shadeId,
    id: "safety.free-hanging-cord",
    severity: "note",
    path: `${shade.path}/shade`,
    text: `${hanging.join(" ")} Where children live or visit, choose a shade without cords that can be reached.`,
    cite: cite("cordless-advice"),
    cause: cordCause(hangingCords(lift).some(({ raises }) => raises === "shade") ? "front" : "rail"),
    remedies: [],
  };
  return [finding];
}

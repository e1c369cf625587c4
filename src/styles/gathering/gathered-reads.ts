import { reads } from "../../job/index.ts";
import { REPORTED } from "../style-shade.ts";

/** What a gathered or shirred shade reads. */
export const GATHERED_READS = reads({
  shade: [...REPORTED, "cloths", "rearCords"],
  making: ["gather", "fold", "columns", "ribs", "board"],
});

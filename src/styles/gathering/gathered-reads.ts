import { reads } from "../../job/index.ts";
import { REPORTED } from "../base/style-shade.ts";

/** What a gathered or shirred shade reads. */
export const GATHERED_READS = reads({
  shade: [...REPORTED, "cloths", "rearCords", "board"],
  making: ["gather", "fold", "columns", "ribs", "board", "hems"],
});

import type { Brief } from "../job/index.ts";

/** What every finding about the board has in common: it is mended at one setting of the making. */
export function atSetting(brief: Brief, setting: string) {
  return {
    stage: "board",
    shadeId: brief.shadeId,
    path: `${brief.path}/shade/making/${setting}`,
  } as const;
}

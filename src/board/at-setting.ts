import type { ResolvedShade } from "../job/index.ts";

/** What every finding about the board has in common: it is mended at one setting of the making. */
export function atSetting(resolved: ResolvedShade, setting: string) {
  return {
    stage: "board",
    shadeId: resolved.shadeId,
    path: `${resolved.path}/shade/making/${setting}`,
  } as const;
}

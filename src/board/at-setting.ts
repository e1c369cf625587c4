import type { BoardShade } from "./board-input.ts";

/** What every finding about the board has in common: it is mended at one setting of the making. */
export function atSetting(shade: BoardShade, setting: string) {
  return {
    stage: "board",
    shadeId: shade.shadeId,
    path: `${shade.path}/shade/making/${setting}`,
  } as const;
}

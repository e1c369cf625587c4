import type { ResolvedShade } from "../../job/index.ts";

/** What findings on the shape share: `path` leads from the shade in the job to what has to change. */
export function atShade(shade: Pick<ResolvedShade, "shadeId" | "path">, path: string) {
  return { stage: "shape", shadeId: shade.shadeId, path: `${shade.path}/shade/${path}` } as const;
}

import type { ResolvedShade } from "../job/index.ts";

/** What findings on the shape share: `path` leads from the shade in the job to what has to change. */
export function atShade(resolved: ResolvedShade, path: string) {
  return { stage: "shape", shadeId: resolved.shadeId, path: `${resolved.path}/shade/${path}` } as const;
}

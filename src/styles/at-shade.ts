import type { Brief } from "../job/index.ts";

/** What findings on the shape share: `path` leads from the shade in the job to what has to change. */
export function atShade(brief: Brief, path: string) {
  return { stage: "shape", shadeId: brief.shadeId, path: `${brief.path}/shade/${path}` } as const;
}

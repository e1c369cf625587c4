import type { MakingGroup, ResolvedMaking, ResolvedShade } from "../../job/index.ts";

/** What a finding of a shade names and writes its lengths and patches by. */
export const REPORTED = ["shadeId", "path", "units"] as const;

/** The part of a resolved shade that has these groups of settings, and these fields beside those of a finding. */
export type ShadeWith<M extends MakingGroup, S extends keyof ResolvedShade = never> = Pick<
  ResolvedShade,
  (typeof REPORTED)[number] | S
> & { making: Pick<ResolvedMaking, M> };

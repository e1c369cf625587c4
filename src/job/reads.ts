import type { MakingGroup } from "./defaults.ts";
import type { Making } from "./making.ts";
import type { ResolvedMaking, ResolvedShade } from "./resolve.ts";

type ShadeKey = Exclude<keyof ResolvedShade, "making" | "own">;

/** Which parts of a resolved shade a stage reads: its fields, and groups of its settings as they hold and as its maker set them. */
export interface Reads<S extends ShadeKey, M extends MakingGroup, O extends MakingGroup> {
  shade: readonly S[];
  making: readonly M[];
  own: readonly O[];
}

/** The part of a resolved shade that a stage reads. */
export type ReadOf<R> =
  R extends Reads<infer S, infer M, infer O>
    ? Pick<ResolvedShade, S> & { making: Pick<ResolvedMaking, M>; own?: Pick<Making, O> }
    : never;

/** Names what a stage reads; what it does not name is not there for it. */
export function reads<
  const S extends ShadeKey = never,
  const M extends MakingGroup = never,
  const O extends MakingGroup = never,
>({ shade = [], making = [], own = [] }: Partial<Reads<S, M, O>>): Reads<S, M, O> {
  return { shade, making, own };
}

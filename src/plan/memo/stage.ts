import { type Worked, withValues } from "../../figures/index.ts";
import type { MakingGroup, ReadOf, Reads, ResolvedShade } from "../../job/index.ts";
import { remember, sameFields } from "./remember.ts";
import { shareEqual } from "./share-equal.ts";

/**
 * A stage of the work that is run again only where something it reads has changed, and whose values keep their identity
 * where they come out as before: the stages behind it then have nothing to do.
 */
export function stage<I extends object, R extends Worked<unknown>>(run: (input: I) => R): (input: I) => R {
  let values: unknown;
  return remember((input) => {
    const result = run(input);
    values = shareEqual(values, result.values);
    return values === result.values ? result : withValues(result, values);
  });
}

/** The part of a shade that a stage reads; the same object for as long as all in it is the same. */
export function partRead<
  R extends Reads<Exclude<keyof ResolvedShade, "making" | "own">, MakingGroup, MakingGroup>,
>(reads: R): (shade: ResolvedShade) => ReadOf<R> {
  let last: Record<string, unknown> = {};
  let part: Record<string, unknown> | undefined;
  return (shade) => {
    const pieces: Record<string, unknown> = {};
    for (const key of reads.shade) pieces[key] = shade[key];
    for (const group of reads.making) pieces[`making/${group}`] = shade.making[group];
    for (const group of reads.own) pieces[`own/${group}`] = shade.own?.[group];
    if (part === undefined || !sameFields(last, pieces)) {
      part = partOf(reads, shade);
      last = pieces;
    }
    return part as ReadOf<R>;
  };
}

function partOf(
  reads: Reads<Exclude<keyof ResolvedShade, "making" | "own">, MakingGroup, MakingGroup>,
  shade: ResolvedShade,
): Record<string, unknown> {
  const part: Record<string, unknown> = {};
  for (const key of reads.shade) part[key] = shade[key];
  part.making = Object.fromEntries(reads.making.map((group) => [group, shade.making[group]]));
  if (shade.own !== undefined && reads.own.length > 0) {
    part.own = Object.fromEntries(reads.own.map((group) => [group, shade.own?.[group]]));
  }
  return part;
}

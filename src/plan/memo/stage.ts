import { type StageResult, withValues } from "../../figures/index.ts";
import type { MakingGroup, ReadOf, Reads, ResolvedShade } from "../../job/index.ts";
import { remember } from "./remember.ts";
import { shareEqual } from "./share-equal.ts";

/**
 * A stage of the work that is run again only where something it reads has changed, and whose values keep their identity
 * where they come out as before: the stages behind it then have nothing to do.
 */
export function stage<I extends object, R extends StageResult<unknown>>(
  run: (input: I) => R,
): (input: I) => R {
  let values: R["values"] | undefined;
  return remember((input) => {
    const result = run(input);
    const shared = shareEqual(values, result.values);
    values = shared;
    return shared === result.values ? result : withValues(result, shared);
  });
}

/** The part of a shade that a stage reads; the same object for as long as all in it is the same. */
export function partRead<R extends AnyReads>(reads: R): (shade: ResolvedShade) => ReadOf<R> {
  let part: Part | undefined;
  return (shade) => {
    if (part === undefined || !isPartOf(part, reads, shade)) part = partOf(reads, shade);
    return part as Part & ReadOf<R>;
  };
}

type AnyReads = Reads<Exclude<keyof ResolvedShade, "making" | "own">, MakingGroup, MakingGroup>;

interface Part {
  [key: string]: unknown;
  making: Record<string, unknown>;
  own?: Record<string, unknown>;
}

function isPartOf(part: Part, reads: AnyReads, shade: ResolvedShade): boolean {
  for (const key of reads.shade) if (!Object.is(part[key], shade[key])) return false;
  for (const group of reads.making) if (part.making[group] !== shade.making[group]) return false;
  for (const group of reads.own) if (part.own?.[group] !== shade.own?.[group]) return false;
  return true;
}

function partOf(reads: AnyReads, shade: ResolvedShade): Part {
  const part: Part = { making: {} };
  for (const key of reads.shade) part[key] = shade[key];
  for (const group of reads.making) part.making[group] = shade.making[group];
  if (shade.own !== undefined && reads.own.length > 0) {
    part.own = {};
    for (const group of reads.own) part.own[group] = shade.own[group];
  }
  return part;
}

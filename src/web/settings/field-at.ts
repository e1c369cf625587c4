import { parseJSONPointer } from "immutable-json-patch";
import type { MakingGroup } from "../../job/index.ts";
import { type FieldSpec, length, span } from "../inputs/spec.ts";
import { MAKING_FIELDS } from "./making-fields.ts";

export interface SettingKey {
  group: MakingGroup;
  name: string;
}

export type FoundField = { spec: FieldSpec; needed?: string } | { setting: SettingKey; scope: string };

const SIDES: Record<string, readonly FieldSpec[]> = {
  widthsMm: [span("Width at the top"), span("Width in the middle"), span("Width at the bottom")],
  heightsMm: [span("Height at the left"), span("Height in the centre"), span("Height at the right")],
};

const OPENING: Record<string, FieldSpec> = {
  recessDepthMm: length("Depth of the recess", "free of handles"),
  sillAboveFloorMm: length("Sill above the floor", "bottom of the opening"),
};

/** The field that a JSON pointer of the job names, where a screen can show it. */
export function fieldAt(pointer: string): FoundField | undefined {
  const segments = parseJSONPointer(pointer);
  const making = Math.max(segments.indexOf("making"), segments.indexOf("workshop"));
  if (making >= 0) return settingAt(segments, making);
  const [opening, key, index] = segments.slice(-3);
  if (opening === "opening" && key !== undefined && index !== undefined) return sideAt(key, Number(index));
  const spec = OPENING[segments.at(-1) ?? ""];
  return spec && { spec };
}

function settingAt(segments: string[], making: number): FoundField | undefined {
  const [group, name] = segments.slice(making + 1);
  if (group === undefined || name === undefined || !(group in MAKING_FIELDS)) return undefined;
  const known: object = MAKING_FIELDS[group as MakingGroup];
  if (!(name in known)) return undefined;
  const scope = segments
    .slice(0, making + 1)
    .map((segment) => `/${segment}`)
    .join("");
  return { setting: { group: group as MakingGroup, name }, scope };
}

function sideAt(key: string, index: number): FoundField | undefined {
  const spec = SIDES[key]?.[index];
  return spec && (index === 0 ? { spec, needed: "a length is needed here" } : { spec });
}

import type { MakingGroup } from "./defaults.ts";
import type { StyleKind } from "./job.ts";
import type { ResolvedShade } from "./resolve.ts";

/** One operation of RFC 6902 on the job document. */
export interface SettingOperation {
  op: "add";
  path: string;
  value: unknown;
}

/** Where a patch of a shade's settings goes, and which groups of them are there already. */
export type PatchedShade = Pick<ResolvedShade, "path" | "ownGroups">;

/**
 * The patch that sets one making setting of one shade.
 * RFC 6902 adds only into objects that exist, so a missing parent is added whole.
 */
export function settingPatch(
  { path, ownGroups }: PatchedShade,
  group: MakingGroup,
  key: string,
  value: unknown,
): SettingOperation[] {
  const making = `${path}/shade/making`;
  if (ownGroups === undefined) return [{ op: "add", path: making, value: { [group]: { [key]: value } } }];
  if (!ownGroups.includes(group)) return [{ op: "add", path: `${making}/${group}`, value: { [key]: value } }];
  return [{ op: "add", path: `${making}/${group}/${key}`, value }];
}

/** The patch that makes the same shade in another style. */
export function stylePatch({ path }: Pick<ResolvedShade, "path">, style: StyleKind): SettingOperation[] {
  return [{ op: "add", path: `${path}/shade/style`, value: style }];
}

/** The patch that makes one shade without a layer of its cloth. */
export function leaveOutPatch(
  { path }: Pick<ResolvedShade, "path">,
  layer: Exclude<keyof ResolvedShade["cloths"], "face">,
): SettingOperation[] {
  return [{ op: "add", path: `${path}/shade/${layer}`, value: null }];
}

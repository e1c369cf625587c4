import type { MakingGroup } from "./defaults.ts";
import type { StyleKind } from "./job.ts";
import type { ResolvedShade } from "./resolve.ts";

/** One operation of RFC 6902 on the job document. */
export interface SettingOperation {
  op: "add";
  path: string;
  value: unknown;
}

/**
 * The patch that sets one making setting of one shade.
 * RFC 6902 adds only into objects that exist, so a missing parent is added whole.
 */
export function settingPatch(
  resolved: ResolvedShade,
  group: MakingGroup,
  key: string,
  value: unknown,
): SettingOperation[] {
  const making = `${resolved.path}/shade/making`;
  const own = resolved.own as Record<string, object | undefined> | undefined;
  if (own === undefined) return [{ op: "add", path: making, value: { [group]: { [key]: value } } }];
  if (own[group] === undefined) return [{ op: "add", path: `${making}/${group}`, value: { [key]: value } }];
  return [{ op: "add", path: `${making}/${group}/${key}`, value }];
}

/** The patch that makes the same shade in another style. */
export function stylePatch({ path }: ResolvedShade, style: StyleKind): SettingOperation[] {
  return [{ op: "add", path: `${path}/shade/style`, value: style }];
}

/** The patch that makes one shade without a layer of its cloth. */
export function leaveOutPatch(
  { path }: ResolvedShade,
  layer: Exclude<keyof ResolvedShade["cloths"], "face">,
): SettingOperation[] {
  return [{ op: "add", path: `${path}/shade/${layer}`, value: null }];
}

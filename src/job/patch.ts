import type { MakingGroup } from "./defaults.ts";
import type { StyleKind } from "./job.ts";
import type { ResolvedShade } from "./resolve.ts";

/** One operation of RFC 6902 on the job document. */
export interface SettingOperation {
  op: "add";
  path: string;
  value: unknown;
}

/** Where a patch of a shade's settings goes. */
export type PatchedShade = Pick<ResolvedShade, "path">;

/**
 * The patch that sets one making setting of one shade, as if all its parents were there: what a shade has of its own is
 * no matter of the stage that proposes a setting. `withParents` adds those that are missing.
 */
export function settingPatch(
  { path }: PatchedShade,
  group: MakingGroup,
  key: string,
  value: unknown,
): SettingOperation[] {
  return [{ op: "add", path: `${path}/shade/making/${group}/${key}`, value }];
}

/** What makes of a part the remedy to choose it: `Use “Six-slot lock”`, with more words behind it where they are given. */
export function partChoice(
  shade: PatchedShade,
  group: MakingGroup,
  key: string,
  inWords = "",
): (part: { id: string; name: string }) => { label: string; patch: SettingOperation[] } {
  return ({ id, name }) => ({ label: `Use “${name}”${inWords}`, patch: settingPatch(shade, group, key, id) });
}

/**
 * The same patch for the job as it is: RFC 6902 adds only into objects that exist, so a missing parent is added whole,
 * and what the first operation adds is there for the next.
 */
export function withParents<O extends { op: string; path: string; value?: unknown }>(
  patch: readonly O[],
  { path, ownGroups }: Pick<ResolvedShade, "path" | "ownGroups">,
): (O | SettingOperation)[] {
  const making = `${path}/shade/making`;
  let groups: readonly string[] | undefined = ownGroups;
  return patch.map((operation) => {
    if (operation.op !== "add" || !operation.path.startsWith(`${making}/`)) return operation;
    const [group = "", key] = operation.path.slice(making.length + 1).split("/");
    if (key === undefined || groups?.includes(group)) return operation;
    const whole = { [key]: operation.value };
    const had = groups;
    groups = [...(had ?? []), group];
    return had === undefined
      ? { op: "add", path: making, value: { [group]: whole } }
      : { op: "add", path: `${making}/${group}`, value: whole };
  });
}

/** The patch that makes the same shade in another style. */
export function stylePatch({ path }: PatchedShade, style: StyleKind): SettingOperation[] {
  return [{ op: "add", path: `${path}/shade/style`, value: style }];
}

/** The patch that makes one shade without a layer of its cloth. */
export function leaveOutPatch(
  { path }: PatchedShade,
  layer: Exclude<keyof ResolvedShade["cloths"], "face">,
): SettingOperation[] {
  return [{ op: "add", path: `${path}/shade/${layer}`, value: null }];
}

import type { MakingGroup } from "./defaults.ts";
import type { Brief } from "./settle.ts";

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
  brief: Brief,
  group: MakingGroup,
  key: string,
  value: unknown,
): SettingOperation[] {
  const making = `${brief.path}/shade/making`;
  const own = brief.own as Record<string, object | undefined> | undefined;
  if (own === undefined) return [{ op: "add", path: making, value: { [group]: { [key]: value } } }];
  if (own[group] === undefined) return [{ op: "add", path: `${making}/${group}`, value: { [key]: value } }];
  return [{ op: "add", path: `${making}/${group}/${key}`, value }];
}

import type { ReactNode } from "react";
import type { MakingGroup } from "../../job/index.ts";
import { FieldGroup } from "../findings/field-findings.tsx";
import { More } from "../frame/more.tsx";
import { settingApplies } from "../settings/applies.ts";
import { MAKING_FIELDS, MAKING_GROUP_NAMES } from "../settings/making-fields.ts";
import { SettingField } from "../settings/setting-field.tsx";
import { useShade } from "./shade-context.tsx";
import { withoutChoice, workedOut } from "./worked-out.ts";

interface SettingsProps {
  group: MakingGroup;
  names: readonly string[];
}

/** Some settings of one group, side by side. */
export function Settings({ group, names }: SettingsProps) {
  const { job, plan, pointer, window } = useShade();
  const shown = useApplying(group, names);
  return shown.map((name) => (
    <SettingField
      key={name}
      scope={`${pointer}/shade/making`}
      group={group}
      name={name}
      worked={workedOut(plan, group, name)}
      unchosen={withoutChoice(job, window, group, name)}
      style={plan.style}
    />
  ));
}

/** Those of a group that have to do with the shade as it is. */
function useApplying(group: MakingGroup, names: readonly string[]): readonly string[] {
  const { job, plan, window } = useShade();
  const { workshop } = job;
  return names.filter((name) => settingApplies(group, name, { plan, window, workshop }));
}

interface MoreSettingsProps {
  group: MakingGroup;
  /** Settings that already stand above. */
  but?: readonly string[];
  title?: string;
  /** Fields that belong with them, and come first. */
  before?: ReactNode;
}

/** The rest of a group, folded away until it is wanted. */
export function MoreSettings({
  group,
  but = [],
  title = MAKING_GROUP_NAMES[group],
  before,
}: MoreSettingsProps) {
  const all = Object.keys(MAKING_FIELDS[group]).filter((name) => !but.includes(name));
  const names = useApplying(group, all);
  if (names.length === 0) return null;
  return (
    <More id={`more-${group}`} title={title}>
      <FieldGroup>
        {before}
        <Settings group={group} names={names} />
      </FieldGroup>
    </More>
  );
}

import type { ReactNode } from "react";
import type { MakingGroup } from "../../job/index.ts";
import { FieldGroup } from "../findings/field-findings.tsx";
import { More } from "../frame/more.tsx";
import { MAKING_FIELDS, MAKING_GROUP_NAMES } from "../settings/making-fields.ts";
import { SettingField } from "../settings/setting-field.tsx";
import { useJob } from "../state/fields.ts";
import { useShade } from "./shade-context.tsx";
import { withoutChoice, workedOut } from "./worked-out.ts";

interface SettingsProps {
  group: MakingGroup;
  names: readonly string[];
}

/** Some settings of one group, side by side. */
export function Settings({ group, names }: SettingsProps) {
  const { plan, pointer, window } = useShade();
  const job = useJob();
  return names.map((name) => (
    <SettingField
      key={name}
      scope={`${pointer}/shade/making`}
      group={group}
      name={name}
      worked={workedOut(plan, group, name)}
      unchosen={withoutChoice(job, window.shade.making, group, name)}
      style={plan.style}
    />
  ));
}

interface MoreSettingsProps {
  group: MakingGroup;
  /** Settings that already stand above. */
  but?: readonly string[];
  title?: string;
  before?: ReactNode;
}

/** The rest of a group, folded away until it is wanted. */
export function MoreSettings({ group, but = [], title = MAKING_GROUP_NAMES[group] }: MoreSettingsProps) {
  const names = Object.keys(MAKING_FIELDS[group]).filter((name) => !but.includes(name));
  if (names.length === 0) return null;
  return (
    <More id={`more-${group}`} title={title}>
      <FieldGroup>
        <Settings group={group} names={names} />
      </FieldGroup>
    </More>
  );
}

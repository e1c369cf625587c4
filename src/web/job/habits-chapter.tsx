import { DEFAULTS, type MakingGroup } from "../../job/index.ts";
import { Chapter } from "../frame/chapter.tsx";
import { More } from "../frame/more.tsx";
import type { FieldSpec } from "../inputs/spec.ts";
import { MAKING_FIELDS, MAKING_GROUP_NAMES } from "../settings/making-fields.ts";
import { SettingField } from "../settings/setting-field.tsx";
import { useJob } from "../state/fields.ts";
import { ShopKeeps } from "./shop-keeps.tsx";

const GROUPS = Object.keys(DEFAULTS) as MakingGroup[];

function habitLabel(path: string): string {
  const [group, name] = path.split("/");
  const fields = MAKING_FIELDS[group as MakingGroup] as Readonly<Record<string, FieldSpec>>;
  return fields[name ?? ""]?.label.toLowerCase() ?? path;
}

/** How this workshop makes its shades; a shade may do otherwise. */
export function HabitsChapter() {
  const { workshop } = useJob();
  const own = Object.values(workshop ?? {}).reduce((sum, group) => sum + Object.keys(group ?? {}).length, 0);
  return (
    <Chapter
      id="habits"
      sentence={
        own === 0
          ? "Every shade is made by the defaults, unless its own page says otherwise."
          : `${own} of your own, for every shade whose own page does not say otherwise.`
      }
    >
      {GROUPS.map((group) => (
        <More key={group} id={`habits-${group}`} title={MAKING_GROUP_NAMES[group]}>
          <div className="fields">
            {Object.keys(MAKING_FIELDS[group]).map((name) => (
              <SettingField key={name} scope="/workshop" group={group} name={name} />
            ))}
          </div>
        </More>
      ))}
      <ShopKeeps part="workshop" labelOf={habitLabel} />
    </Chapter>
  );
}

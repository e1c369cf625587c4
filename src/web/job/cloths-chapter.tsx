import { Chapter } from "../frame/chapter.tsx";
import { CLOTH_FIELDS } from "../settings/part-fields.ts";
import { useJob } from "../state/fields.ts";
import { RepeatFields } from "./cloth-fields.tsx";
import { PartList } from "./part-list.tsx";
import { PartsFromFile } from "./parts-from-file.tsx";

export function ClothsChapter() {
  const { cloths } = useJob();
  return (
    <Chapter
      id="cloths"
      sentence={
        cloths.length === 0
          ? "None of your own yet; example cloths are used."
          : `${cloths.map((one) => one.name).join("; ")}.`
      }
    >
      <PartList
        of="cloths"
        kind="cloth"
        pointer="/cloths"
        fields={CLOTH_FIELDS}
        more={(pointer) => <RepeatFields pointer={`${pointer}/repeat`} />}
      />
      <PartsFromFile kind="cloths" pointer="/cloths" />
    </Chapter>
  );
}

import { useMemo } from "react";
import { WithFindings } from "../findings/field-findings.tsx";
import { FindingList } from "../findings/finding-list.tsx";
import { Chapter, type ChapterProps } from "../frame/chapter.tsx";
import { sectionOfStage } from "../sections/sections.ts";
import { openSection } from "../state/store.ts";
import { useShade } from "./shade-context.tsx";

/** One stage of the walk, with its findings where their cause is. */
export function Section({ children, ...chapter }: Omit<ChapterProps, "folded">) {
  const { findings } = useShade().plan;
  const here = useMemo(
    () => findings.filter(({ stage }) => sectionOfStage(stage) === chapter.id),
    [findings, chapter.id],
  );
  return (
    <Chapter
      {...chapter}
      folded={<FindingList findings={here} short onMore={() => openSection(chapter.id, true)} />}
    >
      <WithFindings findings={here}>{children}</WithFindings>
    </Chapter>
  );
}

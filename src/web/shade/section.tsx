import type { Stage } from "../../figures/index.ts";
import { FindingList } from "../findings/finding-list.tsx";
import { Chapter, type ChapterProps } from "../frame/chapter.tsx";
import { openSection } from "../state/store.ts";
import { useShade } from "./shade-context.tsx";

interface SectionProps extends Omit<ChapterProps, "always"> {
  /** Stages whose findings stand here. */
  stages: readonly Stage[];
}

/** One stage of the walk, with its findings where their cause is. */
export function Section({ stages, ...chapter }: SectionProps) {
  const { findings } = useShade().plan;
  const here = findings.filter((finding) => stages.includes(finding.stage));
  return (
    <Chapter
      {...chapter}
      always={(open) => (
        <FindingList findings={here} short={!open} onMore={() => openSection(chapter.id, true)} />
      )}
    />
  );
}

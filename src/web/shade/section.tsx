import type { Finding } from "../../figures/index.ts";
import { WithFindings } from "../findings/field-findings.tsx";
import { FindingList } from "../findings/finding-list.tsx";
import { Chapter, type ChapterProps } from "../frame/chapter.tsx";
import { sectionOfStage } from "../sections/sections.ts";
import { openSection, usePlanner } from "../state/store.ts";
import { useSameItems } from "../state/use-same-items.ts";
import { useShade } from "./shade-context.tsx";
import { Still } from "./still.tsx";

const NONE: readonly Finding[] = [];

interface SectionProps extends Omit<ChapterProps, "folded"> {
  /** Findings that the plan itself has not: what takes too long for it. */
  more?: readonly Finding[];
  findingsFirst?: boolean;
}

/** One stage of the walk, with its findings where their cause is. */
export function Section({ children, more = NONE, findingsFirst = false, ...chapter }: SectionProps) {
  const { id } = chapter;
  const isOpen = usePlanner((planner) => planner.view.open[id] === true);
  const here = useSameItems(
    [...useShade().plan.findings, ...more].filter(({ stage }) => sectionOfStage(stage) === id),
  );
  return (
    <Chapter {...chapter} folded={<FindingList findings={here} short onMore={() => openSection(id, true)} />}>
      <Still still={!isOpen}>
        <WithFindings findings={here} first={findingsFirst}>
          {children}
        </WithFindings>
      </Still>
    </Chapter>
  );
}

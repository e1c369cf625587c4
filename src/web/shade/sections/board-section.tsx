import { counted } from "../../../words/index.ts";
import { LengthFig } from "../../figures/fig.tsx";
import { FieldGroup } from "../../findings/field-findings.tsx";
import { Section } from "../section.tsx";
import { MoreSettings, Settings } from "../setting-group.tsx";
import { useShade } from "../shade-context.tsx";

const FIRST = ["section", "bar", "attachment", "substrate"] as const;

export function BoardSection() {
  return (
    <Section id="board" sentence={<BoardSentence />}>
      <FieldGroup>
        <Settings group="board" names={FIRST} />
      </FieldGroup>
      <MoreSettings group="board" but={FIRST} title="More on board and bar" />
    </Section>
  );
}

function BoardSentence() {
  const { board } = useShade().plan;
  return (
    <>
      {board.sectionName}, <LengthFig id="measure.board-length" mm={board.lengthMm} /> long,{" "}
      {board.eyes.length === 0 ? null : `with ${counted(board.eyes.length, "screw eye")}, `}
      {board.fixing === "brackets"
        ? `on ${counted(board.brackets.length, "bracket")}`
        : `screwed up at ${counted(board.brackets.length, "place")}`}{" "}
      into {board.screws.into}.
      {board.barLengthMm === undefined ? null : (
        <>
          {" "}
          {board.barName ?? "Weight bar"}, <LengthFig id="board.bar-length" mm={board.barLengthMm} />, in the
          hem.
        </>
      )}
    </>
  );
}

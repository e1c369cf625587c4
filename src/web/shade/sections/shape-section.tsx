import { type MakingGroup, styleWithArticle } from "../../../job/index.ts";
import { type Ask, STYLE_MODULES } from "../../../styles/index.ts";
import { counted } from "../../../words/index.ts";
import { Fig, LengthFig } from "../../figures/fig.tsx";
import { FieldGroup } from "../../findings/field-findings.tsx";
import { More } from "../../frame/more.tsx";
import { MAKING_GROUP_NAMES } from "../../settings/making-fields.ts";
import { usePlanner } from "../../state/store.ts";
import { Section } from "../section.tsx";
import { MoreSettings, Settings } from "../setting-group.tsx";
import { useShade, type Workings } from "../shade-context.tsx";
import { useSurfaceFindings } from "../use-surface-findings.ts";
import { FormSentence } from "./form-sentence.tsx";
import { StylePicker } from "./style-picker.tsx";
import { styleTitle } from "./style-words.ts";

export function ShapeSection() {
  const { plan } = useShade();
  const { asks } = STYLE_MODULES[plan.style];
  const isOpen = usePlanner((planner) => planner.view.open.shape === true);
  const ofCloth = useSurfaceFindings(isOpen);
  return (
    <Section id="shape" sentence={<ShapeSentence />} more={ofCloth}>
      <StylePicker />
      <More id="more-shape" title={`More on ${styleWithArticle(plan.style)} shade`}>
        <FieldGroup>
          {asks.map(({ group, keys }) => (
            <Settings key={group} group={group} names={keys} />
          ))}
        </FieldGroup>
      </More>
      {groupsOf(asks).map((group) => (
        <MoreSettings
          key={group}
          group={group}
          but={asks.flatMap((ask): readonly string[] => (ask.group === group ? ask.keys : []))}
          title={`More on ${MORE[group] ?? MAKING_GROUP_NAMES[group].toLowerCase()}`}
        />
      ))}
    </Section>
  );
}

const MORE: Partial<Record<MakingGroup, string>> = { fold: "rows and folds", columns: "columns" };

/** Rest of the groups that the style asks from; the columns belong to every style. */
function groupsOf(asks: readonly Ask[]): MakingGroup[] {
  const own = asks.filter(({ group, keys }) => group !== "fold" || keys.length > 1).map(({ group }) => group);
  return [...new Set<MakingGroup>([...own, "columns"])];
}

function ShapeSentence() {
  const { plan, workings } = useShade();
  const { grid } = plan;
  const [first] = grid.spacingsMm;
  const even = grid.spacingsMm.every((spacing) => Math.abs(spacing - (first ?? spacing)) < 0.01);
  return (
    <>
      {styleTitle(plan.style)}, with{" "}
      <Fig id={workings.has("shape.half-folds") ? "shape.half-folds" : "shape.rows"}>
        {counted(grid.rows.length, "row")}
      </Fig>{" "}
      of rings
      {first === undefined ? null : (
        <>
          {" "}
          <LengthFig id={spacingFigure(workings)} mm={first} /> apart
          {even ? "" : " at the hem, closer above"}
        </>
      )}{" "}
      and <Fig id="shape.columns">{counted(grid.columns.length, "column")}</Fig>{" "}
      <LengthFig id="shape.column-spacing" mm={grid.columnSpacingMm} /> apart. The first row lies{" "}
      <LengthFig
        id={workings.has("shape.half-fold") ? "shape.half-fold" : spacingFigure(workings)}
        mm={grid.bottomSectionMm}
      />{" "}
      above the hem. <FormSentence />
      Raised it is <LengthFig id="shape.raised-height" mm={grid.raisedHeightMm} /> high
      {grid.coveredWhenRaisedMm > 0.5 ? (
        <>
          {" "}
          and covers <LengthFig id="shape.covered" mm={grid.coveredWhenRaisedMm} /> of the opening
        </>
      ) : null}
      .
    </>
  );
}

/** The figure that decides how far apart the rows are, by the style’s own rule. */
function spacingFigure(workings: Workings): string {
  const known = [
    "shape.fold",
    "shape.half-fold",
    "shape.hobble-tape",
    "shape.tuck-spacing",
    "shape.row-spacing",
  ];
  return known.find((id) => workings.has(id)) ?? "shape.rows";
}

import { Fig, LengthFig } from "../../figures/fig.tsx";
import { countText } from "../../frame/count-text.ts";
import { Section } from "../section.tsx";
import { MoreSettings, Settings } from "../setting-group.tsx";
import { useShade } from "../shade-context.tsx";

const FOLD = ["rows", "headrailMm", "skirtMm", "largestSpacingMm"] as const;

export function ShapeSection() {
  return (
    <Section number={2} id="shape" title="Shape" stages={["shape"]} sentence={<ShapeSentence />}>
      <div className="fields">
        <Settings group="fold" names={FOLD} />
        <Settings group="columns" names={["count"]} />
      </div>
      <MoreSettings group="fold" but={FOLD} title="More on rows and folds" />
      <MoreSettings group="columns" but={["count"]} title="More on columns" />
    </Section>
  );
}

function ShapeSentence() {
  const { plan, workings } = useShade();
  const { grid } = plan;
  const [first] = grid.spacingsMm;
  const even = grid.spacingsMm.every((spacing) => Math.abs(spacing - (first ?? spacing)) < 0.01);
  return (
    <>
      Flat, with <Fig id="shape.half-folds">{countText(grid.rows.length, "row")}</Fig> of rings
      {first === undefined ? null : (
        <>
          {" "}
          <LengthFig id={workings.has("shape.fold") ? "shape.fold" : "shape.half-fold"} mm={first} /> apart
          {even ? "" : " at the hem, closer above"}
        </>
      )}{" "}
      and <Fig id="shape.columns">{countText(grid.columns.length, "column")}</Fig>{" "}
      <LengthFig id="shape.column-spacing" mm={grid.columnSpacingMm} /> apart. The first row lies{" "}
      <LengthFig id="shape.half-fold" mm={grid.bottomSectionMm} /> above the hem. Raised it is{" "}
      <LengthFig id="shape.raised-height" mm={grid.raisedHeightMm} /> high
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

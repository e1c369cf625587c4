import { memo } from "react";
import { valueAt } from "../../../figures/index.ts";
import type { Mount } from "../../../job/index.ts";
import { lengthText } from "../../../units/index.ts";
import { LengthFig } from "../../figures/fig.tsx";
import { FieldGroup } from "../../findings/field-findings.tsx";
import { Field } from "../../inputs/field.tsx";
import { Segments } from "../../inputs/segments.tsx";
import { fieldAt } from "../../settings/field-at.ts";
import { useEnglish } from "../../state/english.ts";
import { editField, useCanEdit, useField, useUnits } from "../../state/fields.ts";
import { usePlanner } from "../../state/store.ts";
import { BeyondRectangle } from "../beyond-rectangle.tsx";
import { Diagonals } from "../diagonals.tsx";
import { Footholds } from "../footholds.tsx";
import { HangsAlready } from "../hangs-already.tsx";
import { Obstructions } from "../obstructions.tsx";
import { Section } from "../section.tsx";
import { MoreSettings } from "../setting-group.tsx";
import { useShade } from "../shade-context.tsx";

/** The same quarter inch that the plan lets pass. */
const SQUARE_ENOUGH_MM = 6.35;

const MOUNT_NAMES: Record<Mount, string> = {
  inside: "Inside",
  outside: "Outside",
  "to-size": "Finished size given",
};

export function MeasureSection() {
  const { pointer } = useShade();
  return (
    <Section id="measure" sentence={<MeasureSentence />}>
      <MeasureFields
        pointer={pointer}
        mount={useField(`${pointer}/shade/mount`) as Mount}
        widths={useMeasuresOf(`${pointer}/opening/widthsMm`)}
        heights={useMeasuresOf(`${pointer}/opening/heightsMm`)}
      />
    </Section>
  );
}

/** How many measures of a side are given. */
function useMeasuresOf(pointer: string): number {
  return usePlanner(({ job }) => (valueAt(job, pointer) as readonly number[] | undefined)?.length ?? 0);
}

interface MeasureFieldsProps {
  pointer: string;
  mount: Mount;
  /** Measures given of either side. */
  widths: number;
  heights: number;
}

/** Each field follows the job by itself: a keystroke in one draws none of the others anew. */
const MeasureFields = memo(function MeasureFields({ pointer, mount, widths, heights }: MeasureFieldsProps) {
  useEnglish();
  return (
    <>
      <Segments<Mount>
        label="Hung"
        options={MOUNT_NAMES}
        value={mount}
        onChange={(chosen) => editField(`${pointer}/shade/mount`, chosen, "Mount")}
        readOnly={!useCanEdit()}
      />
      <HangsAlready pointer={pointer} />
      <Sides of="widthsMm" given={widths} pointer={pointer} single={mount === "to-size"} />
      <Sides of="heightsMm" given={heights} pointer={pointer} single={mount === "to-size"} />
      {mount === "to-size" ? null : <Diagonals pointer={`${pointer}/opening/diagonalsMm`} />}
      <FieldGroup>
        <OpeningField pointer={`${pointer}/opening/recessDepthMm`} />
        <OpeningField pointer={`${pointer}/opening/sillAboveFloorMm`} />
      </FieldGroup>
      {mount === "to-size" ? null : <BeyondRectangle />}
      <Footholds pointer={`${pointer}/opening`} />
      <Obstructions pointer={`${pointer}/opening/obstructions`} />
      <MoreSettings group="mount" />
    </>
  );
});

function MeasureSentence() {
  const { plan, window } = useShade();
  const units = useUnits();
  const { size, mount } = plan;
  const words: Record<Mount, string> = {
    inside: "Inside mount",
    outside: "Outside mount",
    "to-size": "Made to size",
  };
  return (
    <>
      {words[mount]}
      {mount === "to-size"
        ? ", "
        : `, opening ${lengthText(size.openingWidthMm, units)} × ${lengthText(size.openingHeightMm, units)}, finished `}
      <LengthFig id="measure.finished-width" mm={size.finishedWidthMm} /> ×{" "}
      <LengthFig id="measure.finished-length" mm={size.finishedLengthMm} />
      {size.outOfSquareMm === undefined || window.opening.diagonalsMm === undefined
        ? ""
        : size.outOfSquareMm < 0.5
          ? ", square"
          : `, ${size.outOfSquareMm <= SQUARE_ENOUGH_MM ? "square within" : "out of square by"} ${lengthText(size.outOfSquareMm, units)}`}
      .
    </>
  );
}

/** One to three measures of a side; the next can be given once the one before it is. */
function Sides({
  of,
  given,
  pointer,
  single,
}: {
  of: "widthsMm" | "heightsMm";
  given: number;
  pointer: string;
  single: boolean;
}) {
  const shown = single ? 1 : Math.min(3, given + 1);
  return (
    <FieldGroup three>
      {[0, 1, 2].slice(0, Math.max(shown, given)).map((index) => (
        <OpeningField
          key={index}
          pointer={`${pointer}/opening/${of}/${index}`}
          // An emptied field would let the ones after it move up into its place.
          {...(index < given - 1 && index > 0 ? { needed: "empty the one after it first" } : {})}
        />
      ))}
    </FieldGroup>
  );
}

function OpeningField({ pointer, needed }: { pointer: string; needed?: string }) {
  const found = fieldAt(pointer);
  if (!found || !("spec" in found)) return null;
  const asked = needed ?? found.needed;
  return <Field pointer={pointer} spec={found.spec} {...(asked === undefined ? {} : { needed: asked })} />;
}

import { type ReactNode, useMemo, useRef } from "react";
import { drawAction, place, speltDrawing, svgNodes } from "../../drawing/index.ts";
import type { Step, StepAction } from "../../shade-plan/index.ts";
import { useClothTint } from "../sheets/cloth-tint.ts";
import { Sheet } from "../sheets/sheet.tsx";
import { SvgElement } from "../sheets/svg-node.tsx";
import { type ElementSize, useBox } from "../sheets/use-box.ts";
import { screenSpelling } from "../spelt/screen-english.ts";
import { useUnits } from "../state/fields.ts";

/** What the hands do in a step; where that is not drawn, the sheet that its figures stand on. */
export function BenchDrawing({ step: { action, sheet } }: { step: Step }) {
  if (action !== undefined) {
    return <Plate>{(box) => <ActionPlate action={action} box={box} />}</Plate>;
  }
  return sheet === undefined ? null : (
    <Plate>{(box) => <Sheet kind={sheet} box={box} letters={1.4} />}</Plate>
  );
}

function Plate({ children }: { children: (box: ElementSize) => ReactNode }) {
  const room = useRef<HTMLDivElement>(null);
  const box = useBox(room);
  const plate = useClothTint("plate");
  return (
    <div {...plate}>
      <div className="plate-room" ref={room}>
        {box !== undefined && box.widthPx > 0 && box.heightPx > 0 ? children(box) : null}
      </div>
    </div>
  );
}

/** Pixels for one millimetre of paper: its words are read from where the hands work. */
const PX_PER_MM = 6.4;
const REM_PX = 16;

function ActionPlate({ action, box }: { action: StepAction; box: ElementSize }) {
  const units = useUnits();
  const pxPerMm = (PX_PER_MM * box.remPx) / REM_PX;
  const { widthPx, heightPx } = box;
  const svg = useMemo(() => {
    const bounds = { maxWidthMm: widthPx / pxPerMm, maxHeightMm: heightPx / pxPerMm };
    const placed = place(speltDrawing(drawAction(action, units), screenSpelling()), bounds);
    const { tag, attrs, children } = svgNodes(placed);
    const facts = placed.facts.map(({ label, text }) => `${label}: ${text}`).join(". ");
    return {
      tag,
      attrs: {
        ...attrs,
        "aria-label": `${placed.title}. ${facts}`,
        width: placed.widthMm * pxPerMm,
        height: placed.heightMm * pxPerMm,
        className: "action-svg",
      },
      children: children ?? [],
    };
  }, [action, units, widthPx, heightPx, pxPerMm]);
  return <SvgElement node={svg} />;
}

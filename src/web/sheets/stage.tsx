import { useRef } from "react";
import type { SheetKind } from "../../shade-plan/index.ts";
import { WorkingSlip } from "../figures/working-slip.tsx";
import { PicturePlate } from "../picture/picture-plate.tsx";
import { usePlanner } from "../state/store.ts";
import { useClothTint } from "./cloth-tint.ts";
import { RaiseSlider } from "./raise-slider.tsx";
import { Sheet } from "./sheet.tsx";
import { RAISED_SHEETS } from "./sheet-placing.ts";
import { SheetTabs } from "./sheet-tabs.tsx";
import { type ElementSize, useBox } from "./use-box.ts";
import "./stage.css";

/** The live drawing: which side it is seen from, how far it is raised, and the slip of what was pressed. */
export function DrawingStage() {
  const sheet = usePlanner((planner) => planner.view.sheet);
  const panel = useClothTint("stage-panel");
  return (
    <div className="stage">
      <SheetTabs />
      <div role="tabpanel" id="drawing" aria-labelledby={`tab-${sheet}`} {...panel}>
        <Plate kind={sheet} />
      </div>
      <WorkingSlip />
    </div>
  );
}

function Drawn({ kind, box }: { kind: SheetKind; box: ElementSize }) {
  return kind === "picture" ? <PicturePlate box={box} /> : <Sheet kind={kind} box={box} />;
}

function Plate({ kind }: { kind: SheetKind }) {
  const plate = useRef<HTMLDivElement>(null);
  const box = useBox(plate);
  return (
    <div className="plate">
      <div className="plate-room" ref={plate}>
        {box && box.widthPx > 0 && box.heightPx > 0 ? <Drawn kind={kind} box={box} /> : null}
      </div>
      {RAISED_SHEETS.has(kind) ? <RaiseSlider /> : null}
    </div>
  );
}

import { useRef } from "react";
import { Tab, TabList, TabPanel, Tabs } from "react-aria-components/Tabs";
import type { SheetKind } from "../../shade/index.ts";
import { WorkingSlip } from "../figures/working-slip.tsx";
import { look, usePlanner } from "../state/store.ts";
import { RaiseSlider } from "./raise-slider.tsx";
import { Sheet } from "./sheet.tsx";
import { RAISED_SHEETS } from "./sheet-placing.ts";
import { useBox } from "./use-box.ts";
import "./stage.css";

/** Sheets that stand on the screen; marking strips are for paper. */
const TABS: Partial<Record<SheetKind, string>> = {
  front: "Front",
  back: "Back",
  side: "Side",
  cutting: "Cutting",
  marking: "Marking",
  board: "Board",
  lock: "Lock",
};

/** The live drawing: which side it is seen from, how far it is raised, and the slip of what was pressed. */
export function Stage() {
  const sheet = usePlanner((planner) => planner.view.sheet);
  return (
    <div className="stage">
      <Tabs
        className="stage-tabs"
        selectedKey={sheet}
        onSelectionChange={(key) => look({ sheet: key as SheetKind })}
        keyboardActivation="manual"
      >
        <TabList aria-label="Drawings" className="stage-tab-list screen-only">
          {Object.entries(TABS).map(([kind, name]) => (
            <Tab key={kind} id={kind} className="stage-tab">
              {name}
            </Tab>
          ))}
        </TabList>
        <TabPanel id={sheet} className="stage-panel">
          <Plate kind={sheet} />
        </TabPanel>
      </Tabs>
      <WorkingSlip />
    </div>
  );
}

function Plate({ kind }: { kind: SheetKind }) {
  const plate = useRef<HTMLDivElement>(null);
  const box = useBox(plate);
  return (
    <div className="plate">
      <div className="plate-room" ref={plate}>
        {box && box.widthPx > 0 && box.heightPx > 0 ? <Sheet kind={kind} box={box} /> : null}
      </div>
      {RAISED_SHEETS.has(kind) ? <RaiseSlider /> : null}
    </div>
  );
}

import { type KeyboardEvent, useRef } from "react";
import type { Lift, SheetKind } from "../../shade-plan/index.ts";
import { useShade } from "../shade/shade-context.tsx";
import { usePlanner } from "../state/store.ts";
import { showSheet } from "./strip.ts";

/** Sheets that stand on the screen; marking strips are for paper. */
const TABS = {
  front: "Front",
  back: "Back",
  side: "Side",
  picture: "Picture",
  cutting: "Cutting",
  marking: "Marking",
  board: "Board",
  lock: "Lock",
  force: "Forces",
} as const satisfies Partial<Record<SheetKind, string>>;

const TAKE_UP = { lock: "Lock", cleat: "Cleat", tube: "Drive" } as const;

const KINDS = Object.keys(TABS) as (keyof typeof TABS)[];

/** What a sheet is called above the drawing. */
export function sheetTitle(kind: SheetKind, takeUp: Lift["takeUp"]): string {
  return kind === "lock" ? TAKE_UP[takeUp] : (TABS[kind as keyof typeof TABS] ?? kind);
}

/** From where the shade is seen. One stop for the tab key; arrows, Home and End go along the row. */
export function SheetTabs() {
  const sheet = usePlanner((planner) => planner.view.sheet);
  const { lift, existing } = useShade().plan;
  const { takeUp } = lift;
  // Of a shade that hangs already no cloth is cut, and nothing is marked but new rings.
  const kinds = KINDS.filter(
    (kind) =>
      existing === undefined || (kind !== "cutting" && (kind !== "marking" || existing.takes.rings > 0)),
  );
  const row = useRef<HTMLDivElement>(null);
  const onKeyDown = (event: KeyboardEvent) => {
    const at = kinds.indexOf(sheet as keyof typeof TABS);
    const next = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: kinds.length - 1 }[event.key];
    if (next === undefined) return;
    event.preventDefault();
    const index = (next + kinds.length) % kinds.length;
    showSheet(kinds[index] ?? "front");
    row.current?.querySelectorAll<HTMLElement>("[role=tab]")[index]?.focus();
  };
  return (
    <div
      ref={row}
      role="tablist"
      aria-label="Drawings"
      className="stage-tab-list screen-only"
      onKeyDown={onKeyDown}
    >
      {kinds.map((kind) => (
        <button
          key={kind}
          type="button"
          role="tab"
          id={`tab-${kind}`}
          className="stage-tab"
          aria-selected={sheet === kind}
          aria-controls="drawing"
          tabIndex={sheet === kind ? 0 : -1}
          onClick={() => showSheet(kind)}
        >
          {sheetTitle(kind, takeUp)}
        </button>
      ))}
    </div>
  );
}

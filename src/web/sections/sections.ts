import type { Stage } from "../../figures/index.ts";

interface SectionSpec {
  title: string;
  /** Page on which it stands. */
  of: "job" | "window";
  /** Stages whose findings stand here. */
  stages?: readonly Stage[];
}

/**
 * The sections of both pages in the order of the work. A section has one number, on whichever page it is named;
 * those of the workshop serve every window and stand last.
 */
export const SECTIONS = {
  rooms: { title: "Rooms and windows", of: "job" },
  place: { title: "Place, purpose, units", of: "job" },
  measure: { title: "Measure", of: "window", stages: ["measure"] },
  shape: { title: "Shape", of: "window", stages: ["shape"] },
  cloth: { title: "Cloth", of: "window", stages: ["cloth"] },
  lift: { title: "Lift", of: "window", stages: ["lift", "rig"] },
  board: { title: "Board", of: "window", stages: ["board"] },
  safety: { title: "Child safety", of: "window", stages: ["safety"] },
  make: { title: "Make, string, hang", of: "window", stages: ["make", "cost"] },
  ask: { title: "Ask", of: "window" },
  findings: { title: "Findings", of: "job" },
  cutting: { title: "Cutting", of: "job" },
  cost: { title: "Shopping and price", of: "job", stages: ["cost"] },
  offer: { title: "Quote, order, invoice", of: "job" },
  print: { title: "Print and save", of: "job" },
  cloths: { title: "Cloths", of: "job" },
  hardware: { title: "Hardware", of: "job" },
  stock: { title: "Stock", of: "job" },
  habits: { title: "Workshop habits", of: "job" },
  rates: { title: "Rates and times", of: "job" },
} as const satisfies Record<string, SectionSpec>;

export type SectionId = keyof typeof SECTIONS;

export const SECTION_IDS = Object.keys(SECTIONS) as SectionId[];

/** Those of the job that come before its windows, after them, and for all of its windows. */
export const BEFORE_WINDOWS: readonly SectionId[] = ["rooms", "place"];
export const OF_WINDOW: readonly SectionId[] = SECTION_IDS.filter((id) => SECTIONS[id].of === "window");
export const AFTER_WINDOWS: readonly SectionId[] = ["findings", "cutting", "cost", "offer", "print"];
export const OF_WORKSHOP: readonly SectionId[] = ["cloths", "hardware", "stock", "habits", "rates"];

export function sectionNumber(id: SectionId): number {
  return SECTION_IDS.indexOf(id) + 1;
}

/** The section of a window's page that a stage belongs to. */
export function sectionOfStage(stage: Stage): SectionId {
  const found = OF_WINDOW.find((id) => {
    const section: SectionSpec = SECTIONS[id];
    return section.stages?.includes(stage);
  });
  return found ?? "make";
}

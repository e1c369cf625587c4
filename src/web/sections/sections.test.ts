import { describe, expect, it } from "vitest";
import { type Finding, STAGES } from "../../figures/index.ts";
import { newJob, newWindow } from "../../job/index.ts";
import { fieldAt } from "../settings/field-at.ts";
import { questionsOf } from "./questions.ts";
import {
  AFTER_WINDOWS,
  BEFORE_WINDOWS,
  OF_WINDOW,
  OF_WORKSHOP,
  SECTION_IDS,
  SECTIONS,
  sectionNumber,
  sectionOfStage,
} from "./sections.ts";
import { waitingIn } from "./what-is-open.ts";

const window = newWindow({ id: "w", name: "W", widthMm: 900, heightMm: 1500 });
const empty = newJob({ id: "j", name: "J", system: "metric" });
const job = { ...empty, rooms: [{ id: "r", name: "R", windows: [window] }] };
const FIRST = { room: 0, window: 0 };

describe("sections", () => {
  it("are numbered once, from one on, over both pages", () => {
    const walk = [...BEFORE_WINDOWS, ...OF_WINDOW, ...AFTER_WINDOWS, ...OF_WORKSHOP];
    expect(walk).toEqual(SECTION_IDS);
    expect(walk.map(sectionNumber)).toEqual(walk.map((_, at) => at + 1));
  });

  it("have a place on the window's page for what any stage finds", () => {
    for (const stage of STAGES) expect(SECTIONS[sectionOfStage(stage)].of).toBe("window");
  });
});

describe("questions of a new window", () => {
  it("ask only for what has a field, the next measure before the one after it", () => {
    const asked = questionsOf(job, FIRST);
    expect(asked.map(({ text }) => text)).toEqual([
      "Width in the middle",
      "Height in the centre",
      "Both diagonals",
      "Depth of the recess",
      "Sill above the floor",
      "What a child can stand on",
      "What it is screwed into",
      "Where it will hang",
      "What its use is",
    ]);
    const fields = asked.filter(({ pointer }) => !/diagonals|footholds|^\/(?:place|purpose)$/.test(pointer));
    for (const { pointer } of fields) expect(fieldAt(pointer), pointer).toBeDefined();
  });

  it("ask nothing about an opening that nobody measures", () => {
    const toSize = { ...window, shade: { ...window.shade, mount: "to-size" as const } };
    const sized = { ...job, rooms: [{ id: "r", name: "R", windows: [toSize] }] };
    const texts = questionsOf(sized, FIRST).map(({ text }) => text);
    expect(texts).not.toContain("Width in the middle");
    expect(texts).not.toContain("Depth of the recess");
  });

  it("wait in their sections", () => {
    const waiting = waitingIn([], questionsOf(job, FIRST));
    expect(waiting.measure?.questions).toBe(6);
    expect(waiting.safety?.questions).toBe(2);
    expect(waiting.cloth).toBeUndefined();
  });

  it("stand beside what was found, one for each card that the section shows", () => {
    const cords = { stage: "safety", severity: "fix", cause: { id: "cords", says: "" } };
    const found = [cords, cords, { stage: "lift", severity: "fix" }, { stage: "rig", severity: "fix" }];
    const waiting = waitingIn(found as unknown as Finding[], []);
    expect(waiting.safety?.fix).toBe(1);
    expect(waiting.lift?.fix).toBe(2);
  });
});

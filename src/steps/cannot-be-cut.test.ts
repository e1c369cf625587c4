import { expect, test } from "vitest";
import { jobWith } from "../../test/job-with.ts";
import { plan } from "../plan/index.ts";

const NARROW = { id: "ribbon", name: "Ribbon", usableWidthMm: 100, massGsm: 150 };

type ShadeInput = NonNullable<Parameters<typeof jobWith>[0]["shade"]>;

function stepsOf(shade: Partial<ShadeInput>) {
  const job = jobWith({ shade: { style: "flat", mount: "outside", ...shade } }, { cloths: [NARROW] });
  const [planned] = plan({ ...job, rooms: wide(job.rooms) }).shades;
  if (planned === undefined) throw new Error("no shade");
  const text = (id: string) => planned.steps.find((step) => step.id === id)?.text;
  const ids = planned.steps.map(({ id }) => id);
  return { text, ids, findings: planned.findings.map(({ id }) => id) };
}

/** The only window of a test job, 3 m wide: 45 strips of a ribbon. */
function wide(rooms: ReturnType<typeof jobWith>["rooms"]): typeof rooms {
  return rooms.map((room) => ({
    ...room,
    windows: room.windows.map((one) => ({ ...one, opening: { ...one.opening, widthsMm: [3000] } })),
  }));
}

test("a layer that its cloth cannot give has a step that says so, and is neither laid out nor joined", () => {
  const { text, findings } = stepsOf({ face: "ribbon" });
  expect(findings).toContain("cloth.too-many-joins");
  expect(findings.filter((id) => id === "cloth.joins")).toHaveLength(1);
  expect(text("cut-face")).toMatch(/^“Ribbon” is .+ wide, and the face would take \d+ pieces side by side/);
  expect(text("cut-look")).not.toContain("Ribbon");
  expect(text("make-join-face")).toBeUndefined();
  // The lining is cut and joined as ever.
  expect(text("cut-lining")).toMatch(/^Cut 3 pieces/);
  expect(text("make-join-lining")).toBeDefined();
});

test("where a layer cannot be cut, that comes before all cutting, and what is made of it says that it waits", () => {
  const { text, ids } = stepsOf({ face: "ribbon" });
  const cutting = ids.filter((id) => id.startsWith("cut-"));
  expect(cutting[0]).toBe("cut-face");
  expect(ids.find((id) => id.startsWith("make-"))).toBe("make-wait");
  expect(text("make-wait")).toMatch(/^There is no cloth yet that the face can be cut from/);
  expect(stepsOf({}).ids).not.toContain("make-wait");
});

test("a piece beside the layers that takes more than the bolt is wide is not told to be cut", () => {
  const { text, findings } = stepsOf({
    bottomBand: "ribbon",
    making: { banding: { bottomBandMm: 300 } },
  });
  expect(findings).toContain("cloth.trim-wider-than-cloth");
  expect(text("cut-bands")).toMatch(/^Bottom band: it takes .+ across the bolt, and “Ribbon” is .+ wide/);
  expect(text("cut-bands")).not.toContain("one piece");
});

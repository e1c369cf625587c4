import { parseJSONPointer } from "immutable-json-patch";
import { describe, expect, it } from "vitest";
import { jobWith } from "../../../test/job-with.ts";
import { setPatch } from "../../figures/index.ts";
import {
  fieldAccepts,
  type Job,
  type JobInput,
  jobSchema,
  LIFT_KINDS,
  makingSchema,
  newJob,
  STYLES,
} from "../../job/index.ts";
import { figuresOf, plan } from "../../plan/index.ts";
import { readValue } from "../inputs/read-write.ts";
import type { FieldSpec, TextSpec } from "../inputs/spec.ts";
import { applyEdit, EMPTY_HISTORY } from "../state/history.ts";
import { fieldAt } from "./field-at.ts";
import { MAKING_FIELDS } from "./making-fields.ts";
import {
  BAR_FIELDS,
  BOARD_FIELDS,
  CLOTH_FIELDS,
  CORD_FIELDS,
  DRIVE_FIELDS,
  EYE_FIELDS,
  LOCK_FIELDS,
  OFFER_FIELDS,
  RATE_FIELDS,
  REPEAT_FIELDS,
  RING_FIELDS,
  TUBE_FIELDS,
} from "./part-fields.ts";

/** The outermost values that a field lets a maker type. */
function extremes(spec: FieldSpec): unknown[] {
  switch (spec.kind) {
    case "length":
      return [spec.minMm, spec.maxMm];
    case "number":
      return [spec.min, spec.max];
    case "choice":
      return Object.keys(spec.options).map((key) => (spec.numeric ? Number(key) : key));
    case "flag":
      return [true, false];
    case "text":
      return spec.wanted === undefined ? ["x".repeat(spec.most)] : [];
    case "part":
      return spec.none === undefined ? ["some-part"] : ["some-part", null];
  }
}

const job: Job = jobSchema.parse({
  ...newJob({ id: "job", name: "Job", system: "metric" }),
  cloths: [{ id: "c", name: "C", usableWidthMm: 1000, massGsm: 100, repeat: { verticalMm: 300 } }],
  hardware: {
    locks: [
      {
        id: "l",
        name: "L",
        housingLengthMm: 20,
        housingWidthMm: 20,
        housingHeightMm: 20,
        dividerWires: 1,
        cordsMax: 1,
      },
    ],
    cords: [{ id: "k", name: "K", diameterMm: 1 }],
    bars: [{ id: "b", name: "B", material: "steel", widthMm: 19, thicknessMm: 3 }],
    boards: [{ id: "d", name: "D", depthMm: 20, thicknessMm: 20 }],
    rings: [{ id: "r", name: "R", diameterMm: 10 }],
    eyes: [{ id: "e", name: "E", outsideDiameterMm: 10 }],
    tubes: [{ id: "t", name: "T", diameterMm: 20 }],
    drives: [{ id: "v", name: "V", kind: "loop", lengthMm: 30, heightMm: 30, depthMm: 30 }],
  },
} satisfies JobInput);

const settings = Object.entries(MAKING_FIELDS).flatMap(([group, fields]) =>
  Object.entries<FieldSpec>(fields).map(([name, spec]) => [`/workshop/${group}/${name}`, spec] as const),
);
const ofParts = (
  [
    ["/cloths/0", CLOTH_FIELDS],
    ["/cloths/0/repeat", REPEAT_FIELDS],
    ["/hardware/locks/0", LOCK_FIELDS],
    ["/hardware/cords/0", CORD_FIELDS],
    ["/hardware/bars/0", BAR_FIELDS],
    ["/hardware/boards/0", BOARD_FIELDS],
    ["/hardware/rings/0", RING_FIELDS],
    ["/hardware/eyes/0", EYE_FIELDS],
    ["/hardware/tubes/0", TUBE_FIELDS],
    ["/hardware/drives/0", DRIVE_FIELDS],
    ["/rates", RATE_FIELDS],
    ["/offer", OFFER_FIELDS],
  ] as const
).flatMap(([parent, fields]) =>
  Object.entries<FieldSpec>(fields).map(([name, spec]) => [`${parent}/${name}`, spec] as const),
);

/** Settings that the figures of a shade in each style and with each lift name. */
function settingsBehindFigures(): string[] {
  const named = new Set<string>();
  for (const style of STYLES)
    for (const kind of LIFT_KINDS) {
      const [shade] = plan(jobWith({ shade: { style, making: { lift: { kind } } } })).shades;
      if (shade === undefined) throw new Error("invalid test job: no shade");
      for (const { rule, of } of figuresOf(shade).values()) for (const on of rule.restsOn(of)) named.add(on);
    }
  return [...named].filter((on) => !/^(?:figure:|opening\/|shade\/)/.test(on));
}

describe("fields and the schema agree", () => {
  it.each([...settings, ...ofParts])("%s: whatever the field accepts the job may hold", (pointer, spec) => {
    for (const value of extremes(spec)) {
      const { document } = applyEdit(job, EMPTY_HISTORY, { label: "", patch: setPatch(job, pointer, value) });
      const parsed = jobSchema.safeParse(document);
      expect(parsed.error?.issues ?? [], `${pointer} = ${value}`).toEqual([]);
    }
  });

  // ISO 8601-1:2019, 4.3.4 and 4.3.5: twelve months, each with its days; 2025 is no leap year.
  it.each([
    [
      "/hardware/locks/0/measuredOn",
      LOCK_FIELDS.measuredOn,
      ["2026-05-31"],
      ["2026-13-01", "2026-02-30", "2025-02-29", "soon"],
    ],
    ["/cloths/0/colour", CLOTH_FIELDS.colour, ["#d9c7a3"], ["#d9c7a", "d9c7a3", "#d9c7ag"]],
    ["/rates/currency", RATE_FIELDS.currency, ["EUR"], ["eur", "E1R", "EU"]],
  ] as const)("%s: takes what the schema takes, and says what would do", (pointer, spec, good, bad) => {
    const takes = (value: unknown) => fieldAccepts(parseJSONPointer(pointer), value);
    const read = (text: string) => readValue(text, spec as TextSpec, job.units, takes);
    for (const text of good) expect(read(text), text).toEqual({ ok: true, value: text });
    for (const text of bad)
      expect(read(text), text).toEqual({ ok: false, reason: (spec as TextSpec).wanted });
  });

  it("each setting of the schema has its field", () => {
    const schema = Object.entries(makingSchema.shape).flatMap(([group, fields]) =>
      Object.keys(fields.unwrap().shape).map((name) => `/workshop/${group}/${name}`),
    );
    expect(settings.map(([pointer]) => pointer).sort()).toEqual(schema.sort());
  });

  it("each setting that a figure rests on exists, at its pointer", () => {
    const named = settingsBehindFigures();
    expect(named.length).toBeGreaterThan(40);
    for (const key of named)
      expect(fieldAt(`/rooms/0/windows/0/shade/making/${key}`), key).toHaveProperty("setting");
    expect(fieldAt("/rooms/0/windows/0/opening/widthsMm/1")).toHaveProperty("spec");
    expect(fieldAt("/rooms/0/windows/0/opening/widthsMm/7")).toBeUndefined();
    expect(fieldAt("/name")).toBeUndefined();
  });
});

import { immutableJSONPatch } from "immutable-json-patch";
import { expect, test } from "vitest";
import { settingPatch, withParents } from "./patch.ts";

const at = { path: "/rooms/0/windows/0" };

/** RFC 6902 is the judge: what it refuses has no parent (section 4.1). */
function pressed(
  making: object | undefined,
  patch: readonly { op: string; path: string; value?: unknown }[],
) {
  const shade = making === undefined ? {} : { making };
  const groups = making === undefined ? {} : { ownGroups: Object.keys(making) as never };
  const job = { rooms: [{ windows: [{ shade }] }] };
  const whole = withParents(patch, { ...at, ...groups });
  return (immutableJSONPatch(job as never, whole as never) as never as typeof job).rooms[0]?.windows[0]
    ?.shade;
}

const rows = settingPatch(at, "fold", "rows", 7);
const skirt = settingPatch(at, "fold", "skirtMm", 50);
const side = settingPatch(at, "lift", "controlSide", "left");

test.each([
  [undefined, { fold: { rows: 7, skirtMm: 50 }, lift: { controlSide: "left" } }],
  [{}, { fold: { rows: 7, skirtMm: 50 }, lift: { controlSide: "left" } }],
  [{ lift: { lock: "a" } }, { fold: { rows: 7, skirtMm: 50 }, lift: { lock: "a", controlSide: "left" } }],
  [
    { fold: { rows: 5, stackMm: 9 } },
    { fold: { rows: 7, stackMm: 9, skirtMm: 50 }, lift: { controlSide: "left" } },
  ],
])(
  "settings are added to %j with the parents that are missing, and nothing else is lost",
  (before, after) => {
    expect(pressed(before, [...rows, ...skirt, ...side])).toEqual({ making: after });
  },
);

test("what is no setting of this shade stays as it is", () => {
  const other = [
    { op: "add", path: "/rooms/0/windows/1/shade/making/fold/rows", value: 3 },
    { op: "replace", path: "/rooms/0/windows/0/shade/mount", value: "outside" },
    { op: "remove", path: "/rooms/0/windows/0/shade/making/fold/rows" },
    { op: "add", path: "/rooms/0/windows/0/shade/making/fold", value: { rows: 3 } },
  ];
  expect(withParents(other, at)).toEqual(other);
});

import { describe, expect, it } from "vitest";
import { DEFAULTS, type Job, newJob, newWindow, openJob, STYLES, type Window } from "../../job/index.ts";
import { plan, type ShadePlan } from "../../plan/index.ts";
import { hiddenSettings, settingApplies } from "./applies.ts";

const empty = newJob({ id: "j", name: "J", system: "metric" });

function jobWith(window: Window): Job {
  const opened = openJob({ ...empty, rooms: [{ id: "r", name: "R", windows: [window] }] });
  if (!opened.ok) throw new Error(`invalid test: ${opened.issues[0]?.field} ${opened.issues[0]?.wanted}`);
  return opened.job;
}

function shadeOf(window: Window): ShadePlan {
  const [shade] = plan(jobWith(window)).shades;
  if (!shade) throw new Error("invalid test: no shade");
  return shade;
}

/** Another value than the default, of its kind. */
const OTHERS: Record<string, unknown> = {
  interliningCut: "as-lining",
  blackoutCut: "as-lining",
  face: "front",
  at: "half-folds",
  rib: "rib-dowel-8",
  corners: "butted",
  wallWood: "basswood",
  returns: "pieces",
  fixingRatedN: 500,
};

function otherValue(group: string, name: string): unknown {
  const entry = (DEFAULTS as unknown as Record<string, Record<string, { value?: unknown }>>)[group]?.[name];
  const value = entry?.value;
  if (typeof value === "number") return value + 7;
  return OTHERS[name] ?? 33;
}

const bare = newWindow({ id: "w", name: "W", widthMm: 900, heightMm: 1500 });
const windows: [string, Window][] = [
  ...STYLES.map((style): [string, Window] => [style, { ...bare, shade: { ...bare.shade, style } }]),
  ["outside, unlined", { ...bare, shade: { ...bare.shade, mount: "outside", lining: null } }],
  ["to size", { ...bare, shade: { ...bare.shade, mount: "to-size" } }],
];

/** What a plan comes to, but for what it finds of a setting itself: that it does nothing here. */
const outcome = ({ size, grid, cloth, lift, board, cost, findings }: ShadePlan, setting: string) => ({
  size,
  grid,
  cloth,
  lift,
  board,
  cost,
  findings: findings.filter(({ path }) => !path?.endsWith(setting)).map(({ id, text }) => [id, text]),
});

describe.each(windows)("settings not shown for %s", (_, window) => {
  const before = shadeOf(window);
  const chosen = { plan: before, window, workshop: undefined };
  const hidden = hiddenSettings().filter(([group, name]) => !settingApplies(group, name, chosen));

  it("are some, and change nothing of the plan", () => {
    expect(hidden.length).toBeGreaterThan(3);
    for (const [group, name] of hidden) {
      const making = { [group]: { [name]: otherValue(group, name) } };
      const after = shadeOf({ ...window, shade: { ...window.shade, making } } as Window);
      const setting = `${group}/${name}`;
      expect(outcome(after, setting), setting).toEqual(outcome(before, setting));
    }
  });

  it("are shown once they were set", () => {
    for (const [group, name] of hidden) {
      const making = { [group]: { [name]: otherValue(group, name) } };
      const set = { ...window, shade: { ...window.shade, making } } as Window;
      expect(settingApplies(group, name, { ...chosen, window: set })).toBe(true);
    }
  });
});

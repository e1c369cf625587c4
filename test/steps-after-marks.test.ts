import { describe, expect, test } from "vitest";
import { RIB_KINDS, STYLES } from "../src/job/index.ts";
import { plan, type ShadePlan } from "../src/plan/index.ts";
import type { Step } from "../src/shade-plan/index.ts";
import { jobWith } from "./job-with.ts";

/** What is done along or at the columns of rings: by its words, or by what its drawing shows. */
const AT_COLUMNS =
  /mark of each column|along (?:each|every) (?:ring )?column|at every crossing|along every line|to every tape|in every column/iu;
const ACTIONS = new Set(["baste-layers", "sew-ring", "sew-sleeve"]);
const MARKS_COLUMNS = /^Mark (?:the columns|\d+ lines for the tapes)/u;

const isAtColumns = ({ title, text, action }: Step) =>
  AT_COLUMNS.test(`${title} ${text}`) || (action !== undefined && ACTIONS.has(action.kind));

/** All layers that a shade may have, an open back or one in sleeves. */
const LAYERS = [
  { lining: null },
  { lining: "cotton-lining" },
  { lining: "cotton-lining", interlining: "domett", blackout: "blackout-lining" },
];
const GUIDES = ["open", "enclosed"] as const;

const shades = STYLES.flatMap((style) =>
  LAYERS.flatMap((layers) =>
    GUIDES.flatMap((rearCords) =>
      (style === "ribbed" ? RIB_KINDS : ([undefined] as const)).map(
        (kind): [name: string, shade: ShadePlan] => {
          const making = { lift: { rearCords }, ...(kind === undefined ? {} : { ribs: { kind } }) };
          const [shade] = plan(jobWith({ shade: { style, ...layers, making } })).shades;
          if (shade === undefined) throw new Error("no shade");
          return [
            `${style} ${kind ?? ""} ${Object.keys(layers).length} ${layers.lining} ${rearCords}`,
            shade,
          ];
        },
      ),
    ),
  ),
);

describe("what is sewn, basted or caught along the columns comes after they are marked", () => {
  test.each(shades)("%s", (_name, { steps, grid }) => {
    const make = steps.filter(({ chapter }) => chapter === "make");
    const marked = make.findIndex(({ title }) => MARKS_COLUMNS.test(title));
    expect(grid.columns.length).toBeGreaterThan(1);
    expect(marked).toBeGreaterThanOrEqual(0);
    const early = make.slice(0, marked).filter(isAtColumns);
    expect(early.map(({ title }) => title)).toEqual([]);
    expect(make.slice(marked).filter(isAtColumns).length).toBeGreaterThan(0);
  });

  test("layers that are caught along the columns are among them", () => {
    const caught = shades.filter(([, { steps }]) => steps.some(({ id }) => id === "make-catch-layers"));
    expect(caught.length).toBeGreaterThan(STYLES.length);
  });
});

import { describe, expect, it } from "vitest";
import { LIFT_KINDS, STYLES } from "../src/job/index.ts";
import { plan, type ShadePlan } from "../src/plan/index.ts";
import { jobWith } from "./job-with.ts";

type ShadeInput = NonNullable<Parameters<typeof jobWith>[0]["shade"]>;

function shadeOf(shade: ShadeInput): ShadePlan {
  const [made] = plan(
    jobWith({ shade: { mount: "to-size", ...shade } }, { place: "gb", purpose: "own-home" }),
  ).shades;
  if (made === undefined) throw new Error("invalid job: empty");
  return made;
}

/** What a step is about, by its own words, and what has to stand beside it: our list, after agencies’ warnings. */
const HAZARDS: [what: string, said: RegExp, caution: RegExp][] = [
  ["rings and needles", /^Sew \d+ rings?\b/, /swallow.*needle.*keep children away/i],
  ["blades", /^Square the end/, /shears and rotary cutters.*children/i],
  ["irons", /\band press\b/, /iron/i],
  ["shot and weights", /\bshot\b|steel weight/i, /never lead.*swallow.*children/i],
  ["glue", /\bglue on every knot/i, /glue.*children/i],
  ["saws", /^Saw /, /clamp.*eye protection/i],
  ["staples", /^Staple /, /staple gun.*eye protection/i],
  ["drills and cables", /^(?:Fix the brackets|See what you fix into)/, /cables.*licensed.*local codes/i],
  ["a falling board", /^(?:Set the board|Screw the board up)/, /falling board.*ladder/i],
  ["springs", /tension the spring/i, /spring under tension/i],
  ["mains", /\b(?:motor|power supply)\b.*\b(?:battery|power supply|mains)\b/i, /licensed electrician/i],
  ["cords", /^(?:Cut and number the cords|Thread the lock|Trim the tails)/, /strangle/i],
];

const shades: [string, ShadeInput][] = [
  ...STYLES.map((style): [string, ShadeInput] => [style, { style }]),
  ...LIFT_KINDS.map((kind): [string, ShadeInput] => [kind, { making: { lift: { kind } } }]),
  ["bags of shot", { style: "austrian", making: { gather: { weight: "shot-bags" } } }],
  ["weights at the columns", { style: "relaxed", making: { relax: { weight: "at-columns" } } }],
  [
    "a shade that hangs",
    {
      existing: {
        tasks: ["add-rows", "add-columns"],
        strung: "cleat",
        rowsFromHemMm: [100, 600],
        columnsFromLeftMm: [50, 450, 850],
      },
    },
  ],
];

describe("what can hurt stands at the step where the hand is", () => {
  const found = new Set<string>();

  it.each(shades)("%s", (_, input) => {
    for (const { title, text, check = "", caution = "" } of shadeOf(input).steps) {
      for (const [what, said, asked] of HAZARDS) {
        if (![title, text, check].some((words) => said.test(words))) continue;
        found.add(what);
        expect(caution, `${what}: ${title}`).toMatch(asked);
      }
    }
  });

  it("each of them came up", () => {
    expect([...found].sort()).toEqual(HAZARDS.map(([what]) => what).sort());
  });

  it("weights are told of on the first sheet as well, with washing", () => {
    const told = (input: ShadeInput) => shadeOf(input).cautions.find(({ id }) => id === "weights")?.text;
    expect(told({ style: "austrian", making: { gather: { weight: "shot-bags" } } })).toMatch(/lead.*washed/);
    expect(told({ style: "flat" })).toBeUndefined();
  });
});

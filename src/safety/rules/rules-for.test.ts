import { expect, it } from "vitest";
import { PURPOSES } from "../../job/index.ts";
import { tagWords } from "../tag/tag-words.ts";
import { PLACE_RULES } from "./place-rules.ts";
import { rulesFor } from "./rules-for.ts";

const OWN =
  "This is our own rounding down of the rules of all places: not a legal limit, and not proven by anyone.";

it("whose rules are read is said, and what was not", () => {
  const readAs = (...given: Parameters<typeof rulesFor>) => rulesFor(...given).readAs;
  const caution = (why: string) => `Read: our own caution profile. ${why} ${OWN}`;
  expect(readAs(undefined, "gift")).toBe(
    caution("It was not said where the shade will hang, so no place’s rules were read."),
  );
  expect(readAs("ca", undefined)).toBe(
    caution("It was not said whom it is for, so no place’s rules were read."),
  );
  expect(readAs(undefined, undefined)).toBe(
    caution("It was not said where the shade will hang or whom it is for, so no place’s rules were read."),
  );
  expect(readAs("elsewhere", "gift")).toBe(caution("The rules of that place were not read."));
  const { whom } = PLACE_RULES.us;
  expect(readAs("us", "own-home")).toContain(
    "Read: the rules of the United States, for your own home, and our own caution profile beside them. ",
  );
  expect(readAs("ca", "for-sale")).toMatch(/^Read: the rules of Canada, for sale\. [A-Z]/);
  expect(readAs("us", "for-sale")).toContain(whom);
});

it("what the texts of a place leave open for a purpose is told after whom they bind, and nothing where they leave nothing", () => {
  for (const place of ["us", "ca", "eu", "gb", "au", "nz", "jp", "kr"] as const)
    for (const purpose of PURPOSES) {
      const { whom, unsettled } = PLACE_RULES[place];
      const open = unsettled?.[purpose];
      expect(rulesFor(place, purpose).readAs.endsWith(open === undefined ? whom : `${whom} ${open}`)).toBe(
        true,
      );
    }
});

it("a purpose that a place leaves out is told why, advice to everyone leaves none out", () => {
  const { active } = rulesFor("us", "own-home");
  const outside = (id: string) => active.find(({ rule }) => rule.id === id)?.outside;
  expect(outside("US-NOHANG")).toBe(PLACE_RULES.us.outside);
  expect(outside("GEN-CORDLESS")).toBe("");
  expect(rulesFor(undefined, undefined).active.find(({ rule }) => rule.id === "GEN-CORDLESS")?.outside).toBe(
    "",
  );
});

it("what a maker fills in on the tag is asked of the right line alone", () => {
  const asks = (place: "us" | "eu" | "au" | undefined) =>
    tagWords({ languages: ["en"], place, frontCords: false, rearCords: false })
      .filter(({ kind }) => kind === "maker")
      .map(({ text, asks: what }) => [text.split(/[ :,(]/)[0], what]);
  expect(asks(undefined)).toEqual([
    ["Model", "model"],
    ["Made", "made"],
    ["Maker", "maker"],
  ]);
  expect(asks("eu")).toEqual([
    ["Type", "model"],
    ["Maker", "maker"],
    ["Post", undefined],
  ]);
  expect(asks("au").slice(3)).toEqual([
    ["Installed", undefined],
    ["Address", undefined],
  ]);
});

import { describe, expect, it } from "vitest";
import { SOURCE_LINES } from "../../../test/safety/source-lines.ts";
import { verdictIn } from "../../../test/words.ts";
import { PLACES } from "../../job/index.ts";
import { childTag } from "./child-tag.ts";

const canada = childTag({ place: "ca", frontCords: true, rearCords: true });

describe("the tag for Canada (SOR/2019-97, ss. 9 to 15)", () => {
  it("is in English and French, with as much in each", () => {
    expect(canada.languages).toEqual(["en", "fr"]);
    const count = (language: string, kind: string) =>
      canada.lines.filter((line) => line.language === language && line.kind === kind).length;
    for (const kind of ["signal", "warning", "instruction", "maker"]) {
      expect(count("fr", kind), kind).toBe(count("en", kind));
    }
  });

  it("has its signal word in bold capitals of 5 mm and more, the rest of 2.5 mm and more", () => {
    for (const line of canada.lines) {
      expect(line.minHeightMm).toBe(line.kind === "signal" ? 5 : 2.5);
      expect(line.bold && line.capitals).toBe(line.kind === "signal");
      if (line.capitals) expect(line.text).toBe(line.text.toUpperCase());
    }
  });

  /** SOR/2019-97, s. 15, in the consolidation of 23 March 2021 on the site of the Department of Justice. */
  it("has the warning of s. 15 in full, in both languages, and marks it", () => {
    const read = SOURCE_LINES["CA-LBL"]?.map(({ text }) => text).join(" ") ?? "";
    const official = canada.lines.filter((line) => line.official);
    expect(official.map(({ language, kind }) => `${language} ${kind}`)).toEqual([
      "en signal",
      "en warning",
      "fr signal",
      "fr warning",
    ]);
    for (const { text } of official) expect(read).toContain(text);
  });

  it("does not refer to the law on the tag, and says beside it that the words are not the official text", () => {
    const law =
      /\b(?:act|regulations?|law|loi|r[èe]glements?|SOR|DORS|CCPSA|LCSPC|canad\w*|r[ée]glementa\w*)\b/i;
    for (const { text } of canada.lines) expect(text).not.toMatch(law);
    expect("The Regulations").toMatch(law);
    expect(canada.note).toContain("not the official text");
  });

  it("has room for model, date and maker", () => {
    const maker = canada.lines.filter(({ kind, language }) => kind === "maker" && language === "en");
    expect(maker.map(({ text }) => text.split(":")[0])).toEqual([
      "Model",
      "Made (year and month or week)",
      "Maker or importer",
    ]);
  });
});

describe("the tag elsewhere", () => {
  it("Australia asks for capitals of 5 mm and text of 1.5 mm (SLI 2010 No. 212)", () => {
    const { lines, heights } = childTag({ place: "au", frontCords: true, rearCords: true });
    expect(lines[0]).toMatchObject({ text: "WARNING", kind: "signal", minHeightMm: 5 });
    expect(lines[1]).toMatchObject({ minHeightMm: 1.5 });
    expect(heights.source).toBe("au-2010-regulations");
  });

  it("has the lines that a place asks for besides: installer, address, city, and that it stays", () => {
    const texts = (place: (typeof PLACES)[number], frontCords = true) =>
      childTag({ place, frontCords, rearCords: true })
        .lines.map(({ text }) => text)
        .join("\n");
    // 2014 standard of Australia, as its agency’s page and a seller’s warning tell it.
    for (const words of [
      "Installed by:",
      "telephone of the installer",
      "Do not remove this label",
      "220 mm",
      "1600 mm",
    ])
      expect(texts("au"), words).toContain(words);
    expect(texts("au", false)).not.toContain("220 mm");
    // Regulation (EU) 2023/988, article 9, as reported: it binds Northern Ireland too.
    for (const place of ["eu", "ie", "ni", "gb", "eea"] as const) {
      for (const words of ["Type, batch or serial no.:", "Post and web address:", "1.5 m"])
        expect(texts(place), `${place} ${words}`).toContain(words);
    }
    expect(texts("us")).toContain("city and state");
    expect(childTag({ place: "us", frontCords: true, rearCords: true }).note).toContain("was not read");
  });

  it("no place that was read gives less room than that, and none a tag without a warning", () => {
    for (const place of [undefined, ...PLACES]) {
      const { lines, note } = childTag({
        ...(place === undefined ? {} : { place }),
        frontCords: false,
        rearCords: true,
      });
      expect(lines[0]?.kind).toBe("signal");
      for (const { text, official, minHeightMm } of lines) {
        expect(verdictIn(text), text).toBeUndefined();
        expect(minHeightMm).toBeGreaterThanOrEqual(1.5);
        if (place !== "ca") expect(official).toBe(false);
      }
      expect(note).toMatch(/not the official text/i);
    }
  });

  it("speaks of devices for cords only where cords hang, of hidden cords only where there are some", () => {
    const texts = (frontCords: boolean, rearCords: boolean) =>
      childTag({ place: "gb", frontCords, rearCords })
        .lines.map(({ text }) => text)
        .join(" ");
    expect(texts(true, true)).toContain("devices for the cords");
    expect(texts(false, true)).not.toContain("devices for the cords");
    expect(texts(false, true)).toContain("cords at the back");
    expect(texts(false, false)).not.toContain("cords at the back");
  });
});

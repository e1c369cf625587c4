import { describe, expect, it } from "vitest";
import { type HandShade, handShade } from "../../test/hand-shade.ts";
import { verdictIn } from "../../test/words.ts";
import { PLACES, PURPOSES } from "../job/index.ts";
import { askPlace, planCautions, reviewShade } from "./index.ts";

const cautionsFor = (made: HandShade) => {
  const { resolved, size, grid, form, lift } = handShade(made);
  return planCautions({ shade: resolved, size, grid, form, lift });
};
const plain = (text: string) => text.replaceAll("\u00a0", " ");

describe("cautions of X1", () => {
  const cautions = cautionsFor({});
  const text = (id: string) => plain(cautions.find((caution) => caution.id === id)?.text ?? "");

  it("tell the shade's own numbers: X1's tail is 30 in lowered, 30 + travel 53.2 = 83.2 in raised", () => {
    // Top line 90 in above the floor, less 19 mm of board and 24 mm of lock: 88.31 in down to the lock’s underside.
    expect(text("cords-of-this-shade")).toBe(
      "5 lift cords hang 30 in below the lock with the shade lowered and 83 1⁄4 in with it raised. They end 58 1⁄4 in above the floor when it is lowered and 5 1⁄8 in above the floor when it is raised. Up the back they run through rings 7 5⁄8 in apart.",
    );
  });

  it("say that the height is not known, rather than nothing", () => {
    const { resolved, size, grid, form, lift } = handShade();
    const { topAboveFloorMm: _known, ...heightless } = size;
    const texts = planCautions({ shade: resolved, size: heightless, grid, form, lift }).map(
      ({ text }) => text,
    );
    expect(texts.join(" ")).toContain("is not known, since the sill’s height was not measured");
  });

  it("put the cleat at the higher of the two published heights, 1.6 m (ACCC guide, November 2014)", () => {
    expect(text("cleat")).toContain("63 in or more above the floor");
  });

  it("have one id each", () => {
    expect(new Set(cautions.map((caution) => caution.id)).size).toBe(cautions.length);
  });
});

describe("what is asked", () => {
  it("asks for place and purpose, with choices that set them", () => {
    const findings = askPlace({});
    const place = findings.find((finding) => finding.id === "safety.place-unknown");
    expect(place).toMatchObject({ severity: "unproven", path: "/place" });
    expect(place?.remedies.map((remedy) => remedy.patch)).toEqual(
      PLACES.map((value) => [{ op: "add", path: "/place", value }]),
    );
    const purpose = findings.find((finding) => finding.id === "safety.purpose-unknown");
    expect(purpose?.remedies.map((remedy) => remedy.patch)).toEqual(
      PURPOSES.map((value) => [{ op: "add", path: "/purpose", value }]),
    );
  });

  it("stops asking once it is told", () => {
    expect(askPlace({ place: "ca", purpose: "gift" })).toEqual([]);
    expect(askPlace({ place: "ca" }).map(({ id }) => id)).toEqual(["safety.purpose-unknown"]);
  });

  it("leaves what the rules say to the review where one was made", () => {
    const { resolved, ...made } = handShade({ job: { place: "ca", purpose: "gift" } });
    const { values: review, findings } = reviewShade({ shade: resolved, ...made });
    const cautions = planCautions({ shade: resolved, ...made, review });
    expect(findings.map((finding) => finding.id)).toContain("safety.free-hanging-cord");
    expect(cautions.find(({ id }) => id === "rules-of-the-place")?.text).toContain(review.line);
  });

  it("passes no verdict, wherever and for whomever the shade is", () => {
    for (const place of PLACES) {
      for (const purpose of PURPOSES) {
        for (const { text } of cautionsFor({ job: { place, purpose } }))
          expect(verdictIn(text), text).toBeUndefined();
      }
    }
  });
});

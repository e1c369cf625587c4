import { describe, expect, it } from "vitest";
import { type HandShade, handShade } from "../../test/hand-shade.ts";
import { verdictIn } from "../../test/words.ts";
import { WorkingBook } from "../figures/index.ts";
import { PLACES, PURPOSES } from "../job/index.ts";
import { askPlace, planCautions, reviewShade } from "./index.ts";

const cautionsFor = (shade: HandShade) => planCautions(handShade(shade));
const plain = (text: string) => text.replaceAll("\u00a0", " ");

describe("cautions of X1", () => {
  const { cautions } = cautionsFor({});
  const text = (id: string) => plain(cautions.find((caution) => caution.id === id)?.text ?? "");

  it("tell the shade's own numbers: X1's tail is 30 in lowered, 30 + travel 53.2 = 83.2 in raised", () => {
    expect(text("cords-of-this-shade")).toBe(
      "5 lift cords hang 30 in below the lock with the shade lowered and 83 1⁄4 in with it raised. They end 59 in above the floor when it is lowered and 5 3⁄4 in above the floor when it is raised. Up the back they run through rings 7 5⁄8 in apart.",
    );
  });

  it("say that the height is not known, rather than nothing", () => {
    const shade = handShade();
    const { tailEndAboveFloorLoweredMm, tailEndAboveFloorRaisedMm, ...lift } = shade.lift;
    expect([tailEndAboveFloorLoweredMm, tailEndAboveFloorRaisedMm]).not.toContain(undefined);
    const texts = planCautions({ ...shade, lift }).cautions.map((caution) => caution.text);
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
    const shade = handShade({ job: { place: "ca", purpose: "gift" } });
    const { review } = reviewShade(shade, new WorkingBook());
    const { cautions, findings } = planCautions({ ...shade, review });
    expect(findings.map((finding) => finding.id)).toEqual(["safety.free-hanging-cord"]);
    expect(cautions.find(({ id }) => id === "rules-of-the-place")?.text).toContain(review.line);
  });

  it("passes no verdict, wherever and for whomever the shade is", () => {
    for (const place of PLACES) {
      for (const purpose of PURPOSES) {
        const { cautions, findings } = cautionsFor({ job: { place, purpose } });
        for (const { text } of [...cautions, ...findings]) expect(verdictIn(text), text).toBeUndefined();
      }
    }
  });
});

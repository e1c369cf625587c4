import { describe, expect, it } from "vitest";
import { type Finding, SEVERITIES, withRemedies } from "../../src/figures/index.ts";
import { type Job, newJob, newWindow } from "../../src/job/index.ts";
import {
  answersOf,
  findingCards,
  isWithinFields,
  patched,
  plan,
  proveRemedies,
  RemedyTrial,
} from "../../src/plan/index.ts";

/** Windows of several heights, corded, to be sold in Canada. */
function cordedJob(heights: readonly number[], more: Partial<Job> = {}, sillAboveFloorMm = 800): Job {
  const job = newJob({ id: "row", name: "A row", system: "metric" });
  for (const [i, heightMm] of heights.entries()) {
    const window = newWindow({ id: `w${i}`, name: `Window ${i}`, widthMm: 900, heightMm, mount: "to-size" });
    job.rooms[0]?.windows.push({
      ...window,
      opening: { ...window.opening, sillAboveFloorMm },
      shade: { ...window.shade, making: { lift: { kind: "cord-lock", rearCords: "open" } } },
    });
  }
  return { ...job, place: "ca", purpose: "for-sale", ...more };
}

const allOf = (job: Job) => plan(job).shades.flatMap(({ findings }) => findings);
const cardOf = (findings: readonly Finding[], id: string) => {
  const card = findingCards(findings).find((one) => one.id === id);
  if (card === undefined) throw new Error(`invalid test: no card ${id}`);
  return card;
};

describe("remedies of a finding", () => {
  it("are made when someone reads them, those of a failed rule on cords too", () => {
    let made = 0;
    const patch = [{ op: "add" as const, path: "/place", value: "ca" }];
    const late: Finding = {
      ...{ id: "x.late", severity: "note", stage: "safety", text: "Late.", cite: { source: "geometry" } },
      get remedies() {
        made++;
        return [{ label: "One", patch }];
      },
    };
    const changed = withRemedies(late, (all) => all.map((one) => ({ ...one, label: "Two" })));
    expect(made).toBe(0);
    expect([changed.id, changed.text]).toEqual(["x.late", "Late."]);
    expect(made).toBe(0);
    expect(changed.remedies).toEqual([{ label: "Two", patch }]);
    expect(JSON.parse(JSON.stringify(changed)).remedies).toEqual([{ label: "Two", patch }]);
    expect(made).toBe(1);
    const [failed] = allOf(cordedJob([1200])).filter(({ id }) => id === "safety.ca-free");
    expect(Object.getOwnPropertyDescriptor(failed, "remedies")?.get).toBeTypeOf("function");
  });
});

describe("one card for one cause", () => {
  const job = cordedJob([1200, 1500, 1800]);
  const findings = allOf(job);
  const cards = findingCards(findings);

  it("holds every finding once, the gravest card first", () => {
    expect(cards.flatMap((card) => card.findings)).toHaveLength(findings.length);
    expect(new Set(cards.flatMap((card) => card.findings))).toEqual(new Set(findings));
    const weights = cards.map(({ severity }) => SEVERITIES.indexOf(severity));
    expect(weights).toEqual([...weights].sort((a, b) => a - b));
    expect(new Set(cards.map(({ id }) => id)).size).toBe(cards.length);
  });

  it("gathers all rules on the hanging cords of all shades, which one sentence answers", () => {
    const front = cardOf(findings, "safety.cords-front");
    expect(front.shadeIds).toEqual(["w0", "w1", "w2"]);
    const ids = new Set(front.findings.map(({ id }) => id));
    // SOR/2019-97 ss. 5, 7 and 8, and the agencies’ advice: one cause.
    for (const id of ["safety.ca-free", "safety.ca-join-l", "safety.ca-join-p", "safety.gen-cordless"]) {
      expect(ids, id).toContain(id);
    }
    expect(front.says).not.toMatch(/CA-|\d/);
    expect(cards[0]?.severity).toBe("stop");
  });

  it("findings without a cause of their own are one where their ids are", () => {
    const foothold = cardOf(findings, "safety.foothold-unknown");
    expect(foothold.findings).toHaveLength(3);
    expect(foothold.says).toBe(foothold.findings[0]?.text);
  });
});

describe("what answers a whole card", () => {
  const job = cordedJob([1200, 1500, 1800]);
  const proven = proveRemedies(job, plan(job));
  const found = proven.shades.flatMap(({ findings }) => findings);

  it("cures each of its findings on every shade, pressed once on the whole job", () => {
    const answered = findingCards(found).flatMap((card) =>
      answersOf(proven, card).map((remedy) => ({ card, remedy })),
    );
    expect(answered.some(({ card }) => card.findings.length > 3 && card.shadeIds.length === 3)).toBe(true);
    for (const { card, remedy } of answered) {
      const after = plan(patched(job, remedy.patch)).shades.flatMap(({ findings }) => findings);
      for (const finding of card.findings) {
        const same = (all: readonly Finding[]) =>
          all.filter(({ id, shadeId }) => id === finding.id && shadeId === finding.shadeId);
        const cases = (all: readonly Finding[]) => same(all).reduce((sum, one) => sum + (one.cases ?? 1), 0);
        const said = `${card.id} ${finding.id}: ${remedy.label}`;
        if (finding.isChoice) continue;
        expect(cases(after), said).toBeLessThan(cases(found));
      }
    }
  });

  it("of hanging cords is a lift without them, on all of the shades", () => {
    const [answer] = answersOf(proven, cardOf(found, "safety.cords-front"));
    expect(answer?.label).toContain("spring");
    for (const index of [0, 1, 2])
      expect(JSON.stringify(answer?.patch)).toContain(`/rooms/0/windows/${index}/shade`);
    const after = plan(patched(job, answer?.patch ?? []));
    for (const { lift } of after.shades) expect(lift.kind).toBe("spring");
  });

  it("one shade’s own cards have answers that change that shade alone", () => {
    const [shade] = proven.shades;
    const card = cardOf(shade?.findings ?? [], "safety.cords-front");
    const [answer] = answersOf(proven, card);
    expect(answer?.patch.every(({ path }) => path.startsWith("/rooms/0/windows/0/"))).toBe(true);
  });

  it("is tried and kept once, where one shade of several has the cause", () => {
    const two = cordedJob([1200, 1500]);
    const [, other] = two.rooms[0]?.windows ?? [];
    if (other?.shade !== undefined) other.shade.making = { lift: { kind: "spring", rearCords: "enclosed" } };
    const { answers = [] } = proveRemedies(two, plan(two));
    const keys = answers.map(({ causeId, shadeIds }) => `${causeId} ${shadeIds.join(" ")}`);
    expect(keys).toContain("safety.cords-front w0");
    expect(new Set(keys).size).toBe(keys.length);
  });

  it("is not offered where it does not cure every one of them", () => {
    // A shorter tail answers one rule on cords in the European Union, and not that there are cords at all.
    const eu = cordedJob([1200], { place: "eu" }, 1700);
    const trial = new RemedyTrial(eu);
    const card = cardOf(allOf(eu), "safety.cords-front");
    const proposed = card.findings.flatMap(({ remedies }) => remedies.map(({ label }) => label));
    expect(proposed.some((label) => label.startsWith("Cut the tail"))).toBe(true);
    const answers = trial.answersTo(card, isWithinFields).map(({ label }) => label);
    expect(answers.length).toBeGreaterThan(0);
    expect(answers.some((label) => label.startsWith("Cut the tail"))).toBe(false);
  });

  it("is not offered where one of its shades has no such remedy", () => {
    const trial = new RemedyTrial(job);
    const card = cardOf(found, "safety.cords-front");
    const without = {
      ...card,
      findings: card.findings.map((one) => (one.shadeId === "w1" ? { ...one, remedies: [] } : one)),
    };
    expect(trial.answersTo(without, isWithinFields)).toEqual([]);
  });

  it("says a number only where it is the same on every shade", () => {
    const rows = findingCards(found).find(({ id }) => id === "safety.cords-back");
    for (const { label } of rows === undefined ? [] : answersOf(proven, rows))
      if (label.startsWith("Set the rows")) expect(label).toBe("Set the rows closer");
  });
});

import { expect } from "vitest";
import type { Finding } from "../src/figures/index.ts";
import { expectWholeFinding } from "./whole-findings.ts";

/** Texts hold no-break spaces between number and unit. */
export const plain = (text = "") => text.replaceAll("\u00a0", " ");

/** A finding of a lift with plain spaces, once it is seen to be whole and each of its remedies to set settings that there are. */
export function wholeSaid(finding: Finding): Finding {
  const { id, figures = [], remedies, shadeId } = finding;
  expect(shadeId, id).toBe("window-1");
  for (const figure of figures)
    expect(figure, id).toMatch(/^(?:lift|rig|shape|measure|cloth)\.[a-z][a-z0-9-]+$/);
  // What no one setting would mend names none.
  const path = finding.path ?? "/rooms/0/windows/0/shade";
  expectWholeFinding({ ...finding, path }, ["lift", "rig"], new Set(figures));
  for (const { label, patch } of remedies) {
    expect(label, id).toMatch(/^\p{Lu}.{5}/u);
    expect(patch.length, label).toBeGreaterThan(0);
    for (const { path } of patch)
      expect(path, label).toMatch(/^\/rooms\/0\/windows\/0\/shade\/making\/[a-z]+\/[a-zA-Z]+$/);
  }
  return {
    ...finding,
    text: plain(finding.text),
    remedies: remedies.map((remedy) => ({ ...remedy, label: plain(remedy.label) })),
  };
}

/** What is to be said of findings, each with the last word of its path and what its remedies set. */
export function saidOf(findings: readonly Finding[]) {
  return findings.map(wholeSaid).map(({ id, stage, severity, path, text, figures, remedies }) => ({
    ...{ id, stage, severity, setting: path?.split("/making/").at(-1), figures, text },
    remedies: remedies.map(({ label, patch }) => {
      const last = patch.at(-1);
      return [
        label,
        last?.path.split("/making/").at(-1),
        last !== undefined && "value" in last ? last.value : undefined,
      ];
    }),
  }));
}

import type { Finding } from "../figures/index.ts";
import type { Plan } from "../plan/index.ts";
import { citeText } from "../sources/index.ts";
import { asciiText, type Cell, type Table } from "./table.ts";

/** Every finding of the job and of its shades, with what would answer it. */
export function findingsList(plan: Plan): Table {
  const row = (room: string, window: string, finding: Finding): Cell[] => [
    room,
    window,
    finding.severity,
    finding.stage,
    finding.id,
    asciiText(finding.text),
    finding.remedies.map((remedy) => asciiText(remedy.label)).join("; "),
    citeText(finding.cite),
    finding.path ?? "",
  ];
  return {
    name: "findings-list",
    header: ["room", "window", "severity", "stage", "finding", "text", "remedies", "source", "field"],
    rows: [
      ...plan.findings.map((finding) => row("", "", finding)),
      ...plan.shades.flatMap((shade) =>
        shade.findings.map((finding) => row(shade.roomName, shade.windowName, finding)),
      ),
    ],
  };
}

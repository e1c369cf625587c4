import type { Finding } from "../figures/index.ts";
import { citeText } from "../sources/index.ts";
import type { PlanList } from "./plan-list.ts";
import { asciiText, type Cell } from "./table.ts";

/** Every finding of the job and of its shades, with what would answer it. */
export const FINDINGS_LIST: PlanList = {
  name: "findings-list",
  header: ["room", "window", "severity", "stage", "finding", "text", "remedies", "source", "field"],
  rowsOfJob: ({ findings }) => findings.map((finding) => row("", "", finding)),
  rowsOfShade: ({ roomName, windowName, findings }) =>
    findings.map((finding) => row(roomName, windowName, finding)),
};

function row(room: string, window: string, finding: Finding): Cell[] {
  return [
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
}

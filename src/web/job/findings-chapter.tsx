import { Link } from "wouter";
import { type Finding, SEVERITIES, SEVERITY_WORDS } from "../../figures/index.ts";
import { FindingNote } from "../findings/finding-list.tsx";
import { Chapter } from "../frame/chapter.tsx";
import { useJob } from "../state/fields.ts";
import type { JobSummary } from "../state/job-summary.ts";

/** Shades whose findings are written out; the rest are named, and say more on their own page. */
const MOST_SHADES = 40;

/** Everything that was found, gathered; each stands on its shade's page as well. */
export function FindingsChapter({ summary }: { summary: JobSummary | undefined }) {
  const job = useJob();
  const findings = summary?.findings ?? [];
  const ofJob = findings.filter((finding) => finding.shadeId === undefined);
  const windows = job.rooms.flatMap((room) => room.windows.map((window) => ({ room, window })));
  const byShade = new Map<string, Finding[]>();
  for (const finding of findings) {
    if (finding.shadeId === undefined) continue;
    byShade.set(finding.shadeId, [...(byShade.get(finding.shadeId) ?? []), finding]);
  }
  const troubled = windows.filter(({ window }) => byShade.has(window.id));
  return (
    <Chapter id="findings" sentence={countSentence(findings, summary === undefined)}>
      {ofJob.length > 0 ? (
        <ul>
          {ofJob.map((finding) => (
            <FindingNote key={`${finding.id} ${finding.path ?? ""}`} finding={finding} />
          ))}
        </ul>
      ) : null}
      {troubled.slice(0, MOST_SHADES).map(({ room, window }) => (
        <div key={window.id}>
          <h3 className="finding-window">
            <Link href={`/job/${job.id}/${window.id}`}>
              {room.name}, {window.name}
            </Link>
          </h3>
          <ul className="findings">
            {byShade.get(window.id)?.map((finding) => (
              <FindingNote key={`${finding.id} ${finding.path ?? ""}`} finding={finding} />
            ))}
          </ul>
        </div>
      ))}
      {troubled.length > MOST_SHADES ? (
        <p className="quiet">And {troubled.length - MOST_SHADES} more windows; see their own pages.</p>
      ) : null}
    </Chapter>
  );
}

function countSentence(findings: readonly Finding[], waiting: boolean): string {
  if (waiting) return "Being gathered.";
  const counts = SEVERITIES.flatMap((severity) => {
    const count = findings.filter((finding) => finding.severity === severity).length;
    return count === 0 ? [] : `${count} ${SEVERITY_WORDS[severity].toLowerCase()}`;
  });
  return counts.length === 0 ? "Nothing was found." : `${counts.join(", ")}.`;
}

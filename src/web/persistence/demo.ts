import type { Job } from "../../job/index.ts";

/** Id of the demonstration, which a link may lead to before the shelf was ever looked at. */
export const DEMO_ID = "lantern-row";

/** The demonstration as it was at first. */
export async function readDemo(): Promise<Job> {
  const [{ default: document }, { openJob }] = await Promise.all([
    import("../../../examples/lantern-row.json"),
    import("../state/job-door.ts"),
  ]);
  const demo = openJob(document);
  if (!demo.ok) throw new Error(`invalid demonstration: ${demo.issues[0]?.field}`);
  return demo.job;
}

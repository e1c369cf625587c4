import { saveJobFile } from "../persistence/job-file.ts";
import { useJob } from "../state/fields.ts";
import { GetWorkbook } from "../workbook/get-workbook.tsx";

/** What leaves the planner: the workbook to work by, and the job as a file. */
export function TakeAway() {
  const job = useJob();
  return (
    <aside className="take-away screen-only" aria-labelledby="take-away-title">
      <h2 id="take-away-title">Take it with you</h2>
      <p className="quiet small">
        The workbook has everything to cut, mark, sew, rig and hang by, with full-size marking strips to
        print.
      </p>
      <GetWorkbook />
      <hr className="thread" />
      <p className="quiet small">The job file opens in Shadewright on any device.</p>
      <p>
        <button type="button" className="button" onClick={() => void saveJobFile(job)}>
          Save the job as a file
        </button>
      </p>
    </aside>
  );
}

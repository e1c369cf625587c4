import { Chapter } from "../frame/chapter.tsx";
import { saveJobFile } from "../persistence/job-file.ts";
import { ShareLink } from "../share/share-link.tsx";
import { useJob } from "../state/fields.ts";
import { GetWorkbook } from "../workbook/get-workbook.tsx";

/** What leaves the planner: the workbook to work by, and the job as a file. */
export function PrintChapter() {
  const job = useJob();
  return (
    <Chapter
      id="print"
      sentence="The workbook to cut, mark, sew, rig and hang by, with full-size strips; and the job as a file for any device."
    >
      <GetWorkbook />
      <p>
        <button type="button" className="button screen-only" onClick={() => void saveJobFile(job)}>
          Save the job as a file
        </button>
      </p>
      <ShareLink />
    </Chapter>
  );
}

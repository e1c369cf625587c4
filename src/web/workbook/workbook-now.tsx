import { usePreferences } from "../state/preferences.ts";
import { usePlanner } from "../state/store.ts";
import { makeAndDownload, stopMaking, useMaking } from "./workbook-maker.ts";

/** The workbook at one press from any section, with the paper and the sets that were chosen last. */
export function WorkbookNow({ shade }: { shade?: { id: string; name: string } }) {
  const making = useMaking();
  const paper = usePreferences((preferences) => preferences.paper);
  const sets = usePreferences((preferences) => preferences.sets);
  const make = () => {
    const { job } = usePlanner.getState();
    if (job) void makeAndDownload(job, paper, sets, shade);
  };
  return (
    <div className="workbook-now">
      {making.state === "making" ? (
        <button type="button" className="button" onClick={stopMaking}>
          Stop the workbook
        </button>
      ) : (
        <button type="button" className="button" disabled={sets.length === 0} onClick={make}>
          Workbook (PDF)
        </button>
      )}
      <p role="status" className="small">
        {making.state === "making" ? `${making.pages} pages set` : null}
        {making.state === "done" ? "It is in your downloads." : null}
        {making.state === "failed" ? `It was not made: ${making.reason}.` : null}
      </p>
    </div>
  );
}

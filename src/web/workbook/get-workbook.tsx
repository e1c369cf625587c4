import { useState } from "react";
import { Segments } from "../inputs/segments.tsx";
import { useJob } from "../state/fields.ts";
import { type PaperChoice, prefer, usePreferences } from "../state/preferences.ts";
import { PrintFor } from "./print-for.tsx";
import { PrintPanel } from "./print-panel.tsx";
import { makeAndDownload, stopMaking, useMaking } from "./workbook-maker.ts";
import "./get-workbook.css";

const PAPERS: Record<PaperChoice, string> = { letter: "US Letter", a4: "A4" };

/** The workbook as PDF: of one shade, or of the whole job. */
export function GetWorkbook({ shade }: { shade?: { id: string; name: string } }) {
  const job = useJob();
  const paper = usePreferences((preferences) => preferences.paper);
  const sets = usePreferences((preferences) => preferences.sets);
  const making = useMaking();
  const [open, setOpen] = useState(false);
  return (
    <div className="get-workbook">
      <div className="get-workbook-row">
        <Segments
          label="Paper"
          options={PAPERS}
          value={paper}
          onChange={(chosen) => prefer({ paper: chosen })}
        />
        <PrintFor />
        {making.state === "making" ? (
          <button type="button" className="button" onClick={stopMaking}>
            Stop
          </button>
        ) : (
          <button
            type="button"
            className="button button-main"
            disabled={sets.length === 0}
            onClick={() => void makeAndDownload(job, paper, sets, shade)}
          >
            {shade === undefined ? "Download the workbook" : "Download this shade’s workbook"}
          </button>
        )}
      </div>
      <details className="more-settings" onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>What to print</summary>
        {open ? <PrintPanel {...(shade === undefined ? {} : { shadeId: shade.id })} /> : null}
      </details>
      <div role="status" className="get-workbook-state">
        {making.state === "making" ? (
          <>
            <progress value={making.done} max={making.total} aria-label="Setting the workbook" />
            <span>
              {making.pages} pages set, sheaf {making.done} of {making.total}
            </span>
          </>
        ) : null}
        {making.state === "done" ? (
          <span>
            {making.name}, {making.pages} pages, is in your downloads.
          </span>
        ) : null}
      </div>
      {making.state === "failed" ? (
        <p className="field-error" role="alert">
          The workbook was not made: {making.reason}. Nothing of the job is lost.
        </p>
      ) : null}
    </div>
  );
}

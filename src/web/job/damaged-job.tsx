import { BackToShelf } from "../frame/notices.tsx";
import { Page } from "../frame/page.tsx";
import { TopBar } from "../frame/top-bar.tsx";
import { download } from "../persistence/job-file.ts";
import { damagedJob } from "../persistence/session.ts";

/** A job on the shelf that this release cannot read: it is kept as it is, and can be taken away as a file. */
export function DamagedJob() {
  const damaged = damagedJob();
  return (
    <>
      <TopBar />
      <Page className="page page-narrow" title="A job that cannot be read">
        <h1>This job cannot be read</h1>
        <p>
          It stays on the shelf as it is. A newer Shadewright may open it; you can also keep it as a file.
        </p>
        <ul>
          {damaged?.issues.map((issue) => (
            <li key={`${issue.field} ${issue.wanted}`}>
              <b>{issue.field}</b> is {issue.given}; wanted: {issue.wanted}.
            </li>
          ))}
        </ul>
        <p className="page-actions">
          <button
            type="button"
            className="button"
            onClick={() =>
              download(
                new Blob([JSON.stringify(damaged?.stored, null, 2)], { type: "application/json" }),
                "job-as-found.json",
              )
            }
          >
            Keep it as a file
          </button>
          <BackToShelf />
        </p>
      </Page>
    </>
  );
}

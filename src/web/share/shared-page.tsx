import { useEffect, useState } from "react";
import { Link } from "wouter";
import { jobText, type OpenedJob } from "../../job/index.ts";
import { counted } from "../../words/index.ts";
import { importFile } from "../frame/importing.ts";
import { Page } from "../frame/page.tsx";
import { TopBar } from "../frame/top-bar.tsx";
import { fileNameOf, JOB_FILE_ENDING } from "../persistence/job-file.ts";
import { unpackJob } from "./packed-job.ts";

/** A job that came in a link: it is looked at before it goes onto the shelf. */
export function SharedPage({ packed }: { packed: string }) {
  const [opened, setOpened] = useState<OpenedJob>();
  useEffect(() => {
    let isHere = true;
    void unpackJob(packed).then((found) => {
      if (isHere) setOpened(found);
    });
    return () => {
      isHere = false;
    };
  }, [packed]);
  return (
    <>
      <TopBar />
      <Page className="page page-narrow" title="A job in a link" busy={opened === undefined}>
        {opened === undefined ? <p className="quiet">Reading the link</p> : <Shared opened={opened} />}
      </Page>
    </>
  );
}

function Shared({ opened }: { opened: OpenedJob }) {
  if (!opened.ok) {
    return (
      <>
        <h1>This link cannot be read</h1>
        {opened.issues.map(({ field, given, wanted }) => (
          <p key={`${field} ${wanted}`}>
            <b>{field}</b> is {given}; wanted: {wanted}.
          </p>
        ))}
        <p>Ask for it once more, or for the job as a file.</p>
        <p className="page-actions">
          <Link href="/" className="button button-main">
            To the shelf
          </Link>
        </p>
      </>
    );
  }
  const { job } = opened;
  const windows = job.rooms.flatMap((room) => room.windows);
  const put = () =>
    void importFile(
      new File([jobText(job)], fileNameOf(job.name, JOB_FILE_ENDING), { type: "application/json" }),
    );
  return (
    <>
      <h1>{job.name}</h1>
      <p>
        Somebody passed on this job: {counted(windows.length, "window")} in{" "}
        {counted(job.rooms.length, "room")}. Nothing on your shelf is changed by it.
      </p>
      <p className="page-actions">
        <button type="button" className="button button-main" onClick={put}>
          Put it on the shelf
        </button>
        <Link href="/" className="button">
          Leave it
        </Link>
      </p>
    </>
  );
}

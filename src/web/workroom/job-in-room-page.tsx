import { useEffect } from "react";
import { Link } from "wouter";
import { may } from "../../workroom/protocol/index.ts";
import { BackToShelf } from "../frame/notices.tsx";
import { Page } from "../frame/page.tsx";
import { TopBar } from "../frame/top-bar.tsx";
import { closeSession, openSession } from "../persistence/session.ts";
import { useJob } from "../state/fields.ts";
import { usePlanner } from "../state/store.ts";
import { ClientLinks } from "./client-links.tsx";
import { Conflicts } from "./conflicts.tsx";
import { JobHistory } from "./job-history.tsx";
import { JobWork } from "./job-work.tsx";
import { Labels } from "./labels.tsx";
import { Papers } from "./papers.tsx";
import { useRoom } from "./room-state.ts";
import "./workroom.css";

/** All that the workroom knows of one job beside the job itself. */
export function JobInRoomPage({ jobId }: { jobId: string }) {
  useEffect(() => {
    void openSession(jobId);
  }, [jobId]);
  useEffect(() => () => void closeSession(), []);
  const openId = usePlanner((planner) => planner.job?.id);
  const access = usePlanner((planner) => planner.access);
  const isShared = usePlanner((planner) => planner.room !== undefined);
  if (openId === jobId && isShared) return <Inside />;
  const isGone = access === "missing" || access === "damaged" || openId === jobId;
  return (
    <>
      <TopBar />
      <Page className="page page-narrow" title="Job in the workroom" busy={!isGone}>
        <h1>{isGone ? "This job is not in the workroom" : "Opening"}</h1>
        {isGone ? <BackToShelf /> : null}
      </Page>
    </>
  );
}

function Inside() {
  const job = useJob();
  const me = useRoom((room) => room.me);
  const role = me?.state === "signed-in" ? me.person.role : "viewer";
  return (
    <>
      <TopBar withJob>
        <Link href={`/job/${job.id}`}>{job.name}</Link>
        <span aria-current="page">Workroom</span>
      </TopBar>
      <Page className="page room-page" title={`${job.name}: workroom`}>
        <h1>{job.name}</h1>
        <Conflicts />
        <JobWork mayChange={may(role, "change-work")} />
        <JobHistory mayRestore={may(role, "change-jobs") && role !== "fitter"} />
        {may(role, "change-work") ? <Labels /> : null}
        {may(role, "ask-for-papers") ? <Papers jobId={job.id} /> : null}
        {may(role, "offer") ? <ClientLinks jobId={job.id} /> : null}
      </Page>
    </>
  );
}

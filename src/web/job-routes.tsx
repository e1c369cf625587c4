import { useEffect, useState } from "react";
import { useLocation } from "wouter";
import { SHOP_ID } from "../workroom/protocol/index.ts";
import { BenchPage } from "./bench/bench-page.tsx";
import { BackToShelf } from "./frame/notices.tsx";
import { Page } from "./frame/page.tsx";
import { TopBar } from "./frame/top-bar.tsx";
import { DamagedJob } from "./job/damaged-job.tsx";
import { JobPage } from "./job/job-page.tsx";
import type { BinnedJob } from "./persistence/database.ts";
import { listBin, putBack } from "./persistence/job-shelf.ts";
import { newId } from "./persistence/new-id.ts";
import { closeSession, openSession } from "./persistence/session.ts";
import { tellTabs } from "./persistence/tab-talk.ts";
import { ShadePage } from "./shade/shade-page.tsx";
import { usePlanner } from "./state/store.ts";
import { ShopPage } from "./workroom/shop-page.tsx";

/** The screens of one job. The job stays open in this tab while its address does. */
export function JobRoutes({ jobId }: { jobId: string }) {
  useEffect(() => {
    void openSession(jobId);
  }, [jobId]);
  useEffect(() => () => void closeSession(), []);
  const access = usePlanner((planner) => planner.access);
  const openId = usePlanner((planner) => planner.job?.id);
  const isShop = usePlanner(({ job, room }) => job?.id === SHOP_ID && room !== undefined);
  const [location] = useLocation();
  if (access === "missing") return <MissingJob jobId={jobId} />;
  if (access === "damaged") return <DamagedJob />;
  if (access === "unreadable") return <UnreadableShelf jobId={jobId} />;
  if (openId !== jobId) return <Opening />;
  const [windowId, mode] = location.split("/").slice(3);
  if (isShop) return <ShopPage />;
  if (windowId === undefined || windowId === "") return <JobPage />;
  const id = decodeURIComponent(windowId);
  return mode === "bench" ? <BenchPage windowId={id} /> : <ShadePage windowId={id} />;
}

function Opening() {
  return (
    <>
      <TopBar />
      <Page className="page" title="Opening" busy>
        <p className="quiet">Taking the job from the shelf</p>
      </Page>
    </>
  );
}

/** The browser does not give the shelf out, or a newer release has it. */
function UnreadableShelf({ jobId }: { jobId: string }) {
  return (
    <>
      <TopBar />
      <Page className="page page-narrow" title="The shelf cannot be read">
        <h1>The shelf cannot be read</h1>
        <p>The browser does not give it out at present. Nothing on it was changed.</p>
        <p className="page-actions">
          <button
            type="button"
            className="button"
            onClick={async () => {
              await closeSession();
              await openSession(jobId);
            }}
          >
            Try again
          </button>
          <BackToShelf />
        </p>
      </Page>
    </>
  );
}

/** Says where the job is: in the bin, where it can be put back, or not here. */
function MissingJob({ jobId }: { jobId: string }) {
  const [binned, setBinned] = useState<BinnedJob>();
  useEffect(() => {
    listBin()
      .then((bin) => setBinned(bin.find(({ stored }) => stored.id === jobId)))
      .catch(() => {});
  }, [jobId]);
  return (
    <>
      <TopBar />
      <Page className="page page-narrow" title="Not on the shelf">
        <h1>This job is not on the shelf</h1>
        <p>
          {binned === undefined
            ? "It may have been deleted, or it stands on another device. A job file opens it anywhere."
            : "It was deleted and waits in the bin."}
        </p>
        <p className="page-actions">
          {binned === undefined ? null : (
            <button
              type="button"
              className="button"
              onClick={async () => {
                // Another tab may have put a job there since.
                const id = await putBack(binned.binId, newId("job"));
                tellTabs({ kind: "shelf" });
                await closeSession();
                if (id !== undefined && id !== jobId) location.hash = `/job/${id}`;
                else await openSession(jobId);
              }}
            >
              Put it back
            </button>
          )}
          <BackToShelf />
        </p>
      </Page>
    </>
  );
}

import { lazy, Suspense } from "react";
import { Route, Router, Switch } from "wouter";
import { useHashLocation } from "wouter/use-hash-location";
import { DropFile } from "./frame/drop-file.tsx";
import { KeepJob } from "./frame/keep-job.tsx";
import { Keys } from "./frame/keys.tsx";
import { LeavingGuard } from "./frame/leaving-guard.tsx";
import { NotFound } from "./frame/not-found.tsx";
import { Said } from "./frame/said.tsx";
import { ScrollPositions } from "./frame/scroll-positions.tsx";
import { Shelf } from "./shelf/shelf.tsx";
import { useEnglish } from "./state/english.ts";

// Everything beyond the shelf comes when it is wanted; the shelf fetches it ahead once it stands.
const JobRoutes = lazy(() => import("./job-routes.tsx").then(({ JobRoutes }) => ({ default: JobRoutes })));

const AskPage = lazy(() => import("./ask/ask-page.tsx").then(({ AskPage }) => ({ default: AskPage })));

const SharedPage = lazy(() =>
  import("./share/shared-page.tsx").then(({ SharedPage }) => ({ default: SharedPage })),
);

const PartsPage = lazy(() =>
  import("./parts/parts-page.tsx").then(({ PartsPage }) => ({ default: PartsPage })),
);

const Workroom = lazy(() =>
  import("./workroom/workroom-routes.tsx").then(({ WorkroomRoutes }) => ({ default: WorkroomRoutes })),
);

/** Its own pages, and those to which its links and labels lead. */
const WORKROOM = /^\/(?:workroom|join|client|l)(?:\/|$)/;

export function App() {
  useEnglish();
  return (
    <Router hook={useHashLocation}>
      <KeepJob>
        <DropFile>
          <Switch>
            <Route path="/">
              <Shelf />
            </Route>
            <Route path="/ask">
              <Suspense fallback={null}>
                <AskPage />
              </Suspense>
            </Route>
            <Route path="/shared/:packed">
              {({ packed }) => (
                <Suspense fallback={null}>
                  <SharedPage packed={packed} />
                </Suspense>
              )}
            </Route>
            <Route path="/parts">
              <Suspense fallback={null}>
                <PartsPage />
              </Suspense>
            </Route>
            <Route path={WORKROOM}>
              <Suspense fallback={null}>
                <Workroom />
              </Suspense>
            </Route>
            <Route path="/job/:jobId/*?">
              {({ jobId }) => (
                <Suspense fallback={null}>
                  <JobRoutes jobId={jobId} />
                </Suspense>
              )}
            </Route>
            <Route>
              <NotFound />
            </Route>
          </Switch>
        </DropFile>
      </KeepJob>
      <Keys />
      <LeavingGuard />
      <Said />
      <ScrollPositions />
    </Router>
  );
}

import { Route, Switch } from "wouter";
import { OfferedPage } from "./client-page.tsx";
import { JobInRoomPage } from "./job-in-room-page.tsx";
import { JoinPage } from "./join-page.tsx";
import { LabelPage } from "./label-page.tsx";
import { WorkroomPage } from "./workroom-page.tsx";

/** The screens of the workroom, and the two that come by a link. */
export function WorkroomRoutes() {
  return (
    <Switch>
      <Route path="/join/:token">{({ token }) => <JoinPage key={token} token={token} />}</Route>
      <Route path="/client/:token">{({ token }) => <OfferedPage key={token} token={token} />}</Route>
      <Route path="/l/:code">{({ code }) => <LabelPage key={code} typed={code} />}</Route>
      <Route path="/workroom/job/:jobId">{({ jobId }) => <JobInRoomPage key={jobId} jobId={jobId} />}</Route>
      <Route>
        <WorkroomPage />
      </Route>
    </Switch>
  );
}

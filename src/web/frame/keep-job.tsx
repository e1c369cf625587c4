import { Component, type ErrorInfo, type ReactNode } from "react";
import type { Job } from "../../job/index.ts";
import { saveJobFile } from "../persistence/job-file.ts";
import { usePlanner } from "../state/store.ts";

interface Props {
  children: ReactNode;
}

interface State {
  failed?: string;
  /** As it was: the screen that failed lets it go. */
  job?: Job;
}

/** Where a screen fails the job is kept, and offered as a file. */
export class KeepJob extends Component<Props, State> {
  override state: State = {};

  static getDerivedStateFromError(error: unknown): State {
    return { failed: error instanceof Error ? error.message : String(error) };
  }

  override componentDidCatch(error: unknown, info: ErrorInfo): void {
    console.error(error, info.componentStack);
    const { job } = usePlanner.getState();
    if (job) this.setState({ job });
  }

  override render(): ReactNode {
    if (this.state.failed === undefined) return this.props.children;
    const { job } = this.state;
    return (
      <main className="page page-narrow" id="main">
        <h1>This page could not be drawn</h1>
        <p>
          The fault is ours. Your job is kept{job ? "; save it as a file as well if you like" : ""}. What went
          wrong: {this.state.failed}
        </p>
        <p className="page-actions">
          <button
            type="button"
            className="button button-main"
            onClick={() => this.setState({ failed: undefined, job: undefined })}
          >
            Try again
          </button>
          {job ? (
            <button type="button" className="button" onClick={() => void saveJobFile(job)}>
              Save the job as a file
            </button>
          ) : null}
          <button
            type="button"
            className="button"
            onClick={() => {
              location.hash = "/";
              this.setState({ failed: undefined, job: undefined });
            }}
          >
            To the shelf
          </button>
        </p>
      </main>
    );
  }
}

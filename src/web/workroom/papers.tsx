import { useEffect, useState } from "react";
import { ASKED_PAPER_KINDS, type AskedPaper, ROUTES } from "../../workroom/protocol/index.ts";
import { newUuid } from "../persistence/new-id.ts";
import { askServer } from "./ask-server.ts";
import { Trouble } from "./trouble.tsx";
import { useDeed } from "./use-deed.ts";

const moment = new Intl.DateTimeFormat(undefined, { dateStyle: "medium", timeStyle: "short" });
/** How often it is asked whether a paper is ready, ms. */
const ASK_EVERY_MS = 2000;
const KIND_WORDS: Record<AskedPaper["kind"], string> = {
  workbook: "Workbook",
  pictures: "Pictures for the client",
  cutting: "Cutting plan",
};
const STATE_WORDS = {
  waiting: "waits its turn",
  "in-hand": "being made",
  done: "ready",
  failed: "failed",
} as const;

/** Workbooks, pictures and cutting plans that the server makes while the page is elsewhere. */
export function Papers({ jobId }: { jobId: string }) {
  const [papers, setPapers] = useState<AskedPaper[]>([]);
  const { isBusy, trouble, run } = useDeed();
  const params = { job: jobId };
  const read = async () =>
    setPapers((await askServer<{ papers: AskedPaper[] }>("papers", { params })).papers);
  // biome-ignore lint/correctness/useExhaustiveDependencies: read once as the page comes
  useEffect(() => void run(read), [jobId]);
  const isAwaited = papers.some(({ state }) => state === "waiting" || state === "in-hand");
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked again while something is awaited
  useEffect(() => {
    if (!isAwaited) return;
    const timer = setInterval(() => void read().catch(() => {}), ASK_EVERY_MS);
    return () => clearInterval(timer);
  }, [isAwaited]);
  const ask = (kind: AskedPaper["kind"]) =>
    void run(async () => {
      await askServer("askForPaper", { params, body: { id: newUuid(), kind } });
      await read();
    });
  return (
    <section aria-labelledby="papers-title" className="room-section">
      <h2 id="papers-title">Papers</h2>
      <p className="quiet">The server makes them; this page need not stay open.</p>
      <Trouble words={trouble} />
      <p className="page-actions">
        {ASKED_PAPER_KINDS.map((kind) => (
          <button
            key={kind}
            type="button"
            className="button button-small"
            disabled={isBusy}
            onClick={() => ask(kind)}
          >
            Make the {KIND_WORDS[kind].toLowerCase()}
          </button>
        ))}
      </p>
      <ul className="room-list" aria-label="Papers asked for">
        {papers.map(({ id, kind, state, askedAt, why }) => (
          <li key={id}>
            <span>
              {KIND_WORDS[kind]}
              <span className="quiet small">
                {" · "}
                {moment.format(new Date(askedAt))} · <span role="status">{STATE_WORDS[state]}</span>
                {why === undefined ? "" : `: ${why}`}
              </span>
            </span>
            {state === "done" ? (
              <a href={ROUTES.paperFile.path.slice(1).replace(":paper", id)} download>
                Download<span className="hidden-words">: {KIND_WORDS[kind]}</span>
              </a>
            ) : null}
          </li>
        ))}
      </ul>
    </section>
  );
}

import { lazy, Suspense, useEffect, useRef, useState } from "react";
import { Link } from "wouter";
import { counted } from "../../words/index.ts";
import { Colophon } from "../frame/colophon.tsx";
import { backUpShelf, importFile } from "../frame/importing.ts";
import { Page } from "../frame/page.tsx";
import { TopBar } from "../frame/top-bar.tsx";
import type { BinnedJob, Card } from "../persistence/database.ts";
import { daysLeft } from "../persistence/job-shelf.ts";
import { hearTabs } from "../persistence/tab-talk.ts";
import { usePreferences } from "../state/preferences.ts";
import { useRoom } from "../workroom/room-state.ts";
import { FirstShade } from "./first-shade.tsx";
import { ShelfJob } from "./shelf-job.tsx";
import { loadShelf, returnToShelf, shelveDemo, useShelf } from "./shelf-state.ts";
import "./shelf.css";

/** All jobs on this device, and the way to a new one. */
export function Shelf() {
  const { cards, trouble, bin } = useShelf();
  useEffect(() => {
    void loadShelf();
    return hearTabs((message) => {
      if (message.kind !== "yield") void loadShelf();
    });
  }, []);
  const me = useRoom((room) => room.me);
  const own = me?.state === "signed-in" ? cards?.filter((card) => !card.inRoom) : cards;
  const drawn = useUsable(cards !== undefined);
  return (
    <>
      <TopBar />
      <Page className="shelf" title="Shadewright">
        <FirstShade drawn={drawn} />
        <section aria-labelledby="shelf-title" className="shelf-jobs">
          <div className="shelf-heading">
            <h2 id="shelf-title">On the shelf</h2>
            <span className="shelf-tools">
              <BackToBench cards={cards ?? []} />
              {cards && !trouble && !cards.some((card) => card.demo) ? (
                <button type="button" className="button button-small" onClick={() => void shelveDemo()}>
                  Bring the demonstration
                </button>
              ) : null}
              <OpenFile />
              {cards && cards.length > 0 && !trouble ? (
                <button type="button" className="button button-small" onClick={() => void backUpShelf()}>
                  Back up the shelf
                </button>
              ) : null}
              <Link href="/parts" className="button button-small">
                Parts bench
              </Link>
              <Link href="/ask" className="button button-small">
                Ask a question
              </Link>
              {me && me.state !== "signed-in" ? (
                <Link href="/workroom" className="button button-small">
                  Workroom
                </Link>
              ) : null}
            </span>
          </div>
          {trouble === "outdated" ? (
            <p role="alert">
              A newer Shadewright keeps this shelf, and all that stands on it. Load the page anew.
            </p>
          ) : trouble ? (
            <p className="quiet">
              This browser keeps nothing for this page, so the shelf is empty. Jobs can still be made, and
              saved as files.
            </p>
          ) : null}
          {cards?.length === 0 && !trouble ? (
            <p className="quiet">
              Nothing stands here yet. Type a width and a length above, or open a job file.
            </p>
          ) : null}
          <ShelfCards cards={own ?? []} drawn={drawn} />
          <Returned />
          {bin.length > 0 ? <Bin bin={bin} /> : null}
        </section>
        {me?.state === "signed-in" ? (
          <Suspense fallback={null}>
            <RoomShelf me={me} cards={cards ?? []} />
          </Suspense>
        ) : null}
      </Page>
      <Colophon />
    </>
  );
}

const RoomShelf = lazy(() =>
  import("../workroom/room-shelf.tsx").then((module) => ({ default: module.RoomShelf })),
);

const Elevation = lazy(() => import("./elevation.tsx").then((module) => ({ default: module.Elevation })));

function ShelfCards({ cards, drawn }: { cards: Card[]; drawn: boolean }) {
  return (
    <ul className="shelf-cards">
      {cards.map((card) => (
        <ShelfJob key={card.id} card={card}>
          <Suspense fallback={null}>
            {drawn ? <Elevation jobId={card.id} savedAt={card.savedAt} /> : null}
          </Suspense>
        </ShelfJob>
      ))}
    </ul>
  );
}

/** One press from the shelf to the step at which one left. */
function BackToBench({ cards }: { cards: readonly Card[] }) {
  const atBench = usePreferences((preferences) => preferences.atBench);
  if (atBench === null || !cards.some(({ id }) => id === atBench.jobId)) return null;
  return (
    <Link
      href={`/job/${atBench.jobId}/${atBench.windowId}/bench`}
      className="button button-small button-main"
    >
      Back to the bench: {atBench.name}
    </Link>
  );
}

function Returned() {
  const returned = useShelf((shelf) => shelf.returned);
  return (
    <p className="shelf-returned" role="status">
      {returned === undefined ? "" : `“${returned}” is back on the shelf.`}
    </p>
  );
}

/** Jobs that were taken off: each waits a month, and can be put back with its whole history. */
function Bin({ bin }: { bin: readonly BinnedJob[] }) {
  return (
    <section className="shelf-bin" aria-labelledby="bin-title">
      <h3 id="bin-title">In the bin</h3>
      <ul>
        {bin.map((binned) => (
          <li key={binned.binId}>
            <span>
              {binned.card.name}
              <span className="quiet small">
                {" "}
                · {counted(binned.card.windows, "window")} · {counted(daysLeft(binned), "day")} left
              </span>
            </span>
            <button type="button" className="button button-small" onClick={() => void returnToShelf(binned)}>
              Put it back<span className="hidden-words">: {binned.card.name}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

function OpenFile() {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" className="button button-small" onClick={() => input.current?.click()}>
        Open a file
      </button>
      <input
        ref={input}
        type="file"
        accept=".json,.jsonl,application/json"
        hidden
        onChange={(event) => {
          const [file] = event.target.files ?? [];
          if (file) void importFile(file);
          event.target.value = "";
        }}
      />
    </>
  );
}

/** A moment for the first screen to answer before the drawings, and their code, are fetched, ms. */
const SETTLE_MS = 400;

/** Marks the moment from which the first screen can be used; says when the drawings may follow. */
function useUsable(ready: boolean): boolean {
  const [drawn, setDrawn] = useState(false);
  useEffect(() => {
    if (!ready) return;
    if (performance.getEntriesByName("shadewright:usable").length > 0) return setDrawn(true);
    performance.mark("shadewright:usable");
    const timer = setTimeout(() => setDrawn(true), SETTLE_MS);
    return () => clearTimeout(timer);
  }, [ready]);
  return drawn;
}

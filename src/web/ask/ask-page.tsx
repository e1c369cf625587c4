import { useEffect } from "react";
import { plannedLock } from "../../job/index.ts";
import { Colophon } from "../frame/colophon.tsx";
import { Page } from "../frame/page.tsx";
import { TopBar } from "../frame/top-bar.tsx";
import { followBench, useBench } from "../parts/bench-store.ts";
import { Answers } from "./answers.tsx";
import { HowLong } from "./how-long.tsx";
import { MeasurePart } from "./measure-part.tsx";
import { WhichLock } from "./which-lock.tsx";
import "./ask.css";

/** Questions that need no shade: a few numbers in, an answer that shows its reasons. */
export function AskPage() {
  // Who has locks on the bench asks about those.
  const own = useBench(({ parts }) => parts?.locks) ?? [];
  useEffect(followBench, []);
  return (
    <>
      <TopBar>
        <span aria-current="page">Ask</span>
      </TopBar>
      <Page className="page page-narrow" title="Ask">
        <h1>Ask</h1>
        <p className="quiet">
          Answers from the numbers that you type. What is wrong with a shade that hangs, and which hardware
          suits one best, its own page tells.
        </p>
        <Answers />
        <WhichLock {...(own.length === 0 ? {} : { locks: own.map(plannedLock) })} />
        <HowLong />
        <MeasurePart />
      </Page>
      <Colophon />
    </>
  );
}

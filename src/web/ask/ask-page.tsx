import { Colophon } from "../frame/colophon.tsx";
import { Page } from "../frame/page.tsx";
import { TopBar } from "../frame/top-bar.tsx";
import { HowLong } from "./how-long.tsx";
import { MeasurePart } from "./measure-part.tsx";
import { WhichLock } from "./which-lock.tsx";
import "./ask.css";

/** Questions that need no shade: a few numbers in, an answer that shows its reasons. */
export function AskPage() {
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
        <WhichLock />
        <HowLong />
        <MeasurePart />
      </Page>
      <Colophon />
    </>
  );
}

import { type FormEvent, useEffect, useState } from "react";
import { useLocation } from "wouter";
import { readLabelCode } from "../../workroom/protocol/index.ts";
import { BackToShelf } from "../frame/notices.tsx";
import { Page } from "../frame/page.tsx";
import { TopBar } from "../frame/top-bar.tsx";
import { whyNot } from "./ask-server.ts";
import { shadeOfCode } from "./label-codes.ts";
import { foundRoom } from "./look-for-room.ts";
import { PlainField } from "./plain-field.tsx";
import { useRoom } from "./room-state.ts";
import { Trouble } from "./trouble.tsx";
import { SignInForm } from "./way-in.tsx";
import "./workroom.css";

/** Where the code of a label leads: to its shade at the bench, for who is signed in. */
export function LabelPage({ typed }: { typed: string }) {
  const [, go] = useLocation();
  const state = useRoom(({ me }) => me?.state);
  const [trouble, setTrouble] = useState<string>();
  const code = readLabelCode(typed);
  useEffect(() => void foundRoom(), []);
  useEffect(() => {
    if (state !== "signed-in" || code === undefined) return;
    shadeOfCode(code)
      .then(({ jobId, windowId }) => go(`/job/${jobId}/${windowId}/bench`, { replace: true }))
      .catch((error: unknown) => setTrouble(whyNot(error)));
  }, [state, code, go]);
  const isLost = code === undefined || trouble !== undefined;
  return (
    <>
      <TopBar>
        <span aria-current="page">Label {typed}</span>
      </TopBar>
      <Page className="page page-narrow" title={`Label ${typed}`} busy={state === "signed-in" && !isLost}>
        {state === "signed-out" && !isLost ? (
          <SignInForm />
        ) : isLost ? (
          <>
            <h1>This label leads nowhere</h1>
            <Trouble words={trouble ?? "A code has six letters and digits, as k7m2xq."} />
            <LabelField />
            <p>
              <BackToShelf />
            </p>
          </>
        ) : (
          <h1>Opening</h1>
        )}
      </Page>
    </>
  );
}

/** Asks for the code of a label, for who has no camera at hand. */
export function LabelField() {
  const [, go] = useLocation();
  const [typed, setTyped] = useState("");
  const code = readLabelCode(typed);
  const open = (event: FormEvent) => {
    event.preventDefault();
    if (code !== undefined) go(`/l/${code}`);
  };
  return (
    <form className="label-field" onSubmit={open}>
      <PlainField label="Code on a label" value={typed} onChange={setTyped} most={12} />
      <button type="submit" className="button button-small" disabled={code === undefined}>
        Open it at the bench
      </button>
    </form>
  );
}

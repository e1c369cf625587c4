import { useEffect, useState } from "react";
import type { JoinLook } from "../../workroom/protocol/index.ts";
import { Page } from "../frame/page.tsx";
import { TopBar } from "../frame/top-bar.tsx";
import { askServer } from "./ask-server.ts";
import { PlainField } from "./plain-field.tsx";
import { Trouble } from "./trouble.tsx";
import { useDeed } from "./use-deed.ts";
import { Enter, NewPassword, SignInName } from "./way-in.tsx";
import "./workroom.css";

/** Where an invitation leads, and a link for a new password. */
export function JoinPage({ token }: { token: string }) {
  const [look, setLook] = useState<JoinLook>();
  const { trouble, run } = useDeed();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the link is looked at once
  useEffect(() => {
    void run(async () => setLook(await askServer<JoinLook>("joinLook", { body: { token } })));
  }, [token]);
  return (
    <>
      <TopBar />
      <Page
        className="page page-narrow"
        title="Invitation"
        busy={look === undefined && trouble === undefined}
      >
        {look === undefined && trouble !== undefined ? <h1>This invitation cannot be used</h1> : null}
        {look === undefined ? <Trouble words={trouble} /> : <Join token={token} look={look} />}
      </Page>
    </>
  );
}

function Join({ token, look }: { token: string; look: JoinLook }) {
  const [name, setName] = useState(look.name ?? "");
  const [signInName, setSignInName] = useState("");
  const [password, setPassword] = useState("");
  const isNew = look.kind === "join";
  const body = { token, password, ...(isNew ? { name, signInName } : {}) };
  return (
    <Enter
      title={isNew ? `Join ${look.workroom}` : "A new password"}
      go={isNew ? "Join" : "Set the password"}
      enter={() => askServer("join", { body })}
    >
      {isNew ? (
        <>
          <PlainField label="Your name" value={name} onChange={setName} autoComplete="name" />
          <SignInName value={signInName} onChange={setSignInName} />
        </>
      ) : (
        <p>
          For {look.name}, who signs in as {look.signInName}.
        </p>
      )}
      <NewPassword value={password} onChange={setPassword} />
    </Enter>
  );
}

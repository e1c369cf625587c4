import { type FormEvent, type ReactNode, useState } from "react";
import { usePreferences } from "../state/preferences.ts";
import { askServer } from "./ask-server.ts";
import { lookAgain } from "./look-for-room.ts";
import { knowsPasskeys, signInWithPasskey } from "./passkeys.ts";
import { PlainField } from "./plain-field.tsx";
import { Trouble } from "./trouble.tsx";
import { useDeed } from "./use-deed.ts";

/** So long a password is, at least: NIST SP 800-63B-4, 3.1.1.2. */
const PASSWORD_HINT = "15 characters or more; a sentence is good";

/** The first who comes makes the workroom and is its owner. */
export function FirstOwner({ needsCode }: { needsCode: boolean }) {
  const [workroom, setWorkroom] = useState("");
  const [name, setName] = useState("");
  const [signInName, setSignInName] = useState("");
  const [password, setPassword] = useState("");
  const [code, setCode] = useState("");
  const system = usePreferences((known) => known.system);
  const body = { workroom, name, signInName, password, system, ...(needsCode ? { code } : {}) };
  return (
    <Enter
      title="A workroom for several"
      lead="Everyone in it works on one set of jobs, each from their own device."
      go="Make the workroom"
      enter={() => askServer<Codes>("signUp", { body })}
    >
      <PlainField label="Name of the workroom" value={workroom} onChange={setWorkroom} />
      <PlainField label="Your name" value={name} onChange={setName} autoComplete="name" />
      <SignInName value={signInName} onChange={setSignInName} />
      <NewPassword value={password} onChange={setPassword} />
      {needsCode ? (
        <PlainField label="Code" hint="the server printed it as it started" value={code} onChange={setCode} />
      ) : null}
    </Enter>
  );
}

export function SignInForm() {
  const [workroom, setWorkroom] = useState("");
  const [signInName, setSignInName] = useState("");
  const [password, setPassword] = useState("");
  const [code, setCode] = useState("");
  const [isLost, setLost] = useState(false);
  const at = workroom.trim() === "" ? {} : { workroom: workroom.trim() };
  const enter = () =>
    isLost
      ? askServer("recover", { body: { ...at, signInName, code, password } })
      : askServer("signIn", { body: { ...at, signInName, password } });
  return (
    <Enter
      title="Workroom"
      go={isLost ? "Set the password" : "Sign in"}
      enter={enter}
      otherwise={
        <>
          {knowsPasskeys() && !isLost ? <WithPasskey at={at} /> : null}
          <p>
            <button type="button" className="button-plain" onClick={() => setLost(!isLost)}>
              {isLost ? "I know my password" : "I lost my password"}
            </button>
          </p>
        </>
      }
    >
      <SignInName value={signInName} onChange={setSignInName} />
      {isLost ? (
        <>
          <PlainField label="Recovery code" value={code} onChange={setCode} most={40} />
          <NewPassword value={password} onChange={setPassword} />
        </>
      ) : (
        <PlainField
          label="Password"
          type="password"
          autoComplete="current-password"
          value={password}
          onChange={setPassword}
          most={256}
        />
      )}
      <details className="more-settings">
        <summary>More than one workroom</summary>
        <PlainField
          label="Short name of the workroom"
          hint="where this address has several"
          value={workroom}
          onChange={setWorkroom}
          most={64}
        />
      </details>
    </Enter>
  );
}

function WithPasskey({ at }: { at: { workroom?: string } }) {
  const { isBusy, trouble, run } = useDeed();
  return (
    <>
      <p>
        <button
          type="button"
          className="button button-small"
          disabled={isBusy}
          onClick={() =>
            void run(async () => {
              await signInWithPasskey(at);
              await lookAgain();
            })
          }
        >
          Sign in with a passkey
        </button>
      </p>
      <Trouble words={trouble} />
    </>
  );
}

export function SignInName({ value, onChange }: { value: string; onChange(value: string): void }) {
  return (
    <PlainField
      label="Name to sign in with"
      autoComplete="username"
      value={value}
      onChange={onChange}
      most={64}
    />
  );
}

export function NewPassword({ value, onChange }: { value: string; onChange(value: string): void }) {
  return (
    <PlainField
      label="New password"
      hint={PASSWORD_HINT}
      type="password"
      autoComplete="new-password"
      value={value}
      onChange={onChange}
      most={256}
    />
  );
}

interface Codes {
  codes?: string[];
}

interface EnterProps {
  title: string;
  lead?: string;
  go: string;
  enter(): Promise<unknown>;
  children: ReactNode;
  /** Other ways in, below the button. */
  otherwise?: ReactNode;
}

/** A form that lets someone in; recovery codes that come with it are shown before anything else. */
export function Enter({ title, lead, go, enter, children, otherwise }: EnterProps) {
  const { isBusy, trouble, run } = useDeed();
  const [codes, setCodes] = useState<string[]>();
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    await run(async () => {
      const answered = ((await enter()) ?? {}) as Codes;
      if (answered.codes === undefined) await lookAgain();
      else setCodes(answered.codes);
    });
  };
  if (codes) return <RecoveryCodes codes={codes} />;
  return (
    <form className="way-in" onSubmit={(event) => void submit(event)} noValidate>
      <h1>{title}</h1>
      {lead === undefined ? null : <p>{lead}</p>}
      {children}
      <Trouble words={trouble} />
      <p className="page-actions">
        <button type="submit" className="button button-main" disabled={isBusy}>
          {go}
        </button>
      </p>
      {otherwise}
    </form>
  );
}

export function CodeList({ codes }: { codes: readonly string[] }) {
  return (
    <ul className="recovery-codes">
      {codes.map((code) => (
        <li key={code}>
          <code>{code}</code>
        </li>
      ))}
    </ul>
  );
}

/** Shown once: nobody can look them up later. */
function RecoveryCodes({ codes }: { codes: readonly string[] }) {
  return (
    <div className="way-in">
      <h1>Recovery codes</h1>
      <p>Each sets a new password once, should yours be lost. Write them down: they are not shown again.</p>
      <CodeList codes={codes} />
      <p className="page-actions">
        <button type="button" className="button" onClick={() => print()}>
          Print
        </button>
        <button
          type="button"
          className="button button-main"
          onClick={() => {
            void lookAgain().then(() => {
              location.hash = "/workroom";
            });
          }}
        >
          I have written them down
        </button>
      </p>
    </div>
  );
}

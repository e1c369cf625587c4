import { type FormEvent, useEffect, useState } from "react";
import type { Passkey } from "../../workroom/protocol/index.ts";
import { askServer } from "./ask-server.ts";
import { addPasskey, knowsPasskeys } from "./passkeys.ts";
import { PlainField } from "./plain-field.tsx";
import { Trouble } from "./trouble.tsx";
import { useDeed } from "./use-deed.ts";
import { CodeList, NewPassword } from "./way-in.tsx";

const day = new Intl.DateTimeFormat(undefined, { dateStyle: "medium" });

/** How one signs in: passkeys, password, recovery codes. */
export function OwnSection() {
  return (
    <section aria-labelledby="own-title" className="room-section">
      <h2 id="own-title">How you sign in</h2>
      <Passkeys />
      <details className="more-settings">
        <summary>Another password</summary>
        <ChangePassword />
      </details>
      <details className="more-settings">
        <summary>New recovery codes</summary>
        <NewCodes />
      </details>
    </section>
  );
}

function Passkeys() {
  const [passkeys, setPasskeys] = useState<Passkey[]>([]);
  const [name, setName] = useState("");
  const { isBusy, trouble, run } = useDeed();
  const read = async () => setPasskeys((await askServer<{ passkeys: Passkey[] }>("passkeys")).passkeys);
  // biome-ignore lint/correctness/useExhaustiveDependencies: read once as the page comes
  useEffect(() => void run(read), []);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void run(async () => {
      await addPasskey(name.trim());
      setName("");
      await read();
    });
  };
  return (
    <>
      <ul className="room-list" aria-label="Passkeys">
        {passkeys.map((passkey) => (
          <li key={passkey.id}>
            <span>
              {passkey.name}
              <span className="quiet small"> · passkey of {day.format(new Date(passkey.madeAt))}</span>
            </span>
            <button
              type="button"
              className="button-plain small"
              onClick={() =>
                void run(async () => {
                  await askServer("removePasskey", { params: { passkey: passkey.id } });
                  await read();
                })
              }
            >
              Remove<span className="hidden-words">: {passkey.name}</span>
            </button>
          </li>
        ))}
      </ul>
      {knowsPasskeys() ? (
        <form className="room-form" onSubmit={submit} noValidate>
          <PlainField
            label="Passkey of this device"
            hint="a name to know it by"
            value={name}
            onChange={setName}
          />
          <button type="submit" className="button button-small" disabled={isBusy || name.trim() === ""}>
            Add the passkey
          </button>
        </form>
      ) : null}
      <Trouble words={trouble} />
    </>
  );
}

function ChangePassword() {
  const [current, setCurrent] = useState("");
  const [password, setPassword] = useState("");
  const [isDone, setDone] = useState(false);
  const { isBusy, trouble, run } = useDeed();
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setDone(false);
    void run(async () => {
      await askServer("password", { body: { current, password } });
      setCurrent("");
      setPassword("");
      setDone(true);
    });
  };
  return (
    <form className="room-form" onSubmit={submit} noValidate>
      <PlainField
        label="Password"
        type="password"
        autoComplete="current-password"
        value={current}
        onChange={setCurrent}
        most={256}
      />
      <NewPassword value={password} onChange={setPassword} />
      <button type="submit" className="button button-small" disabled={isBusy}>
        Set the password
      </button>
      <Trouble words={trouble} />
      {isDone ? <p role="status">Set. Other devices are signed out.</p> : null}
    </form>
  );
}

function NewCodes() {
  const [codes, setCodes] = useState<string[]>();
  const { isBusy, trouble, run } = useDeed();
  return (
    <>
      <p className="quiet">Those of before no longer count.</p>
      <Trouble words={trouble} />
      {codes === undefined ? (
        <button
          type="button"
          className="button button-small"
          disabled={isBusy}
          onClick={() =>
            void run(async () => setCodes((await askServer<{ codes: string[] }>("recoveryCodes")).codes))
          }
        >
          Make new codes
        </button>
      ) : (
        <CodeList codes={codes} />
      )}
    </>
  );
}

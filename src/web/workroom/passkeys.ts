import { askServer } from "./ask-server.ts";

interface Asked {
  challenge: string;
  options: unknown;
}

/** Whether this browser makes and reads passkeys as JSON: Web Authentication, level 3, sections 5.1.8 and 5.1.9. */
export function knowsPasskeys(): boolean {
  return (
    typeof PublicKeyCredential !== "undefined" &&
    "parseCreationOptionsFromJSON" in PublicKeyCredential &&
    "parseRequestOptionsFromJSON" in PublicKeyCredential
  );
}

/**
 * Makes a passkey on this device, and tells the workroom of it.
 * @throws where the person or the server says no
 */
export async function addPasskey(name: string): Promise<void> {
  const { challenge, options } = await askServer<Asked>("passkeyOptions");
  const publicKey = PublicKeyCredential.parseCreationOptionsFromJSON(
    options as PublicKeyCredentialCreationOptionsJSON,
  );
  const made = await navigator.credentials.create({ publicKey });
  await askServer("addPasskey", { body: { challenge, name, response: asJson(made) } });
}

/**
 * Signs in with a passkey of this device.
 * @throws where the person or the server says no
 */
export async function signInWithPasskey(workroom: { workroom?: string }): Promise<void> {
  const { challenge, options } = await askServer<Asked>("passkeySignInOptions", { body: workroom });
  const publicKey = PublicKeyCredential.parseRequestOptionsFromJSON(
    options as PublicKeyCredentialRequestOptionsJSON,
  );
  const found = await navigator.credentials.get({ publicKey });
  await askServer("passkeySignIn", { body: { challenge, response: asJson(found) } });
}

function asJson(credential: Credential | null): unknown {
  if (!(credential instanceof PublicKeyCredential)) throw new Error("no passkey");
  return credential.toJSON();
}

import {
  PROTOCOL,
  PROTOCOL_HEADER,
  ROUTES,
  type RoomRefusal,
  type RouteName,
} from "../../workroom/protocol/index.ts";
import { useRoom } from "./room-state.ts";

/** The server's no, in its own words. */
export class TurnedDown extends Error {
  readonly status: number;
  readonly issues: RoomRefusal["issues"];

  constructor(status: number, { refused, issues }: RoomRefusal) {
    super(refused);
    this.status = status;
    this.issues = issues;
  }
}

interface Asking {
  params?: Record<string, string>;
  query?: Record<string, string>;
  body?: unknown;
  /** Longer than this it counts as no answer, ms; without it as long as the browser waits. */
  withinMs?: number;
}

/**
 * Asks the workroom's server.
 * @throws {TurnedDown} with what it said; another error where it did not answer
 */
export async function askServer<Answered>(
  route: RouteName,
  { params = {}, query, body, withinMs }: Asking = {},
): Promise<Answered> {
  const { method, path } = ROUTES[route];
  const filled = path.replace(/:(\w+)/g, (_, name) => encodeURIComponent(params[name] ?? ""));
  const search = query === undefined ? "" : `?${new URLSearchParams(query)}`;
  const response = await fetch(`${filled.slice(1)}${search}`, {
    method,
    headers: {
      Accept: "application/json",
      [PROTOCOL_HEADER]: String(PROTOCOL),
      ...(body === undefined ? {} : { "Content-Type": "application/json" }),
    },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    ...(withinMs === undefined ? {} : { signal: AbortSignal.timeout(withinMs) }),
  }).catch((error: unknown) => {
    useRoom.setState({ isOnline: false });
    throw error;
  });
  if (response.ok) {
    useRoom.setState({ isOnline: true });
    return (await response.json()) as Answered;
  }
  if (response.status === 401 && route !== "signIn") useRoom.setState({ me: { state: "signed-out" } });
  throw new TurnedDown(response.status, await refusalOf(response));
}

async function refusalOf(response: Response): Promise<RoomRefusal> {
  try {
    return (await response.json()) as RoomRefusal;
  } catch {
    return { refused: `The server answers ${response.status}.`, issues: [] };
  }
}

/** What went wrong, in words for who pressed a button. */
export function whyNot(error: unknown): string {
  if (error instanceof DOMException) return "The device did not give a passkey.";
  if (!(error instanceof TurnedDown)) return "The workroom does not answer. Try again when it does.";
  const [issue] = error.issues;
  return issue === undefined ? error.message : `${error.message} ${issue.field}: it wants ${issue.wanted}.`;
}

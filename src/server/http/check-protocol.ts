import { OLDEST_PROTOCOL, PROTOCOL, PROTOCOL_HEADER } from "../../workroom/protocol/index.ts";
import { Refused } from "../refused.ts";

/**
 * Refuses what a screen of another release would change: it may mean something else by it. It may go on reading.
 * @throws {Refused} so that the screen keeps what it has to send until it is loaded anew
 */
export function checkProtocol({ method, headers }: Request): void {
  const given = headers.get(PROTOCOL_HEADER);
  if (given === null || method === "GET") return;
  const number = Number(given);
  if (number < OLDEST_PROTOCOL) {
    throw new Refused(
      426,
      "This page is older than the workroom’s server. Load it anew: what you did is kept on this device and sent then.",
    );
  }
  if (number > PROTOCOL) {
    throw new Refused(
      426,
      "The workroom’s server is older than this page. What you did is kept on this device until the server is updated.",
    );
  }
  if (!Number.isInteger(number)) throw new Refused(400, `${PROTOCOL_HEADER} wants a whole number.`);
}

import { ensureWeb } from "../../scripts/build-web.mjs";

/** The planner is tested as it is served: built. */
export function setup(): void {
  ensureWeb();
}

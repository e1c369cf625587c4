import type { AnyoneHandlers, PersonHandlers } from "../http/asked.ts";
import { clientLinkRoutes, clientRoutes } from "./client-link-routes.ts";
import { jobRoutes } from "./job-routes.ts";
import { labelRoutes } from "./label-routes.ts";
import { newsRoutes } from "./news-routes.ts";
import { paperRoutes } from "./paper-routes.ts";
import { passkeyRoutes, passkeySignInRoutes } from "./passkey-routes.ts";
import { peopleRoutes } from "./people-routes.ts";
import { signInRoutes } from "./sign-in-routes.ts";
import { stockRoutes } from "./stock-routes.ts";
import { workRoutes } from "./work-routes.ts";

/** What answers those who are not signed in. */
export const anyoneHandlers: AnyoneHandlers = { ...signInRoutes, ...passkeySignInRoutes, ...clientRoutes };

/** What answers people. */
export const personHandlers: PersonHandlers = {
  ...peopleRoutes,
  ...passkeyRoutes,
  ...jobRoutes,
  ...stockRoutes,
  ...workRoutes,
  ...labelRoutes,
  ...clientLinkRoutes,
  ...paperRoutes,
  ...newsRoutes,
};

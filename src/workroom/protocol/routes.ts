import type { Deed } from "./may.ts";

/**
 * Who may call a route: anyone, anyone who is signed in, or who may do the deed. What is more than that (a field, a job
 * of one's own) the route judges itself.
 */
export interface Route {
  method: "GET" | "POST" | "PATCH" | "DELETE";
  path: string;
  who: "anyone" | "signed-in" | Deed;
}

/** Every address of the server's, below the planner's own; `:name` stands for an id. */
export const ROUTES = {
  me: { method: "GET", path: "/api/me", who: "anyone" },
  signUp: { method: "POST", path: "/api/sign-up", who: "anyone" },
  signIn: { method: "POST", path: "/api/sign-in", who: "anyone" },
  recover: { method: "POST", path: "/api/recover", who: "anyone" },
  joinLook: { method: "POST", path: "/api/join/look", who: "anyone" },
  join: { method: "POST", path: "/api/join", who: "anyone" },
  passkeySignInOptions: { method: "POST", path: "/api/passkeys/sign-in/options", who: "anyone" },
  passkeySignIn: { method: "POST", path: "/api/passkeys/sign-in", who: "anyone" },
  clientLook: { method: "POST", path: "/api/client/look", who: "anyone" },
  clientAccept: { method: "POST", path: "/api/client/accept", who: "anyone" },

  signOut: { method: "POST", path: "/api/sign-out", who: "signed-in" },
  password: { method: "POST", path: "/api/password", who: "signed-in" },
  recoveryCodes: { method: "POST", path: "/api/recovery-codes", who: "signed-in" },
  sessions: { method: "GET", path: "/api/sessions", who: "signed-in" },
  endSession: { method: "DELETE", path: "/api/sessions/:session", who: "signed-in" },
  passkeys: { method: "GET", path: "/api/passkeys", who: "signed-in" },
  passkeyOptions: { method: "POST", path: "/api/passkeys/options", who: "signed-in" },
  addPasskey: { method: "POST", path: "/api/passkeys", who: "signed-in" },
  removePasskey: { method: "DELETE", path: "/api/passkeys/:passkey", who: "signed-in" },
  people: { method: "GET", path: "/api/people", who: "signed-in" },

  changePerson: { method: "PATCH", path: "/api/people/:person", who: "run-workroom" },
  recoverPerson: { method: "POST", path: "/api/people/:person/recovery", who: "run-workroom" },
  invitations: { method: "GET", path: "/api/invitations", who: "run-workroom" },
  invite: { method: "POST", path: "/api/invitations", who: "run-workroom" },
  takeBackInvitation: { method: "DELETE", path: "/api/invitations/:invitation", who: "run-workroom" },
  audit: { method: "GET", path: "/api/audit", who: "run-workroom" },

  shelf: { method: "GET", path: "/api/jobs", who: "read-jobs" },
  bin: { method: "GET", path: "/api/bin", who: "read-jobs" },
  wholeShelf: { method: "GET", path: "/api/shelf-file", who: "run-workroom" },
  makeJob: { method: "POST", path: "/api/jobs", who: "make-jobs" },
  job: { method: "GET", path: "/api/jobs/:job", who: "read-jobs" },
  copyJob: { method: "POST", path: "/api/jobs/:job/copy", who: "make-jobs" },
  binJob: { method: "POST", path: "/api/jobs/:job/bin", who: "bin-jobs" },
  putBackJob: { method: "POST", path: "/api/jobs/:job/put-back", who: "bin-jobs" },
  operations: { method: "GET", path: "/api/jobs/:job/operations", who: "read-jobs" },
  sendOperations: { method: "POST", path: "/api/jobs/:job/operations", who: "change-jobs" },
  jobHistory: { method: "GET", path: "/api/jobs/:job/history", who: "read-jobs" },
  jobAt: { method: "GET", path: "/api/jobs/:job/versions/:version", who: "read-jobs" },
  restoreJob: { method: "POST", path: "/api/jobs/:job/restore", who: "change-jobs" },

  reservations: { method: "GET", path: "/api/reservations", who: "read-jobs" },
  reserve: { method: "POST", path: "/api/jobs/:job/reservations", who: "change-shop" },

  work: { method: "GET", path: "/api/work-in-hand", who: "read-jobs" },
  changeWork: { method: "POST", path: "/api/work-in-hand", who: "change-work" },
  workOfShade: { method: "GET", path: "/api/work-in-hand/:job/:window", who: "read-jobs" },

  makeLabels: { method: "POST", path: "/api/jobs/:job/labels", who: "change-work" },
  label: { method: "GET", path: "/api/labels/:code", who: "read-jobs" },

  clientLinks: { method: "GET", path: "/api/jobs/:job/links", who: "offer" },
  makeClientLink: { method: "POST", path: "/api/jobs/:job/links", who: "offer" },
  takeBackClientLink: { method: "DELETE", path: "/api/links/:link", who: "offer" },

  papers: { method: "GET", path: "/api/jobs/:job/papers", who: "ask-for-papers" },
  askForPaper: { method: "POST", path: "/api/jobs/:job/papers", who: "ask-for-papers" },
  paperFile: { method: "GET", path: "/api/papers/:paper/file", who: "ask-for-papers" },

  news: { method: "GET", path: "/api/news", who: "signed-in" },
  newsStream: { method: "GET", path: "/api/news/stream", who: "signed-in" },
  presence: { method: "POST", path: "/api/presence", who: "signed-in" },
} as const satisfies Record<string, Route>;

export type RouteName = keyof typeof ROUTES;

import type { PersonRole } from "../../workroom/protocol/index.ts";

export const ROLE_WORDS: Record<PersonRole, string> = {
  owner: "owner: everything, people too",
  maker: "maker: all of the work",
  fitter: "fitter: measures, notes and steps done",
  viewer: "viewer: looks, and changes nothing",
  class: "class: looks, and changes copies of their own",
};

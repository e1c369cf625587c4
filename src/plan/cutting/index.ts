export { buyAsCut } from "./buy-as-cut.ts";
export * from "./cutting-plan.ts";
export { CuttingSearch, FIRST_TRIES, planCutting } from "./cutting-search.ts";
export { cuttingTicket, type TicketLine } from "./cutting-ticket.ts";
export { type FollowedCut, followCuts } from "./follow-cuts.ts";
export { clothGapWords, lengthsGapWords } from "./gap-words.ts";
export { planAndCut } from "./plan-and-cut.ts";
export { cuttingSavings, type Saving } from "./savings.ts";
export { stockAfter } from "./stock-after.ts";

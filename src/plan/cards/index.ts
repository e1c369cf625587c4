export { answersOf } from "./answers-of.ts";
export { asShown } from "./as-shown.ts";
export { type FindingCard, findingCards } from "./finding-cards.ts";

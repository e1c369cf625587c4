export { answersOf } from "./answers-of.ts";
export { type FindingCard, findingCards } from "./finding-cards.ts";

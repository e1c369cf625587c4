import type { Finding, Remedy } from "../figures/index.ts";
import { GOODS, GOODS_NAMES, type Job, PLACE_NAMES, PLACES, PURPOSE_NAMES, PURPOSES } from "../job/index.ts";
import { cite } from "../sources/index.ts";

/** Place and purpose decide whose rules are read: asked once for the job, every answer ready to press. */
export function askPlace({
  place,
  purpose,
  goods,
  client,
}: Pick<Job, "place" | "purpose" | "goods" | "client">): Finding[] {
  const asksGoods = place === "us" && purpose !== undefined && purpose !== "own-home";
  return [
    ...(place === undefined ? [PLACE_UNKNOWN] : []),
    ...(purpose === undefined ? [client === undefined ? PURPOSE_UNKNOWN : purposeOfClient(client)] : []),
    ...(asksGoods && goods === undefined ? [GOODS_UNKNOWN] : []),
  ];
}

function choices<C extends string>(path: string, values: readonly C[], names: Record<C, string>): Remedy[] {
  return values.map((value) => ({ label: names[value], patch: [{ op: "add", path, value }] }));
}

const PLACE_UNKNOWN: Finding = {
  id: "safety.place-unknown",
  severity: "unproven",
  stage: "safety",
  path: "/place",
  text: "Where will these shades hang? The rules on cords differ from place to place, and none can be read until it is said.",
  cite: cite("cord-rules-at-a-glance"),
  remedies: choices("/place", PLACES, PLACE_NAMES),
};

const PURPOSE_UNKNOWN: Finding = {
  id: "safety.purpose-unknown",
  severity: "unproven",
  stage: "safety",
  path: "/purpose",
  text: "Whom are these shades for? What is sold, given away or hung in a public building is held to rules that your own home is not. The hazard is the same everywhere.",
  cite: cite("cord-rules-at-a-glance"),
  remedies: choices("/purpose", PURPOSES, PURPOSE_NAMES),
};

/** Shades made for somebody are hardly for the maker’s own home. */
function purposeOfClient(client: string): Finding {
  return {
    ...PURPOSE_UNKNOWN,
    text: `Are these shades sold or given to ${client}? The job names a client and does not say whom they are for, so that no rule on what is sold or given was read. Every page says “not said” until it is.`,
  };
}

const GOODS_UNKNOWN: Finding = {
  id: "safety.goods-unknown",
  severity: "unproven",
  stage: "safety",
  path: "/goods",
  text: "Are these shades made to order, each for one window, or for stock? In the United States an operating cord of stock goods is at most 8 in (203 mm) long, by law; what is made to order is held to another standard.",
  cite: cite("us-16-cfr-1120", "1120.3(e); A100.1-2018, 4.3.1.2"),
  remedies: choices("/goods", GOODS, GOODS_NAMES),
};

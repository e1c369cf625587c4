import { offerOf } from "../../cost/index.ts";
import { drawSheet, place, speltDrawing, toSvg } from "../../drawing/index.ts";
import { moneyText } from "../../figures/index.ts";
import { type Job, STYLE_NAMES, spellerOf } from "../../job/index.ts";
import { plan as planJob } from "../../plan/index.ts";
import { lengthText } from "../../units/index.ts";
import { childSafetyChoices } from "../../workbook/index.ts";
import type { ClientPage } from "../../workroom/protocol/index.ts";

/** As a picture on a telephone. */
const FIT = { maxWidthMm: 120, maxHeightMm: 120 };

/** What the page of a job says, without what its link adds. */
export type OfferedJob = Pick<
  ClientPage,
  "maker" | "job" | "client" | "number" | "shades" | "totals" | "cautions" | "terms"
>;

/**
 * What a client sees of a job: pictures, sizes, prices, terms, and what was chosen about cords. Nothing else of the job or
 * its plan goes out: every field is put in by name.
 * @returns a sentence where the job cannot be offered yet
 */
export function offeredJob(job: Job): OfferedJob | string {
  const plan = planJob(job);
  const { values: offer } = offerOf(plan.cost, plan.shades, plan.cost.taxShare, plan.offer);
  if (plan.shades.length === 0) return "The job has no window yet.";
  if (offer.unpriced > 0) return "Some things on the shopping list have no price yet: type them first.";
  if (!plan.demo && plan.findings.some(({ id }) => id === "cost.demo-prices")) {
    return "Some prices are invented for demonstration: type your own first.";
  }
  const spell = spellerOf(plan.english);
  const prices = new Map(offer.shades.map(({ shadeId, price }) => [shadeId, price]));
  const money = (amount: number) => moneyText(amount, offer.currency);
  const percent = (share: number) => `${Math.round(share * 1e4) / 100} %`;
  const caution = plan.shades[0]?.cautions.find(({ id }) => id === "children-and-cords");
  const { maker, number, terms } = plan.offer ?? {};
  return {
    ...(maker === undefined ? {} : { maker }),
    job: plan.jobName,
    ...(plan.client === undefined ? {} : { client: plan.client }),
    ...(number === undefined ? {} : { number }),
    shades: plan.shades.map((shade) => ({
      room: shade.roomName,
      name: shade.windowName,
      words: spell(
        [
          `${STYLE_NAMES[shade.style]} shade`,
          `${lengthText(shade.size.finishedWidthMm, plan.units)} wide`,
          `${lengthText(shade.size.finishedLengthMm, plan.units)} long`,
          ...(shade.cloth.layers[0] === undefined ? [] : [shade.cloth.layers[0].clothName]),
        ].join(", "),
      ),
      price: money(prices.get(shade.shadeId) ?? 0),
      svg: toSvg(place(speltDrawing(drawSheet("picture", plan, shade, { raise: 0 }), spell), FIT), {
        stamp: shade.safety.stampText,
        isHeaded: false,
      }),
    })),
    totals: [
      ...(offer.tax > 0
        ? [
            { name: "Price without tax", value: money(offer.net) },
            { name: `Tax, ${percent(offer.taxShare)}`, value: money(offer.tax) },
          ]
        : []),
      { name: offer.tax > 0 ? "Price, tax included" : "Price", value: money(offer.total) },
      ...(offer.deposit > 0
        ? [
            {
              name: `Deposit, ${percent(offer.depositShare)}, paid with the order`,
              value: money(offer.deposit),
            },
          ]
        : []),
    ],
    cautions: [
      ...childSafetyChoices(plan, plan.shades),
      ...(caution === undefined ? [] : [`${caution.title}. ${caution.text}`]),
    ].map(spell),
    ...(terms === undefined ? {} : { terms }),
  };
}

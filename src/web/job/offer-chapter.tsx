import { memo } from "react";
import { offerOf } from "../../cost/index.ts";
import { moneyText } from "../../figures/index.ts";
import { DEFAULT_OFFER, type OfferTerms } from "../../job/index.ts";
import { counted } from "../../words/index.ts";
import { useCost } from "../cutting/use-cost.ts";
import { Chapter } from "../frame/chapter.tsx";
import { Field } from "../inputs/field.tsx";
import { OFFER_FIELDS } from "../settings/part-fields.ts";
import { useJob } from "../state/fields.ts";
import type { JobSummary } from "../state/job-summary.ts";

const NAMES = Object.keys(OFFER_FIELDS) as (keyof OfferTerms)[];
const STAND_INS: Partial<Record<keyof OfferTerms, number>> = {
  markUpShare: DEFAULT_OFFER.markUpShare.value,
  depositShare: DEFAULT_OFFER.depositShare.value,
  validDays: DEFAULT_OFFER.validDays.value,
  payDays: DEFAULT_OFFER.payDays.value,
};

/** What the client is asked for, and what stands on quote, order and invoice beside it. */
export const OfferChapter = memo(function OfferChapter({ summary }: { summary: JobSummary | undefined }) {
  const job = useJob();
  // The same cost as on the shopping list: as the cutting plan lays the cloth, once there is one.
  const cost = useCost(summary);
  return (
    <Chapter
      id="offer"
      sentence={cost === undefined ? "Being worked out." : <OfferSentence cost={cost} terms={job.offer} />}
    >
      <div className="fields">
        {NAMES.map((name) => (
          <Field
            key={name}
            pointer={`/offer/${name}`}
            spec={OFFER_FIELDS[name]}
            {...(STAND_INS[name] === undefined ? {} : { fallback: STAND_INS[name] })}
          />
        ))}
      </div>
      <p className="quiet small">
        They are printed under <i>What to print</i>: the client’s sheets, order, invoice and labels. Tax
        stands under Rates.
      </p>
    </Chapter>
  );
});

function OfferSentence({ cost, terms }: { cost: JobSummary["cost"]; terms: OfferTerms | undefined }) {
  const { total, deposit, unpriced } = offerOf(cost, [], cost.taxShare, terms).values;
  const money = (amount: number) => moneyText(amount, cost.currency);
  return (
    <>
      The price is <b>{money(total)}</b>
      {deposit > 0 ? `, ${money(deposit)} of it with the order` : ""}.
      {unpriced > 0
        ? ` Not to be sent yet: ${counted(unpriced, "thing")} on the shopping list ${unpriced === 1 ? "has" : "have"} no price.`
        : ""}
    </>
  );
}

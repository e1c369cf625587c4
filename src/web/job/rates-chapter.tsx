import { moneyText } from "../../figures/index.ts";
import { DEFAULT_RATES, resolveRates } from "../../job/index.ts";
import { citeText } from "../../sources/index.ts";
import { Chapter } from "../frame/chapter.tsx";
import { Field } from "../inputs/field.tsx";
import { RATE_FIELDS } from "../settings/part-fields.ts";
import { useJob } from "../state/fields.ts";
import { ShopKeeps } from "./shop-keeps.tsx";

const NAMES = Object.keys(RATE_FIELDS) as (keyof typeof RATE_FIELDS)[];

function rateLabel(path: string): string {
  const name = path.split("/")[0] as keyof typeof RATE_FIELDS | "prices";
  return name === "prices" ? "prices" : RATE_FIELDS[name].label.toLowerCase();
}

/** What an hour costs and how long things take. */
export function RatesChapter() {
  const { rates } = useJob();
  const resolved = resolveRates(rates);
  return (
    <Chapter
      id="rates"
      sentence={
        <>
          An hour of work at {moneyText(resolved.labourPerHour, resolved.currency)}
          {rates.labourPerHour === undefined ? ", an example until you set your own" : ""}.
        </>
      }
    >
      <div className="fields">
        {NAMES.map((name) => (
          <Field
            key={name}
            pointer={`/rates/${name}`}
            spec={RATE_FIELDS[name]}
            fallback={DEFAULT_RATES[name].value}
            origin={
              rates[name] === undefined ? `default: ${citeText(DEFAULT_RATES[name].cite)}` : "set by you"
            }
          />
        ))}
      </div>
      <ShopKeeps part="rates" labelOf={rateLabel} />
    </Chapter>
  );
}

import { memo } from "react";
import { moneyText } from "../../figures/index.ts";
import type { Cost, ShoppingLine } from "../../shade-plan/index.ts";
import { counted } from "../../words/index.ts";
import { useCost } from "../cutting/use-cost.ts";
import { Chapter } from "../frame/chapter.tsx";
import { useEnglish } from "../state/english.ts";
import type { JobSummary } from "../state/job-summary.ts";
import { PriceField } from "./price-field.tsx";

const GROUPS: Record<ShoppingLine["group"], string> = {
  cloth: "Cloth",
  cord: "Cord",
  hardware: "Hardware",
  board: "Boards",
  sundries: "Sundries",
};

/** What to buy and what it comes to. */
export const CostChapter = memo(function CostChapter({ summary }: { summary: JobSummary | undefined }) {
  useEnglish();
  const cost = useCost(summary);
  return (
    <Chapter
      id="cost"
      sentence={
        cost === undefined ? (
          "Being worked out."
        ) : (
          <>
            {counted(cost.shopping.length, "thing")} to buy. Materials{" "}
            {moneyText(cost.materials, cost.currency)}, work {moneyText(cost.labourCost, cost.currency)}, in
            all <b>{moneyText(cost.total, cost.currency)}</b>
            {cost.unpriced.length > 0
              ? `, without ${counted(cost.unpriced.length, "thing")} that ${cost.unpriced.length === 1 ? "has" : "have"} no price`
              : ""}
            .
          </>
        )
      }
    >
      {cost === undefined ? null : <CostTables cost={cost} />}
    </Chapter>
  );
});

function CostTables({ cost }: { cost: Cost }) {
  const money = (amount: number | undefined) =>
    amount === undefined ? "" : moneyText(amount, cost.currency);
  return (
    <>
      <div className="table-room">
        <table className="table table-folds">
          <caption>To buy</caption>
          <thead>
            <tr>
              <th scope="col">Thing</th>
              <th scope="col">Needed</th>
              <th scope="col">Buy</th>
              <th scope="col" className="number">
                Price each
              </th>
              <th scope="col" className="number">
                Cost
              </th>
            </tr>
          </thead>
          <tbody>
            {cost.shopping.map((line) => (
              <tr key={line.id}>
                <th scope="row">
                  {line.label} <span className="quiet small">{GROUPS[line.group].toLowerCase()}</span>
                </th>
                <td data-head="Needed">{line.needText}</td>
                <td data-head="Buy">{line.buyText}</td>
                <td data-head="Price each">
                  <PriceField line={line} />
                </td>
                <td className="number" data-head="Cost">
                  {money(line.cost) || "no price"}
                </td>
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th scope="row" colSpan={4}>
                Materials
              </th>
              <td className="number">{money(cost.materials)}</td>
            </tr>
          </tfoot>
        </table>
      </div>
      <div className="table-room">
        <table className="table">
          <caption>Work</caption>
          <thead>
            <tr>
              <th scope="col">Task</th>
              <th scope="col" className="number">
                Minutes
              </th>
              <th scope="col" className="number">
                Price
              </th>
            </tr>
          </thead>
          <tbody>
            {cost.labour.map((line) => (
              <tr key={line.id}>
                <th scope="row">{line.label}</th>
                <td className="number">{Math.round(line.minutes)}</td>
                <td className="number">{money(line.cost)}</td>
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th scope="row" colSpan={2}>
                Work
              </th>
              <td className="number">{money(cost.labourCost)}</td>
            </tr>
            {cost.tax > 0 ? (
              <tr>
                <th scope="row" colSpan={2}>
                  Tax
                </th>
                <td className="number">{money(cost.tax)}</td>
              </tr>
            ) : null}
            <tr>
              <th scope="row" colSpan={2}>
                In all
              </th>
              <td className="number">{money(cost.total)}</td>
            </tr>
          </tfoot>
        </table>
      </div>
    </>
  );
}

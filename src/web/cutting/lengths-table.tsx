import type { CuttingPlan, LengthsCutting } from "../../plan/index.ts";
import { boughtToMeasure, lengthsGapWords } from "../../plan/index.ts";
import { lengthText } from "../../units/index.ts";
import { useUnits } from "../state/fields.ts";

/** Bars, ribs, boards, tubes and cord: which cuts come off which length. */
export function LengthsTable({ cutting }: { cutting: CuttingPlan }) {
  const sawn = cutting.lengths.filter(
    ({ answer }) => answer.kind !== "infeasible" && answer.plan.bars.length > 0,
  );
  if (sawn.length === 0) return null;
  return (
    <section className="cutting-cloth">
      <h3>Bars, ribs, boards, tubes and cord</h3>
      {sawn.map((one) => (
        <LengthsOf key={one.id} one={one} />
      ))}
    </section>
  );
}

function LengthsOf({ one }: { one: LengthsCutting }) {
  const units = useUnits();
  const len = (mm: number) => lengthText(mm, units);
  const { answer, name, stockNames } = one;
  if (answer.kind === "infeasible") return null;
  const own = boughtToMeasure(one);
  return (
    <details className="more-settings">
      <summary>
        {name}: {answer.plan.bars.length} needed. {lengthsGapWords(one)}
      </summary>
      <div className="table-room">
        <table className="table">
          <caption className="hidden-words">{name}</caption>
          <thead>
            <tr>
              <th scope="col">From</th>
              <th scope="col">Cuts</th>
              <th scope="col">Left</th>
            </tr>
          </thead>
          <tbody>
            {answer.plan.bars.map(({ stockId, stockMm, cuts, offcutMm, kept }, at) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: equal lengths have no names
              <tr key={at}>
                <th scope="row">
                  {stockNames[stockId] ?? stockId}, {len(stockMm)}
                </th>
                <td>{cuts.map(({ lengthMm, shade }) => `${len(lengthMm)} (${shade ?? ""})`).join("; ")}</td>
                <td>{kept ? `${len(offcutMm)}, keep` : len(offcutMm)}</td>
              </tr>
            ))}
            {own.map(({ id, shade, lengthMm }) => (
              <tr key={id}>
                <th scope="row">To its own length</th>
                <td>
                  {len(lengthMm)} ({shade ?? ""})
                </td>
                <td />
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

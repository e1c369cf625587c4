import type { WorstState } from "../../../shade-plan/index.ts";
import { lengthText } from "../../../units/index.ts";
import { useUnits } from "../../state/fields.ts";
import { setRaise } from "../../state/raise.ts";
import { look } from "../../state/store.ts";

/** Puts the drawing into the state in which a rule is worst. */
export function ShowWorst({ worst }: { worst: WorstState }) {
  const units = useUnits();
  const above = worst.hemAboveFloorMm;
  const hem =
    above === undefined
      ? `hem ${lengthText(worst.hemBelowTopMm, units)} below the top line`
      : `hem ${lengthText(above, units)} above the floor`;
  return (
    <button
      type="button"
      className="button button-small"
      onClick={() => {
        setRaise(worst.raise);
        look({ sheet: "side" });
      }}
    >
      Show worst position: {stateText(worst.raise)}, {hem}
    </button>
  );
}

function stateText(raise: number): string {
  if (raise <= 0.001) return "lowered";
  if (raise >= 0.999) return "raised";
  return `raised ${Math.round(raise * 100)} %`;
}

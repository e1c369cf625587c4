import { ownFit } from "../../lift/index.ts";
import { More } from "../frame/more.tsx";
import { useShade } from "../shade/shade-context.tsx";
import { useParts } from "../state/parts.ts";
import { FitTable } from "./fit-table.tsx";

/** Locks by cords for the shade on the page. */
export function ShadeFit() {
  return (
    <More id="lock-fit" title="Which lock goes with which cord?">
      <Fit />
    </More>
  );
}

function Fit() {
  const { plan } = useShade();
  const parts = useParts();
  return <FitTable fit={ownFit(parts, plan.grid.columns.length, plan.lift.cordId)} />;
}

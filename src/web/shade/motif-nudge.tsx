import type { Motif } from "../../shade-plan/index.ts";
import { lengthText, markMm } from "../../units/index.ts";
import { useMotifPlace } from "../sheets/use-motif-place.ts";
import { useCanEdit, useUnits } from "../state/fields.ts";
import { useShadeNow } from "./shade-context.tsx";

const WAYS = [
  ["Left", "←", -1, 0],
  ["Right", "→", 1, 0],
  ["Up", "↑", 0, -1],
  ["Down", "↓", 0, 1],
] as const;

/** Moves the motif mark by mark, for those who do not drag. */
export function MotifNudge() {
  const face = useShadeNow().plan.cloth.layers.find(({ layer }) => layer === "face");
  return face?.motif === undefined ? null : <Nudges motif={face.motif} />;
}

function Nudges({ motif }: { motif: Motif }) {
  const units = useUnits();
  const mine = useCanEdit();
  const { at, put } = useMotifPlace(motif);
  const mark = markMm(units.ruler);
  return (
    <fieldset className="motif-nudge" disabled={!mine}>
      <legend className="segments-label">
        Move the motif by {lengthText(mark, units)}; a repeat begins {lengthText(at.xMm, units)} from the left
        and {lengthText(at.yMm, units)} below the top line
      </legend>
      {WAYS.map(([name, arrow, x, y]) => (
        <button
          key={name}
          type="button"
          className="button button-small"
          onClick={() => put(at.xMm + x * mark, at.yMm + y * mark, "nudge")}
        >
          <span aria-hidden="true">{arrow}</span> {name}
        </button>
      ))}
    </fieldset>
  );
}

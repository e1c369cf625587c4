import { ribCount } from "../../../shade-plan/index.ts";
import { trimmed } from "../../../units/index.ts";
import { counted } from "../../../words/index.ts";
import { Fig, LengthFig } from "../../figures/fig.tsx";
import { useShade } from "../shade-context.tsx";

/** What the style does with its cloth beyond a plain rectangle, in a clause each. */
export function FormSentence() {
  const { form, size } = useShade().plan;
  const ribs = ribCount(form);
  const tucks = form.marks.filter(({ kind }) => kind === "tuck").length;
  const hangingMm = form.stretches.reduce((sum, { clothMm, sewnMm = 0 }) => sum + clothMm - sewnMm, 0);
  const fullness = hangingMm / size.finishedLengthMm;
  const deepestMm = Math.max(0, ...form.swags.map(({ sagMm }) => sagMm));
  return (
    <>
      {ribs > 0 ? `${counted(ribs, "rib")} at the ${form.ribs.face}. ` : null}
      {tucks > 0 ? (
        <>
          <Fig id="shape.tucks">{counted(tucks, "tuck")}</Fig>,{" "}
          <LengthFig id="shape.tuck-spacing" mm={size.finishedLengthMm / (tucks + 1)} /> apart.{" "}
        </>
      ) : null}
      {form.pleats.length > 0 ? `${counted(form.pleats.length, "pleat")}. ` : null}
      {fullness > 1.001 ? `The cloth is ${trimmed(fullness, 2)} times as long as the shade. ` : null}
      {deepestMm > 1 ? (
        <>
          Between columns the lower edge hangs by up to <LengthFig id="shape.sag" mm={deepestMm} />.{" "}
        </>
      ) : null}
    </>
  );
}

import { lazy, type ReactNode, Suspense } from "react";
import { type CuttingPlan, newClothMm } from "../../plan/index.ts";
import { clothLengthText, type UnitChoice } from "../../units/index.ts";
import { counted } from "../../words/index.ts";
import { Chapter } from "../frame/chapter.tsx";
import { useUnits } from "../state/fields.ts";
import { useCuttingStore } from "./cutting-store.ts";

/** The check of plans and the drawing of bolts come along when somebody looks. */
const CuttingBody = lazy(async () => ({ default: (await import("./cutting-body.tsx")).CuttingBody }));

/** How all pieces of the job lie on its cloths: better and better while one looks. */
export function CuttingChapter() {
  const units = useUnits();
  const cutting = useCuttingStore((cutting) => cutting.progress?.cutting);
  return (
    <Chapter id="cutting" sentence={sentenceOf(cutting, units)}>
      {cutting === undefined ? null : (
        <Suspense fallback={<p>The bolts are being drawn.</p>}>
          <CuttingBody cutting={cutting} />
        </Suspense>
      )}
    </Chapter>
  );
}

function sentenceOf(cutting: CuttingPlan | undefined, units: UnitChoice): ReactNode {
  if (cutting === undefined) return "The pieces are being laid on the cloth.";
  if (cutting.cloths.length === 0) return "Nothing to cut yet.";
  const pieces = cutting.cloths.reduce((sum, { problem }) => sum + problem.pieces.length, 0);
  const newMm = cutting.cloths.reduce((sum, cloth) => sum + newClothMm(cloth), 0);
  return (
    <>
      {counted(pieces, "piece")} on {counted(cutting.cloths.length, "cloth")}:{" "}
      <b>{clothLengthText(newMm, units)}</b> of new cloth in all.
    </>
  );
}

import { type Cutting, DEFAULT_CUTTING } from "../../job/index.ts";
import { boltName, type ClothCutting, type CuttingPlan, clothGapWords } from "../../plan/index.ts";
import { citeText } from "../../sources/index.ts";
import { clothLengthText } from "../../units/index.ts";
import { counted } from "../../words/index.ts";
import { Field } from "../inputs/field.tsx";
import { CUTTING_FIELDS } from "../settings/part-fields.ts";
import { useJob, useUnits } from "../state/fields.ts";
import { BoltView } from "./bolt-view.tsx";
import { startCutting, stopCutting, useCuttingStore } from "./cutting-store.ts";
import { LengthsTable } from "./lengths-table.tsx";
import { SavingsList } from "./savings-list.tsx";
import { WhatIsLeft } from "./what-is-left.tsx";
import "./cutting.css";

/** What stands in the chapter: the search, each cloth with its bolts, the lengths, what would save cloth, what is left. */
export function CuttingBody({ cutting }: { cutting: CuttingPlan }) {
  return (
    <>
      <SearchState />
      {cutting.cloths.map((cloth) => (
        <ClothBlock key={cloth.clothId} cloth={cloth} />
      ))}
      <LengthsTable cutting={cutting} />
      <SavingsList />
      <WhatIsLeft cutting={cutting} />
      <HowItIsCut />
    </>
  );
}

const FIELDS = Object.keys(CUTTING_FIELDS) as (keyof Cutting)[];

/** What stands in a field until the maker fills it in, and where that comes from. */
function standing(name: keyof Cutting, isOwn: boolean) {
  if (name === "tableMm") return { unset: "any length" };
  const { value, cite } = DEFAULT_CUTTING[name];
  return { fallback: value, origin: isOwn ? "set by you" : `default: ${citeText(cite)}` };
}

function HowItIsCut() {
  const { cutting } = useJob();
  return (
    <details className="more-settings">
      <summary>How it is cut, and what is kept</summary>
      <div className="fields">
        {FIELDS.map((name) => (
          <Field
            key={name}
            pointer={`/cutting/${name}`}
            spec={CUTTING_FIELDS[name]}
            {...standing(name, cutting?.[name] !== undefined)}
          />
        ))}
      </div>
    </details>
  );
}

/** What the search is at, and the button that ends it. */
function SearchState() {
  const job = useJob();
  const state = useCuttingStore((cutting) => cutting.state);
  const tries = useCuttingStore((cutting) => cutting.progress?.tries ?? 0);
  const ended = useCuttingStore((cutting) => cutting.progress?.ended);
  const stale = useCuttingStore((cutting) => cutting.job !== job);
  if (state === "looking" || state === "first" || (stale && state !== "failed")) {
    return (
      <p className="cutting-state screen-only" data-testid="cutting-state" data-state="looking">
        <span role="status">Looking for less cloth. {tries.toLocaleString("en")} plans tried.</span>{" "}
        {state === "looking" && !stale ? (
          <button type="button" className="button button-small" onClick={stopCutting}>
            Stop here
          </button>
        ) : null}
      </p>
    );
  }
  const words =
    state === "failed"
      ? "The search failed; the last plan is shown."
      : ended === "done"
        ? "Search finished: no plan takes less."
        : `${ended === "stopped" ? "Stopped" : "Search finished"} after ${tries.toLocaleString("en")} plans; the best is shown.`;
  return (
    <p className="cutting-state screen-only" data-testid="cutting-state" data-state="ended">
      <span role="status">{words}</span>{" "}
      {ended === "done" ? null : (
        <button type="button" className="button button-small" onClick={() => void startCutting(job, true)}>
          Look again
        </button>
      )}
    </p>
  );
}

function ClothBlock({ cloth }: { cloth: ClothCutting }) {
  const units = useUnits();
  const { answer, clothName, newBoltId, problem } = cloth;
  return (
    <section className="cutting-cloth">
      <h3>{clothName}</h3>
      <p>
        {counted(problem.pieces.length, "piece")}
        {"bolts" in answer
          ? ` out of ${answer.bolts.map(({ boltId, usedMm }) => `${clothLengthText(usedMm, units)} of ${boltId === newBoltId ? "new cloth" : `“${boltName(cloth, boltId)}”`}`).join(" and ")}`
          : ""}
        . {clothGapWords(cloth, units)}
      </p>
      {"bolts" in answer ? <BoltView cloth={cloth} plan={answer} /> : null}
    </section>
  );
}

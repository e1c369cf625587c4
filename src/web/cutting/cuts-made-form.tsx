import { useState } from "react";
import { boughtLengthMm } from "../../cost/index.ts";
import type { BoltPlan } from "../../cutting/index.ts";
import { LONGEST_BOLT_MM } from "../../job/index.ts";
import { type ClothCutting, cutsMade, leftAfterCut } from "../../plan/index.ts";
import { lengthUnit, readLength, writeLength } from "../inputs/read-write.ts";
import type { LengthSpec } from "../inputs/spec.ts";
import { Typed } from "../inputs/typed.tsx";
import { useJob, useUnits } from "../state/fields.ts";
import { edit } from "../state/store.ts";
import { goOnFrom, useCuttingStore } from "./cutting-store.ts";

const LEFT: LengthSpec = {
  kind: "length",
  as: "ruler",
  label: "Left on the bolt, measured",
  minMm: 0,
  maxMm: LONGEST_BOLT_MM,
};

interface CutsMadeFormProps {
  cloth: ClothCutting;
  bolt: BoltPlan;
  upTo: number;
  onDone: () => void;
}

/** Asks what is left on the bolt, and takes the cuts that are made into the job. */
export function CutsMadeForm({ cloth, bolt, upTo, onDone }: CutsMadeFormProps) {
  const job = useJob();
  const units = useUnits();
  const boughtMm = useBoughtMm(cloth);
  const [text, setText] = useState(() => writeLength(leftAfterCut(cloth, bolt, upTo, boughtMm), LEFT, units));
  const read = readLength(text, LEFT, units);
  const take = () => {
    if (!read.ok) return;
    const { patch, still } = cutsMade(job, { cloth, bolt, upTo, leftMm: read.value });
    goOnFrom(still);
    edit({ label: "Cuts made", patch });
    onDone();
  };
  return (
    <form
      className="cuts-made screen-only"
      onSubmit={(event) => {
        event.preventDefault();
        take();
      }}
    >
      <Typed
        label={LEFT.label}
        unit={lengthUnit(LEFT, units)}
        value={text}
        onChange={setText}
        {...(read.ok ? {} : { error: read.reason })}
      />
      <p>
        <button type="submit" className="button button-small" disabled={!read.ok}>
          {upTo === 1 ? "Cut 1 is made" : `Cuts 1 to ${upTo} are made`}
        </button>{" "}
        <span className="quiet small">
          Their pieces are cut; what is left and every sheet cut off go into stock, and the rest is planned
          again.
        </span>
      </p>
    </form>
  );
}

/** What the shopping list buys of a cloth, mm; as much as the plan takes where it does not say. */
function useBoughtMm(cloth: ClothCutting): number | undefined {
  const line = useCuttingStore(({ progress }) =>
    progress?.cost.shopping.find(({ id }) => id === `cloth-${cloth.clothId}`),
  );
  if (line === undefined) return undefined;
  return boughtLengthMm(line);
}

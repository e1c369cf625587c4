import { useEffect, useRef, useState } from "react";
import type { ShadePlan } from "../../plan/index.ts";
import { useUnits } from "../state/fields.ts";
import { useShade } from "./shade-context.tsx";
import { whatChanged } from "./what-changed.ts";

/** Keystrokes closer together than this are told as one change, ms. */
const PAUSE_MS = 900;

/** Says to screen readers what an edit did to the shade, once the maker pauses. */
export function ChangeTold() {
  const { plan } = useShade();
  const units = useUnits();
  const told = useRef<ShadePlan>(plan);
  const [words, setWords] = useState("");
  useEffect(() => {
    if (told.current.shadeId !== plan.shadeId) told.current = plan;
    if (told.current === plan) return;
    const timer = setTimeout(() => {
      setWords(whatChanged(told.current, plan, units));
      told.current = plan;
    }, PAUSE_MS);
    return () => clearTimeout(timer);
  }, [plan, units]);
  return (
    <p className="hidden-words" role="status" data-testid="change-told">
      {words}
    </p>
  );
}

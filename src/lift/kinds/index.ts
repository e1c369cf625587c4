import type { LiftKind } from "../../job/index.ts";
import type { Lift } from "../../shade-plan/index.ts";
import { cleat } from "./cleat/cleat.ts";
import { cordLock } from "./cord-lock/cord-lock.ts";
import type { LiftKindModule } from "./lift-kind.ts";
import { motor } from "./motor/motor.ts";
import { spring } from "./spring/spring.ts";
import { tubeLoop } from "./tube-loop/tube-loop.ts";
import { tubeWand } from "./tube-wand/tube-wand.ts";

/** Every way to raise a shade that can be planned; the compiler names each new one that is missing. */
export const LIFT_KIND_MODULES: { [K in LiftKind]: LiftKindModule<Extract<Lift, { kind: K }>> } = {
  "cord-lock": cordLock,
  cleat,
  spring,
  "tube-wand": tubeWand,
  "tube-loop": tubeLoop,
  motor,
};

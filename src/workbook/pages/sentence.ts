import type { Lift } from "../../shade-plan/index.ts";
import { counted } from "../../words/index.ts";

export const MOUNT_WORDS = {
  inside: "inside the opening",
  outside: "outside the opening",
  "to-size": "made to the size given",
} as const;

/** The same with a capital letter at its beginning. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A remark as a sentence: capital letter, full stop. */
export function sentence(text: string): string {
  return capital(/[.!?]$/.test(text) ? text : `${text}.`);
}

/** Where the hand goes that raises it; a spring and a motor are worked from no side. */
export function workedFrom({ kind, controlSide }: Lift): string {
  switch (kind) {
    case "spring":
      return "raised by hand at its hem";
    case "motor":
      return `raised by a motor, its drive at the ${controlSide}`;
    case "cord-lock":
    case "cleat":
    case "tube-wand":
    case "tube-loop":
      return `worked from the ${controlSide}, seen from the room`;
  }
}

/** How it is raised, with what. */
export function liftWords({ kind, controlSide, cords }: Lift): string {
  const many = counted(cords.length, "cord");
  switch (kind) {
    case "cord-lock":
      return `worked from the ${controlSide} with ${many} and a cord lock`;
    case "cleat":
      return `worked from the ${controlSide} with ${many} over a last eye, held by a cleat alone`;
    case "spring":
      return `raised by hand at its hem, with ${many} on spools and a spring`;
    case "tube-wand":
      return `worked from the ${controlSide} with ${many} on a lift tube and a wand`;
    case "tube-loop":
      return `worked from the ${controlSide} with ${many} on a lift tube and a loop on a tensioner`;
    case "motor":
      return `raised by a motor, with ${many} on a lift tube`;
  }
}

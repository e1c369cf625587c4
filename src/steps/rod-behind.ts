import type { Form } from "../shade-plan/index.ts";

/** The weight bar lies in the bottom hem: not where there is none, nor where it hangs behind a hem that droops. */
export function barInHem({ bar }: Pick<Form, "bar">): boolean {
  return bar !== undefined && bar.aboveHemMm === undefined;
}

import type { Cite } from "../sources/index.ts";

/** A usual caution, with the source that it leans on. */
export interface Caution {
  id: string;
  title: string;
  text: string;
  cite?: Cite;
}

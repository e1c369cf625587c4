import "../no-code-from-text.ts";
import { expose } from "comlink";
import type { SurfaceFindingsInput } from "../../drape/findings/index.ts";
import { type DrapeInput, type HeightNews, workOutHeights } from "../../drape/index.ts";
import type { Finding } from "../../figures/index.ts";
import { withLife } from "../workers/worker-life.ts";

const service = {
  /** Works out a shade at all heights and tells each piece of it; ended by ending the worker. */
  async workOut(
    input: DrapeInput,
    nowAt: number,
    tell: (news: HeightNews) => void | Promise<void>,
  ): Promise<void> {
    for (const news of workOutHeights(input, nowAt)) await tell(news);
  },
  /** What the cloth has otherwise than the plan; takes a second or some. */
  async surfaceFindings(input: SurfaceFindingsInput): Promise<Finding[]> {
    // Fetched once it is asked for: the live picture says nothing.
    const { surfaceFindings } = await import("../../drape/findings/index.ts");
    return surfaceFindings(input);
  },
};

export type HangService = typeof service;

expose(withLife(service));

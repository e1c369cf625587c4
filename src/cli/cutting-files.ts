import { toDxf } from "../drawing/dxf/index.ts";
import { drawBoltPlan, type LetterOutlines, place, speltDrawing, toSvg } from "../drawing/index.ts";
import { type Job, jobText, spellerOf } from "../job/index.ts";
import { boltsCut, type CuttingPlan, type Plan } from "../plan/index.ts";
import { jobStamp } from "../safety/index.ts";
import { cuttingLists, readableTable, speltTable, toCsv } from "../tables/index.ts";
import { fileNames } from "./file-names.ts";
import type { OutFile } from "./write-files.ts";

/** A bolt is drawn at a tenth of its size on a strip of paper as long as it takes. */
const SCALE = { scale: 0.1 };

/**
 * Everything that is written for a cutting plan: the plan itself, its lists, and each bolt, stamped where it is to be.
 *
 * @param letters draws those of the drawings as lines
 * @param job with the cuts made that it is planned after
 */
export async function* cuttingFiles(
  plan: Plan,
  cutting: CuttingPlan,
  letters: LetterOutlines,
  job?: Job,
): AsyncGenerator<OutFile> {
  const stamp = jobStamp(plan.shades);
  const spell = spellerOf(plan.english);
  if (job !== undefined) yield { path: "cut-job.json", content: jobText(job), isResult: true };
  yield { path: "cutting.json", content: `${JSON.stringify(cutting, null, 2)}\n` };
  for (const list of cuttingLists(cutting))
    yield { path: `cutting/${list.name}.csv`, content: toCsv(speltTable(readableTable(list), spell), stamp) };
  const bolts = boltsCut(cutting);
  const names = fileNames(bolts.map(({ cloth, bolt }) => `${cloth.clothId}-${bolt.boltId}`));
  for (const { cloth, bolt } of bolts) {
    const drawing = speltDrawing(drawBoltPlan({ units: cutting.units, cutting: cloth, bolt }), spell);
    const path = `cutting/${names.get(`${cloth.clothId}-${bolt.boltId}`)}`;
    yield { path: `${path}.svg`, content: toSvg(place(drawing, SCALE), "light", stamp, letters) };
    yield { path: `${path}.dxf`, content: toDxf(drawing, undefined, stamp) };
  }
}

import { toDxf } from "../drawing/dxf/index.ts";
import { drawBoltStretches, type LetterOutlines, place, speltDrawing, toSvg } from "../drawing/index.ts";
import { type Job, jobText, spellerOf } from "../job/index.ts";
import { boltsCut, type CuttingPlan, type Plan } from "../plan/index.ts";
import { cuttingLists } from "../tables/index.ts";
import { fileNames } from "./file-names.ts";
import { writeJson } from "./json-parts.ts";
import { listFile } from "./list-file.ts";
import { stampOf } from "./safety-stop.ts";
import type { OutFile } from "./write-files.ts";

/** A bolt is drawn at a tenth of its size on a strip of paper as long as it takes. */
const SCALE = { scale: 0.1 };
/** More of a bolt than that goes on to another strip: nobody opens one of half a kilometre, mm. */
const LONGEST_DRAWN_MM = 50_000;

/**
 * Everything that is written for a cutting plan, one file at a time: the plan itself, its lists, and each bolt, stamped
 * where it is to be.
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
  const stamp = await stampOf(plan);
  const spell = spellerOf(plan.english);
  if (job !== undefined) yield { path: "cut-job.json", content: jobText(job), isResult: true };
  yield { path: "cutting.json", content: (write) => writeJson(cutting, write) };
  for (const list of cuttingLists(cutting)) yield listFile("cutting", list, { plan, spell, stamp });
  const bolts = boltsCut(cutting);
  const names = fileNames(bolts.map(({ cloth, bolt }) => `${cloth.clothId}-${bolt.boltId}`));
  for (const { cloth, bolt } of bolts) {
    const input = { units: cutting.units, cutting: cloth, bolt };
    const whole = `cutting/${names.get(`${cloth.clothId}-${bolt.boltId}`)}`;
    let count = 0;
    for (const drawn of drawBoltStretches(input, LONGEST_DRAWN_MM)) {
      const drawing = speltDrawing(drawn, spell);
      count++;
      const path = count === 1 ? whole : `${whole}-part-${count}`;
      yield { path: `${path}.svg`, content: toSvg(place(drawing, SCALE), { stamp, letters }) };
      yield { path: `${path}.dxf`, content: toDxf(drawing, undefined, stamp) };
    }
  }
}

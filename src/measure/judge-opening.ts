import type { Finding, Remedy } from "../figures/index.ts";
import { settingPatch } from "../job/index.ts";
import type { Size } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { inches, lengthText } from "../units/index.ts";
import { listed } from "../words/index.ts";
import { SMALLEST_FINISHED_MM } from "./finished-size.ts";
import type { MeasuredShade } from "./measure-reads.ts";
import { diagonalMisfitMm, leanMm } from "./squareness.ts";

/** Diagonals that differ by less are square enough to ignore; by more ask for an outside mount. */
const SQUARE_ENOUGH_MM = inches(1 / 4);
const OUT_OF_SQUARE_MM = inches(1 / 2);
/** Diagonals further than this from what width and height ask for were misread. */
const MISREAD_MM = inches(1 / 2);
/** Widths or heights that spread further than this are worth a second look. */
const UNEVEN_MM = inches(1 / 2);

const squareCite = cite(
  "from-memory",
  "no published tolerance found: 1/4 in ignored, over 1/2 in mounted outside",
);

/** What the measurements themselves say: too few, misread, out of square, too small, too low. */
export function judgeOpening(shade: MeasuredShade, size: Size): Finding[] {
  const missing = notMeasured(shade);
  const findings: Finding[] = [];
  if (shade.mount !== "to-size") {
    if (missing.length > 0) findings.push(tooFew(shade, missing));
    findings.push(...judgeSpread(shade, size), ...judgeDiagonals(shade, size));
  }
  if (size.finishedWidthMm <= SMALLEST_FINISHED_MM || size.finishedLengthMm <= SMALLEST_FINISHED_MM) {
    findings.push(nothingLeft(shade, size));
  }
  findings.push(...judgeFloor(shade, size));
  return findings;
}

/** What is to be measured yet or again, in words. */
export function stillToMeasure(shade: MeasuredShade): string[] {
  const misfitMm = misfitOf(shade);
  return [...notMeasured(shade), ...(isMisread(misfitMm) ? ["both diagonals once more"] : [])];
}

function notMeasured(shade: MeasuredShade): string[] {
  if (shade.mount === "to-size") return [];
  const { widthsMm, heightsMm, diagonalsMm, recessDepthMm, sillAboveFloorMm } = shade.opening;
  const list: string[] = [];
  if (widthsMm.length < 3) list.push("the width at top, middle and bottom");
  if (heightsMm.length < 3) list.push("the height at left, centre and right");
  if (diagonalsMm === undefined) list.push("both diagonals");
  if (shade.mount === "inside" && recessDepthMm === undefined) list.push("the depth of the recess");
  if (sillAboveFloorMm === undefined) list.push("the sill’s height above the floor");
  return list;
}

function base(shade: MeasuredShade) {
  return { stage: "measure", shadeId: shade.shadeId, path: `${shade.path}/opening` } as const;
}

function tooFew(shade: MeasuredShade, toMeasure: string[]): Finding {
  return {
    ...base(shade),
    id: "measure.incomplete",
    severity: "unproven",
    text: `Before any cloth is cut, measure ${listed(toMeasure)}. Until then the size rests on ${shade.opening.widthsMm.length} width${shade.opening.widthsMm.length === 1 ? "" : "s"} and ${shade.opening.heightsMm.length} height${shade.opening.heightsMm.length === 1 ? "" : "s"}.`,
    cite: cite("measuring-guides", "three widths, three heights, both diagonals"),
    remedies: [],
  };
}

function judgeSpread(shade: MeasuredShade, size: Size): Finding[] {
  const findings: Finding[] = [];
  const uneven = (what: "widths" | "heights", spreadMm: number, effect: string) => {
    if (spreadMm <= UNEVEN_MM) return;
    findings.push({
      ...base(shade),
      id: `measure.uneven-${what}`,
      severity: "note",
      path: `${shade.path}/opening/${what}Mm`,
      text: `The three ${what} differ by ${lengthText(spreadMm, shade.units)}. Measure them once more; if they stand, ${effect}.`,
      cite: cite("our-choice", "a spread over 1/2 in is looked at again"),
      remedies: [],
    });
  };
  const inside = shade.mount === "inside";
  uneven(
    "widths",
    size.widthSpreadMm,
    inside ? "the shade is made to the narrowest" : "the shade covers the widest",
  );
  uneven(
    "heights",
    size.heightSpreadMm,
    inside ? "the shade is made to the shortest" : "the shade covers the tallest",
  );
  return findings;
}

/** By how much the diagonals are longer than width and height can have, mm; undefined where they count for nothing. */
function misfitOf({ mount, opening }: MeasuredShade): number | undefined {
  const { diagonalsMm, widthsMm, heightsMm } = opening;
  if (mount === "to-size" || diagonalsMm === undefined) return undefined;
  return diagonalMisfitMm(mean(widthsMm), mean(heightsMm), ...diagonalsMm);
}

function isMisread(misfitMm: number | undefined): misfitMm is number {
  return misfitMm !== undefined && Math.abs(misfitMm) > MISREAD_MM;
}

function judgeDiagonals(shade: MeasuredShade, size: Size): Finding[] {
  const { diagonalsMm, widthsMm } = shade.opening;
  if (diagonalsMm === undefined || size.outOfSquareMm === undefined) return [];
  const [first, second] = diagonalsMm;
  const width = mean(widthsMm);
  const misfit = misfitOf(shade);
  if (isMisread(misfit)) {
    return [
      {
        ...base(shade),
        id: "measure.diagonals-misread",
        severity: "fix",
        path: `${shade.path}/opening/diagonalsMm`,
        text: `The diagonals are ${lengthText(Math.abs(misfit), shade.units)} ${misfit > 0 ? "longer" : "shorter"} than this width and height can have. One of the measurements is misread: measure diagonals, width and height again.`,
        cite: cite("geometry", "parallelogram law"),
        remedies: [],
      },
    ];
  }
  if (size.outOfSquareMm <= SQUARE_ENOUGH_MM || shade.mount !== "inside") return [];
  const lean = leanMm(width, first, second);
  const off = shade.making.mount.insideWidthOffMm;
  const outside: Remedy = {
    label: "Mount it outside the opening",
    patch: [{ op: "replace", path: `${shade.path}/shade/mount`, value: "outside" }],
  };
  const narrower: Remedy = {
    label: `Make it narrower: take off ${lengthText(lean + inches(1 / 4), shade.units)} in all`,
    patch: settingPatch(shade, "mount", "insideWidthOffMm", lean + inches(1 / 4)),
  };
  const facts = `The diagonals differ by ${lengthText(size.outOfSquareMm, shade.units)}: over its height the opening leans ${lengthText(lean, shade.units)} sideways`;
  if (size.outOfSquareMm > OUT_OF_SQUARE_MM) {
    return [
      {
        ...base(shade),
        id: "measure.out-of-square",
        severity: "fix",
        path: `${shade.path}/opening/diagonalsMm`,
        text: `${facts}. A shade hangs plumb, so inside it would show a wedge of light; an outside mount hides it.`,
        cite: squareCite,
        remedies: lean > off ? [outside, narrower] : [outside],
      },
    ];
  }
  const rubs = lean > off;
  return [
    {
      ...base(shade),
      id: "measure.slightly-out-of-square",
      severity: rubs ? "fix" : "note",
      path: `${shade.path}/opening/diagonalsMm`,
      text: rubs
        ? `${facts}, more than the ${lengthText(off, shade.units)} taken off its width, so the shade would rub.`
        : `${facts}. The ${lengthText(off, shade.units)} taken off the width allows for it; the gaps will not look even.`,
      cite: squareCite,
      remedies: rubs ? [narrower, outside] : [],
    },
  ];
}

function mean(values: number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function nothingLeft(shade: MeasuredShade, size: Size): Finding {
  return {
    ...base(shade),
    id: "measure.too-small",
    severity: "stop",
    text: `After the deductions ${lengthText(size.finishedWidthMm, shade.units)} × ${lengthText(size.finishedLengthMm, shade.units)} is left, too small for a shade. Check the measurements and the deductions.`,
    cite: cite("our-choice"),
    remedies: [],
  };
}

function judgeFloor(shade: MeasuredShade, size: Size): Finding[] {
  const hem = size.hemAboveFloorMm;
  const clearance = shade.making.mount.floorClearanceMm;
  if (hem === undefined || hem >= clearance) return [];
  const { overlapBelowMm } = shade.making.mount;
  const shorterBelow = overlapBelowMm - (clearance - hem);
  const remedies: Remedy[] =
    shade.mount === "outside" && shorterBelow >= 0
      ? [
          {
            label: `Let it end ${lengthText(shorterBelow, shade.units)} below the opening`,
            patch: settingPatch(shade, "mount", "overlapBelowMm", shorterBelow),
          },
        ]
      : [];
  return [
    {
      ...base(shade),
      id: "measure.floor",
      severity: "fix",
      path: `${shade.path}/opening/sillAboveFloorMm`,
      text:
        hem < 0
          ? `The hem would lie ${lengthText(-hem, shade.units)} below the floor.`
          : `The hem would hang ${lengthText(hem, shade.units)} above the floor; ${lengthText(clearance, shade.units)} is asked for.`,
      cite: cite("from-memory", "1/2 in"),
      remedies,
    },
  ];
}

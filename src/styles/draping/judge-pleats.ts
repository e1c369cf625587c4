import type { Finding, Remedy } from "../../figures/index.ts";
import { leaveOutPatch, settingPatch } from "../../job/index.ts";
import { type Form, firstFit, type Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { lengthText } from "../../units/index.ts";
import { atShade } from "../base/at-shade.ts";
import type { ShadeWith } from "../base/style-shade.ts";
import { hasTails } from "./ease.ts";
import { insertPieces } from "./insert-pieces.ts";

type PleatedShade = ShadeWith<"pleat" | "hems" | "ribs", "cloths">;

const SAME_MM = 0.5;

/** What speaks against these pleats in this cloth. */
export function judgePleats(shade: PleatedShade, size: Size, form: Form): Finding[] {
  return [
    ...tooWide(shade, size, form),
    ...ribs(shade),
    ...pattern(shade, size, form),
    ...blackout(shade, form),
    ...interlining(shade, form),
    ...inserts(shade, size, form),
  ];
}

/** Most cloth that one pleat can hold before its folds meet those of the next, or reach past the edge, mm. */
function mostFoldedMm(form: Form, widthMm: number): number {
  const { pleats } = form;
  const tailed = hasTails(form, widthMm);
  const room = pleats.flatMap(({ xMm }, i) => {
    const next = pleats[i + 1];
    return [
      ...(tailed ? [2 * Math.min(xMm, widthMm - xMm)] : []),
      ...(next === undefined ? [] : [next.xMm - xMm]),
    ];
  });
  return Math.max(0, Math.min(...room));
}

function tooWide(shade: PleatedShade, { finishedWidthMm }: Size, form: Form): Finding[] {
  const folded = Math.max(0, ...form.pleats.map(({ foldedMm }) => foldedMm));
  const mostMm = mostFoldedMm(form, finishedWidthMm);
  if (form.pleats.length === 0 || !Number.isFinite(mostMm) || folded <= mostMm + SAME_MM) return [];
  const remedies: Remedy[] =
    mostMm >= 1
      ? [
          {
            label: `Fold away ${lengthText(Math.floor(mostMm), shade.units)}`,
            patch: settingPatch(shade, "pleat", "foldedMm", Math.floor(mostMm)),
          },
        ]
      : [];
  return [
    {
      ...atShade(shade, "making/pleat/foldedMm"),
      id: "shape.pleats-too-wide",
      severity: "fix",
      text: `Pleats of ${lengthText(folded, shade.units)} are too wide for the cloth between them: behind the shade their folds lie over each other or show past the edge. ${lengthText(mostMm, shade.units)} is the most here.`,
      cite: cite("geometry", "half a pleat lies to either side of its line"),
      remedies,
    },
  ];
}

function ribs(shade: PleatedShade): Finding[] {
  if (shade.making.ribs.kind === "none") return [];
  return [
    {
      ...atShade(shade, "making/ribs/kind"),
      id: "shape.pleats-with-ribs",
      severity: "fix",
      text: "Ribs across would hold the pleats shut and the swags straight. They are left out.",
      cite: cite("our-choice"),
      remedies: [{ label: "Ask for no ribs", patch: settingPatch(shade, "ribs", "kind", "none") }],
    },
  ];
}

/** A pleat of whole repeats lets the pattern run on across its line. */
function pattern(shade: PleatedShade, { finishedWidthMm }: Size, form: Form): Finding[] {
  const { repeat } = shade.cloths.face;
  const { pleats } = form;
  const folded = Math.max(0, ...pleats.map(({ foldedMm }) => foldedMm));
  if (repeat === undefined || folded === 0) return [];
  const across = repeat.horizontalMm;
  const whole = across === undefined ? 0 : Math.max(1, Math.round(folded / across)) * across;
  if (across !== undefined && Math.abs(whole - folded) <= SAME_MM) return [];
  const fits = across !== undefined && whole <= mostFoldedMm(form, finishedWidthMm);
  return [
    {
      ...atShade(shade, "making/pleat/foldedMm"),
      id: "shape.pattern-in-pleats",
      severity: "note",
      text: `Each pleat hides ${lengthText(folded, shade.units)} of the pattern, and the two sides of its line do not meet in it.${
        across === undefined
          ? " Where a whole repeat across is folded away they do."
          : fits
            ? ` A repeat is ${lengthText(across, shade.units)} across: fold away ${lengthText(whole, shade.units)} and the pattern runs on.`
            : ` A repeat is ${lengthText(across, shade.units)} across, more than there is room to fold away.`
      }`,
      cite: cite("geometry", "whole repeats folded away"),
      remedies: !fits
        ? []
        : [
            {
              label: `Fold away ${lengthText(whole, shade.units)}`,
              patch: settingPatch(shade, "pleat", "foldedMm", whole),
            },
          ],
    },
  ];
}

function blackout(shade: PleatedShade, { pleats }: Form): Finding[] {
  const cloth = shade.cloths.blackout;
  if (cloth === undefined || pleats.length === 0) return [];
  return [
    {
      ...atShade(shade, "blackout"),
      id: "shape.blackout-in-pleats",
      severity: "fix",
      text: `${cloth.name} in a pleat lies in three layers and is stitched through along its whole line: it stands off stiffly and lets light in at every needle hole.`,
      cite: cite("blackout-guide"),
      remedies: [
        {
          label: "Leave the blackout out",
          patch: leaveOutPatch(shade, "blackout"),
        },
      ],
    },
  ];
}

function interlining(shade: PleatedShade, { pleats }: Form): Finding[] {
  const cloth = shade.cloths.interlining;
  if (cloth === undefined || pleats.length === 0) return [];
  return [
    {
      ...atShade(shade, "interlining"),
      id: "shape.interlining-in-pleats",
      severity: "note",
      text: `${cloth.name} folded into the pleats makes them thick, and the swags stiff.`,
      cite: cite("from-memory"),
      remedies: [
        {
          label: "Leave the interlining out",
          patch: leaveOutPatch(shade, "interlining"),
        },
      ],
    },
  ];
}

/** Pieces cut apart do not always come out of as many widths as the panel in one, or out of any. */
function inserts(shade: PleatedShade, size: Size, form: Form): Finding[] {
  if (shade.making.pleat.cut === "in-one" || form.pleats.length === 0) return [];
  const pieces = insertPieces(shade.making, size, form);
  const all = [...pieces.sides, ...pieces.between, ...pieces.pleats];
  const { usableWidthMm } = shade.cloths.face;
  const widest = Math.max(...all);
  const needed = firstFit(all, usableWidthMm).drops;
  const inOne = Math.max(1, Math.ceil(all.reduce((sum, mm) => sum + mm, 0) / usableWidthMm - 1e-9));
  if (widest <= usableWidthMm && needed <= inOne) return [];
  return [
    {
      ...atShade(shade, "making/pleat/cut"),
      id: "shape.inserts-take-more",
      severity: widest > usableWidthMm ? "fix" : "note",
      text:
        widest > usableWidthMm
          ? `Cut apart, one piece is ${lengthText(widest, shade.units)} wide, more than the cloth: it would need a join within it.`
          : `Cut apart, the pieces come out of ${needed} widths of the cloth, where ${inOne} hold as much: ${needed - inOne === 1 ? "one width" : `${needed - inOne} widths`} more to buy, unless other pieces come out beside them.`,
      cite: cite("geometry", "widest pieces laid first"),
      remedies: [
        { label: "Fold the pleats in one panel", patch: settingPatch(shade, "pleat", "cut", "in-one") },
      ],
    },
  ];
}

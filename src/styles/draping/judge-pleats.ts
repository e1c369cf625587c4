import type { Finding, Remedy } from "../../figures/index.ts";
import { type Brief, leaveOutPatch, settingPatch } from "../../job/index.ts";
import type { Form, Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { lengthText } from "../../units/index.ts";
import { atShade } from "../at-shade.ts";
import { hasTails } from "./ease.ts";
import { insertPieces, widthsFor } from "./insert-pieces.ts";

const SAME_MM = 0.5;

/** What speaks against these pleats in this cloth. */
export function judgePleats(brief: Brief, size: Size, form: Form): Finding[] {
  return [
    ...tooWide(brief, size, form),
    ...ribs(brief),
    ...pattern(brief, size, form),
    ...blackout(brief, form),
    ...interlining(brief, form),
    ...inserts(brief, size, form),
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

function tooWide(brief: Brief, { finishedWidthMm }: Size, form: Form): Finding[] {
  const folded = Math.max(0, ...form.pleats.map(({ foldedMm }) => foldedMm));
  const mostMm = mostFoldedMm(form, finishedWidthMm);
  if (form.pleats.length === 0 || !Number.isFinite(mostMm) || folded <= mostMm + SAME_MM) return [];
  const remedies: Remedy[] =
    mostMm >= 1
      ? [
          {
            label: `Fold away ${lengthText(Math.floor(mostMm), brief.units)}`,
            patch: settingPatch(brief, "pleat", "foldedMm", Math.floor(mostMm)),
          },
        ]
      : [];
  return [
    {
      ...atShade(brief, "making/pleat/foldedMm"),
      id: "shape.pleats-too-wide",
      weight: "fix",
      text: `Pleats of ${lengthText(folded, brief.units)} are too wide for the cloth between them: behind the shade their folds lie over each other or show past the edge. ${lengthText(mostMm, brief.units)} is the most here.`,
      cite: cite("geometry", "half a pleat lies to either side of its line"),
      remedies,
    },
  ];
}

function ribs(brief: Brief): Finding[] {
  if (brief.making.ribs.kind === "none") return [];
  return [
    {
      ...atShade(brief, "making/ribs/kind"),
      id: "shape.pleats-with-ribs",
      weight: "fix",
      text: "Ribs across would hold the pleats shut and the swags straight. They are left out.",
      cite: cite("our-choice"),
      remedies: [{ label: "Ask for no ribs", patch: settingPatch(brief, "ribs", "kind", "none") }],
    },
  ];
}

/** A pleat of whole repeats lets the pattern run on across its line. */
function pattern(brief: Brief, { finishedWidthMm }: Size, form: Form): Finding[] {
  const { repeat } = brief.cloths.face;
  const { pleats } = form;
  const folded = Math.max(0, ...pleats.map(({ foldedMm }) => foldedMm));
  if (repeat === undefined || folded === 0) return [];
  const across = repeat.horizontalMm;
  const whole = across === undefined ? 0 : Math.max(1, Math.round(folded / across)) * across;
  if (across !== undefined && Math.abs(whole - folded) <= SAME_MM) return [];
  const fits = across !== undefined && whole <= mostFoldedMm(form, finishedWidthMm);
  return [
    {
      ...atShade(brief, "making/pleat/foldedMm"),
      id: "shape.pattern-in-pleats",
      weight: "mind",
      text: `Each pleat hides ${lengthText(folded, brief.units)} of the pattern, and the two sides of its line do not meet in it.${
        across === undefined
          ? " Where a whole repeat across is folded away they do."
          : fits
            ? ` A repeat is ${lengthText(across, brief.units)} across: fold away ${lengthText(whole, brief.units)} and the pattern runs on.`
            : ` A repeat is ${lengthText(across, brief.units)} across, more than there is room to fold away.`
      }`,
      cite: cite("geometry", "whole repeats folded away"),
      remedies: !fits
        ? []
        : [
            {
              label: `Fold away ${lengthText(whole, brief.units)}`,
              patch: settingPatch(brief, "pleat", "foldedMm", whole),
            },
          ],
    },
  ];
}

function blackout(brief: Brief, { pleats }: Form): Finding[] {
  const cloth = brief.cloths.blackout;
  if (cloth === undefined || pleats.length === 0) return [];
  return [
    {
      ...atShade(brief, "blackout"),
      id: "shape.blackout-in-pleats",
      weight: "fix",
      text: `${cloth.name} in a pleat lies in three layers and is stitched through along its whole line: it stands off stiffly and lets light in at every needle hole.`,
      cite: cite("blackout-guide"),
      remedies: [
        {
          label: "Leave the blackout out",
          patch: leaveOutPatch(brief, "blackout"),
        },
      ],
    },
  ];
}

function interlining(brief: Brief, { pleats }: Form): Finding[] {
  const cloth = brief.cloths.interlining;
  if (cloth === undefined || pleats.length === 0) return [];
  return [
    {
      ...atShade(brief, "interlining"),
      id: "shape.interlining-in-pleats",
      weight: "mind",
      text: `${cloth.name} folded into the pleats makes them thick, and the swags stiff.`,
      cite: cite("from-memory"),
      remedies: [
        {
          label: "Leave the interlining out",
          patch: leaveOutPatch(brief, "interlining"),
        },
      ],
    },
  ];
}

/** Pieces cut apart do not always come out of as many widths as the panel in one. */
function inserts(brief: Brief, size: Size, form: Form): Finding[] {
  if (brief.making.pleat.cut === "in-one" || form.pleats.length === 0) return [];
  const pieces = insertPieces(brief, size, form);
  const all = [...pieces.sides, ...pieces.between, ...pieces.pleats];
  const { usableWidthMm } = brief.cloths.face;
  const widest = Math.max(...all);
  const needed = widthsFor(all, usableWidthMm);
  const inOne = Math.max(1, Math.ceil(all.reduce((sum, mm) => sum + mm, 0) / usableWidthMm - 1e-9));
  if (widest <= usableWidthMm && needed <= inOne) return [];
  return [
    {
      ...atShade(brief, "making/pleat/cut"),
      id: "shape.inserts-take-more",
      weight: "fix",
      text:
        widest > usableWidthMm
          ? `Cut apart, one piece is ${lengthText(widest, brief.units)} wide, more than the cloth: it would need a join within it.`
          : `Cut apart, the pieces come out of ${needed} widths of the cloth, where ${inOne} hold as much: ${needed - inOne === 1 ? "one width" : `${needed - inOne} widths`} more than is reckoned.`,
      cite: cite("geometry", "widest pieces laid first"),
      remedies: [
        { label: "Fold the pleats in one panel", patch: settingPatch(brief, "pleat", "cut", "in-one") },
      ],
    },
  ];
}

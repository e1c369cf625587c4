import type { Finding, Remedy } from "../../figures/index.ts";
import { leaveOutPatch, type ResolvedShade, settingPatch } from "../../job/index.ts";
import type { Form, Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { lengthText } from "../../units/index.ts";
import { atShade } from "../at-shade.ts";
import { hasTails } from "./ease.ts";
import { insertPieces, widthsFor } from "./insert-pieces.ts";

const SAME_MM = 0.5;

/** What speaks against these pleats in this cloth. */
export function judgePleats(resolved: ResolvedShade, size: Size, form: Form): Finding[] {
  return [
    ...tooWide(resolved, size, form),
    ...ribs(resolved),
    ...pattern(resolved, size, form),
    ...blackout(resolved, form),
    ...interlining(resolved, form),
    ...inserts(resolved, size, form),
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

function tooWide(resolved: ResolvedShade, { finishedWidthMm }: Size, form: Form): Finding[] {
  const folded = Math.max(0, ...form.pleats.map(({ foldedMm }) => foldedMm));
  const mostMm = mostFoldedMm(form, finishedWidthMm);
  if (form.pleats.length === 0 || !Number.isFinite(mostMm) || folded <= mostMm + SAME_MM) return [];
  const remedies: Remedy[] =
    mostMm >= 1
      ? [
          {
            label: `Fold away ${lengthText(Math.floor(mostMm), resolved.units)}`,
            patch: settingPatch(resolved, "pleat", "foldedMm", Math.floor(mostMm)),
          },
        ]
      : [];
  return [
    {
      ...atShade(resolved, "making/pleat/foldedMm"),
      id: "shape.pleats-too-wide",
      severity: "fix",
      text: `Pleats of ${lengthText(folded, resolved.units)} are too wide for the cloth between them: behind the shade their folds lie over each other or show past the edge. ${lengthText(mostMm, resolved.units)} is the most here.`,
      cite: cite("geometry", "half a pleat lies to either side of its line"),
      remedies,
    },
  ];
}

function ribs(resolved: ResolvedShade): Finding[] {
  if (resolved.making.ribs.kind === "none") return [];
  return [
    {
      ...atShade(resolved, "making/ribs/kind"),
      id: "shape.pleats-with-ribs",
      severity: "fix",
      text: "Ribs across would hold the pleats shut and the swags straight. They are left out.",
      cite: cite("our-choice"),
      remedies: [{ label: "Ask for no ribs", patch: settingPatch(resolved, "ribs", "kind", "none") }],
    },
  ];
}

/** A pleat of whole repeats lets the pattern run on across its line. */
function pattern(resolved: ResolvedShade, { finishedWidthMm }: Size, form: Form): Finding[] {
  const { repeat } = resolved.cloths.face;
  const { pleats } = form;
  const folded = Math.max(0, ...pleats.map(({ foldedMm }) => foldedMm));
  if (repeat === undefined || folded === 0) return [];
  const across = repeat.horizontalMm;
  const whole = across === undefined ? 0 : Math.max(1, Math.round(folded / across)) * across;
  if (across !== undefined && Math.abs(whole - folded) <= SAME_MM) return [];
  const fits = across !== undefined && whole <= mostFoldedMm(form, finishedWidthMm);
  return [
    {
      ...atShade(resolved, "making/pleat/foldedMm"),
      id: "shape.pattern-in-pleats",
      severity: "note",
      text: `Each pleat hides ${lengthText(folded, resolved.units)} of the pattern, and the two sides of its line do not meet in it.${
        across === undefined
          ? " Where a whole repeat across is folded away they do."
          : fits
            ? ` A repeat is ${lengthText(across, resolved.units)} across: fold away ${lengthText(whole, resolved.units)} and the pattern runs on.`
            : ` A repeat is ${lengthText(across, resolved.units)} across, more than there is room to fold away.`
      }`,
      cite: cite("geometry", "whole repeats folded away"),
      remedies: !fits
        ? []
        : [
            {
              label: `Fold away ${lengthText(whole, resolved.units)}`,
              patch: settingPatch(resolved, "pleat", "foldedMm", whole),
            },
          ],
    },
  ];
}

function blackout(resolved: ResolvedShade, { pleats }: Form): Finding[] {
  const cloth = resolved.cloths.blackout;
  if (cloth === undefined || pleats.length === 0) return [];
  return [
    {
      ...atShade(resolved, "blackout"),
      id: "shape.blackout-in-pleats",
      severity: "fix",
      text: `${cloth.name} in a pleat lies in three layers and is stitched through along its whole line: it stands off stiffly and lets light in at every needle hole.`,
      cite: cite("blackout-guide"),
      remedies: [
        {
          label: "Leave the blackout out",
          patch: leaveOutPatch(resolved, "blackout"),
        },
      ],
    },
  ];
}

function interlining(resolved: ResolvedShade, { pleats }: Form): Finding[] {
  const cloth = resolved.cloths.interlining;
  if (cloth === undefined || pleats.length === 0) return [];
  return [
    {
      ...atShade(resolved, "interlining"),
      id: "shape.interlining-in-pleats",
      severity: "note",
      text: `${cloth.name} folded into the pleats makes them thick, and the swags stiff.`,
      cite: cite("from-memory"),
      remedies: [
        {
          label: "Leave the interlining out",
          patch: leaveOutPatch(resolved, "interlining"),
        },
      ],
    },
  ];
}

/** Pieces cut apart do not always come out of as many widths as the panel in one. */
function inserts(resolved: ResolvedShade, size: Size, form: Form): Finding[] {
  if (resolved.making.pleat.cut === "in-one" || form.pleats.length === 0) return [];
  const pieces = insertPieces(resolved, size, form);
  const all = [...pieces.sides, ...pieces.between, ...pieces.pleats];
  const { usableWidthMm } = resolved.cloths.face;
  const widest = Math.max(...all);
  const needed = widthsFor(all, usableWidthMm);
  const inOne = Math.max(1, Math.ceil(all.reduce((sum, mm) => sum + mm, 0) / usableWidthMm - 1e-9));
  if (widest <= usableWidthMm && needed <= inOne) return [];
  return [
    {
      ...atShade(resolved, "making/pleat/cut"),
      id: "shape.inserts-take-more",
      severity: "fix",
      text:
        widest > usableWidthMm
          ? `Cut apart, one piece is ${lengthText(widest, resolved.units)} wide, more than the cloth: it would need a join within it.`
          : `Cut apart, the pieces come out of ${needed} widths of the cloth, where ${inOne} hold as much: ${needed - inOne === 1 ? "one width" : `${needed - inOne} widths`} more than is counted.`,
      cite: cite("geometry", "widest pieces laid first"),
      remedies: [
        { label: "Fold the pleats in one panel", patch: settingPatch(resolved, "pleat", "cut", "in-one") },
      ],
    },
  ];
}

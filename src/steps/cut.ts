import { groupedBy } from "../figures/index.ts";
import type { RibKind } from "../job/index.ts";
import { LAYER_NAMES, type LayerCut, layerCannotBeCut, type Step } from "../shade-plan/index.ts";
import { clothLengthText, nearestMark } from "../units/index.ts";
import { counted, IRON, listed } from "../words/index.ts";
import type { Bench } from "./bench.ts";
import { cutStiffness } from "./cut-stiffness.ts";
import { cutTrims } from "./cut-trims.ts";
import { BLACKOUT_IRON, CUTTING, SAW } from "./hazards.ts";
import { sentences } from "./wording.ts";

/** From the bolt to squared pieces: look, shrink, square, cut, saw. */
export function cutSteps(bench: Bench): Step[] {
  const { cloth } = bench;
  const given = cloth.layers.filter((cut) => !layerCannotBeCut(cut));
  // What says to cut nothing comes before all that is cut.
  return [
    ...cloth.layers.filter(layerCannotBeCut).map((cut) => cannotCut(bench, cut)),
    ...look(bench),
    press(bench),
    ...cutStiffness(bench),
    squareEnd(),
    ...given.map((cut) => cutLayer(bench, cut)),
    ...trim(bench),
    ...cutTrims(bench),
    ...bars(bench),
  ];
}

function look({ resolved, cloth, len }: Bench): Step[] {
  const cut = cloth.layers.filter((one) => !layerCannotBeCut(one));
  if (cut.length === 0) return [];
  const each = cut.map(
    (cut) =>
      `for the ${LAYER_NAMES[cut.layer].toLowerCase()} ${clothLengthText(cut.lengthMm, resolved.units)} of “${cut.clothName}”, ${len(cut.usableWidthMm)} wide between the selvedges`,
  );
  const step: Step = {
    id: "cut-look",
    chapter: "cut",
    title: "Look the cloth over",
    text: `Unroll it on a large flat table. You need: ${each.join("; ")}. Look for flaws now, and mark the right side and the way up with pins.`,
    check: "Measure the usable width at both ends and in the middle: no place is narrower than that.",
    sheet: "cutting",
    figures: cut.map(({ layer }) => `cloth.${layer}-length`),
  };
  return [step];
}

/** At the head of what would be made of it, where a layer cannot be cut. */
export function waitForCloth({ cloth }: Bench): Step[] {
  const names = cloth.layers
    .filter(layerCannotBeCut)
    .map(({ layer }) => `the ${LAYER_NAMES[layer].toLowerCase()}`);
  if (names.length === 0) return [];
  const step: Step = {
    id: "make-wait",
    chapter: "make",
    title: "Wait for the other cloth",
    text: `There is no cloth yet that ${listed(names)} can be cut from. What follows, from here to the window, holds only once such cloth is chosen and the plan made again: its figures may be others then.`,
  };
  return [step];
}

/** What is the case, where there is nothing to cut. */
function cannotCut({ len }: Bench, { layer, clothName, usableWidthMm, panels }: LayerCut): Step {
  const name = LAYER_NAMES[layer].toLowerCase();
  const widestMm = Math.max(...panels.map(({ widthMm }) => widthMm));
  const needs =
    widestMm > usableWidthMm + 1 ? `a piece ${len(widestMm)} wide` : `${panels.length} pieces side by side`;
  return {
    id: `cut-${layer}`,
    chapter: "cut",
    title: `Choose another cloth for the ${name}`,
    text: `“${clothName}” is ${len(usableWidthMm)} wide, and the ${name} would take ${needs}: it cannot be cut from it. Cut nothing, and do no step that follows, until a wider cloth is chosen and the plan made again.`,
  };
}

function press({ resolved, cloth }: Bench): Step {
  const unknown = cloth.layers.filter((cut) => {
    const used = resolved.cloths[cut.layer];
    return used?.shrinkLength === undefined && used?.shrinkWidth === undefined;
  });
  const names = [...new Set(unknown.map((cut) => cut.clothName))];
  return {
    id: "cut-press",
    chapter: "cut",
    title: "Shrink and press",
    text:
      names.length > 0
        ? `How much ${listed(names.map((name) => `“${name}”`))} will still shrink is not known. Clean it now as the shade will be cleaned later, dry it, and press it flat. Press the rest too, and let the cloth cool before you measure.`
        : "Press the cloth flat, and let it cool before you measure.",
    caution: cloth.layers.some((cut) => cut.layer === "blackout") ? BLACKOUT_IRON : IRON,
  };
}

function squareEnd(): Step {
  return {
    id: "cut-square",
    chapter: "cut",
    action: { kind: "square-cloth" },
    title: "Square the end",
    text: "Pull one thread out from selvedge to selvedge and cut along the line it leaves. Where no thread will pull, or a print runs off the weave, draw a line at right angles to the selvedge with a large set square. Cut the selvedges off.",
    caution: CUTTING,
    sheet: "cutting",
  };
}

function cutLayer(bench: Bench, cut: LayerCut): Step {
  const { layer, cutWidthMm, cutLengthMm, panels } = cut;
  const { len, about } = bench;
  const name = LAYER_NAMES[layer].toLowerCase();
  const isApart = cut.joinsAt === "cut-apart";
  const pieces =
    panels.length === 1
      ? `Cut one piece, ${len(cutWidthMm)} wide and ${len(cutLengthMm)} long.`
      : `Cut ${panels.length} pieces, each ${len(cutLengthMm)} long: ${isApart ? namedWidths(bench, cut) : panelWidths(bench, cut)}.${isApart ? " Mark the upper end of each with its name." : ""}`;
  return {
    id: `cut-${layer}`,
    chapter: "cut",
    title: `Cut the ${name}`,
    text: sentences(pieces, allowances(bench, cut), ...wayUp(bench, cut), ...pattern(bench, cut)),
    check: `Both diagonals of ${panels.length === 1 ? "the piece" : "each piece"} agree within ${about("square")}.`,
    sheet: "cutting",
    figures: [`cloth.${layer}-cut-width`, `cloth.${layer}-cut-length`],
  };
}

/** Pieces of a face that is cut apart: `420 mm for insert 1 of 2 and insert 2 of 2`. */
function namedWidths({ len }: Bench, { panels }: LayerCut): string {
  return [...groupedBy(panels, ({ widthMm }) => len(widthMm))]
    .map(([width, alike]) => `${width} wide, ${listed(alike.map(({ label }) => label.toLowerCase()))}`)
    .join("; ");
}

function panelWidths({ len }: Bench, { panels }: LayerCut): string {
  const middle = Math.floor(panels.length / 2);
  const sizes = new Map<string, number>();
  panels.forEach(({ widthMm }, i) => {
    const size = i === middle ? `${len(widthMm)} for the middle` : `${len(widthMm)} for the sides`;
    sizes.set(size, (sizes.get(size) ?? 0) + 1);
  });
  return listed([...sizes].map(([size, count]) => `${count} of ${size}`).reverse());
}

/** Cloth that may not be turned about. */
function wayUp({ resolved }: Bench, cut: LayerCut): string[] {
  const cloth = resolved.cloths[cut.layer];
  const many = cut.panels.length > 1 ? "every piece" : "it";
  return [
    ...(cut.turned
      ? [
          "The cloth is turned sideways: the length of the piece lies across it, from selvedge to selvedge, its upper edge towards the right selvedge.",
        ]
      : []),
    ...(cloth?.nap === true
      ? [
          `It has a pile: cut ${many} so that it strokes ${resolved.making.pattern.pile} on the hanging shade, and mark the upper edge.`,
        ]
      : cloth?.direction === "one-way"
        ? [`Its pattern has a top: cut ${many} the same way up, and mark the upper edge.`]
        : []),
  ];
}

/** Pockets that take up cloth of the face. */
const POCKETS_IN_FACE: ReadonlySet<RibKind> = new Set(["through-pocket", "face-pocket"]);

function allowances(bench: Bench, cut: LayerCut): string {
  const { resolved, cloth, form, len, sideHemMm, bottomHemMm, bagged, wrapMm } = bench;
  const bottomBand = cloth.bands.some(({ part }) => part === "bottom-band");
  const shrinks = cut.makeUp.some((part) => part.label === "shrinkage");
  const kept = shrinks ? "The shrinkage still to come is in these figures." : "";
  if (cut.layer !== "face") return kept;
  const parts = [
    ...(sideHemMm > 0 ? [`${len(sideHemMm)} for each side ${bagged ? "seam" : "hem"}`] : []),
    ...(wrapMm > 0 ? [`${len(wrapMm)} at each side to go round the end of the board`] : []),
    ...(bottomBand
      ? [`${len(resolved.making.hems.seamMm)} to join the bottom band`]
      : bottomHemMm > 0
        ? [`${len(bottomHemMm)} for the bottom ${bagged ? "seam" : "hem"}`]
        : []),
    resolved.making.board.attachment === "staple" ? "the cloth for the board" : "the turn-down at the top",
    ...(POCKETS_IN_FACE.has(resolved.making.ribs.kind) && cloth.ribLines.length > 0
      ? [counted(cloth.ribLines.length, "rib pocket")]
      : []),
    ...form.allowances
      .filter(({ layers }) => layers === undefined || layers.includes("face"))
      .map(({ label, widthMm, lengthMm }) => `${len(Math.max(widthMm, lengthMm))} for ${label}`),
  ];
  return sentences(`In it are ${listed(parts)}.`, kept);
}

function pattern({ resolved, len }: Bench, cut: LayerCut): string[] {
  const repeat = resolved.cloths[cut.layer]?.repeat;
  if (repeat === undefined) return [];
  const joined = cut.panels.length > 1;
  const next = `start each length at the same place in it, ${len(cut.repeatLengthMm)} after the one before`;
  return [
    `The pattern repeats every ${len(repeat.verticalMm)}. Find where a repeat begins, lay that at the end of the bolt, and make the first cut ${nearestMark(cut.startWasteMm, resolved.units.ruler) > 0 ? `${len(cut.startWasteMm)} from there` : "there"}: then the motif falls where it is drawn.`,
    ...(joined ? [`Then ${next}.`] : []),
    ...(repeat.match === "half-drop" && joined && dropsByHalf(cut)
      ? [
          `It drops by half: cut the middle and every piece that goes with it first, move on by half a repeat, ${len(repeat.verticalMm / 2)}, then cut the others.`,
        ]
      : []),
  ];
}

/** Whether the pieces begin at two places of the repeat. */
function dropsByHalf({ lays, repeatMm }: LayerCut): boolean {
  if (repeatMm === undefined) return false;
  const first = lays[0]?.yMm ?? 0;
  return lays.some(({ yMm }) => {
    const steps = (yMm - first) / repeatMm;
    return Math.abs(steps - Math.round(steps)) > 0.25;
  });
}

/** Pieces that were cut large for the shrinkage still to come. */
function trim(bench: Bench): Step[] {
  const { cloth, len, shrunk } = bench;
  const shrinking = cloth.layers.filter((cut) => cut.makeUp.some((part) => part.label === "shrinkage"));
  if (shrinking.length === 0) return [];
  const sizes = shrinking.map((cut) => {
    const to = shrunk(cut);
    const widths = [...new Set(cut.panels.map((panel) => len(to.width(panel.widthMm))))];
    return `${LAYER_NAMES[cut.layer].toLowerCase()}, ${listed(widths)} wide and ${len(to.length(cut.cutLengthMm))} long`;
  });
  return [
    {
      id: "cut-trim",
      chapter: "cut",
      title: "Shrink the pieces, then trim",
      text: `Clean the pieces now as the shade will be cleaned later, dry them and press them. They should come down to: ${sizes.join("; ")}. Trim them to that, square.`,
      check:
        "No piece has come out smaller. If one has, enter the shrinkage that you found and cut it again.",
      caution: IRON,
      sheet: "cutting",
    },
  ];
}

function bars({ resolved, cloth, board, len }: Bench): Step[] {
  const ribs = cloth.ribLines.length;
  if (board.barLengthMm === undefined && ribs === 0) return [];
  return [
    {
      id: "cut-bar",
      chapter: "cut",
      title:
        ribs === 0
          ? "Saw the weight bar"
          : board.barLengthMm === undefined
            ? "Saw the ribs"
            : "Saw the weight bar and the ribs",
      text: sentences(
        board.barLengthMm !== undefined &&
          `Saw the weight bar, ${board.barName ?? resolved.bar.name}, to ${len(board.barLengthMm)}.`,
        ribs > 0 &&
          cloth.ribLengthMm !== undefined &&
          `Saw ${counted(ribs, "rib")}, ${resolved.rib.name}, to ${len(cloth.ribLengthMm)}.`,
        "File the ends smooth and put tape round them, so that they do not wear through the cloth.",
      ),
      caution: SAW,
    },
  ];
}

import type { Finding } from "../figures/index.ts";
import { settingPatch } from "../job/index.ts";
import { LAYER_NAMES, layerCannotBeCut } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { clothLengthText, lengthText } from "../units/index.ts";
import { counted, listed } from "../words/index.ts";
import type { ClothInput, ClothShade } from "./cloth-input.ts";
import type { CutStory } from "./cut-layer.ts";
import { seamThatFitsMm } from "./joins.ts";

/** Share that a cloth is taken to shrink, bow or skew by in a sentence where its own is not known. */
const USUAL_SHARE = 0.03;

/** What every finding about cloth has in common. */
export function clothBase(shade: ClothShade) {
  return { stage: "cloth", shadeId: shade.shadeId } as const;
}

/** What one layer makes difficult: width, joins, shrinkage, slant. */
export function judgeLayer({ shade, form }: ClothInput, story: CutStory): Finding[] {
  return [
    ...joins(shade, form, story),
    ...tooNarrow(shade, story),
    ...tooManyJoins(shade, story),
    ...shrinkage(shade, story),
    ...slant(shade, story),
  ];
}

function layerPath(shade: ClothShade, { cut }: CutStory): string {
  return `${shade.path}/shade/${cut.layer}`;
}

function joins(shade: ClothShade, { across, panel }: ClothInput["form"], story: CutStory): Finding[] {
  const { cut, shape } = story;
  const { at, equalDrops, columnDrops } = shape.joins;
  if (at === "none" || at === "cut-apart" || layerCannotBeCut(cut)) return [];
  const { units } = shade;
  const seams = listed(cut.seamsMm.map((mm) => lengthText(mm, units)));
  const moreWidths = (more: number) => (more === 0 ? "no more cloth" : `${counted(more, "width")} more`);
  const how =
    at === "under-columns"
      ? `under ring columns or pleats, where they show least, for ${moreWidths(Math.max(0, (columnDrops ?? 0) - equalDrops))} than equal parts would take`
      : columnDrops === undefined
        ? "equal parts at the sides: no columns or pleats lie where the cloth would reach them"
        : columnDrops > equalDrops
          ? `equal parts at the sides; under ring columns or pleats they would take ${moreWidths(columnDrops - equalDrops)}`
          : "equal parts at the sides";
  const instead =
    at === "equal-parts" && columnDrops !== undefined
      ? [
          {
            label: "Put the joins under columns",
            patch: settingPatch(shade, "hems", "joins", "under-columns"),
          },
        ]
      : at === "under-columns" && (columnDrops ?? 0) > equalDrops
        ? [{ label: "Join equal parts", patch: settingPatch(shade, "hems", "joins", "equal-parts") }]
        : [];
  return [
    {
      ...clothBase(shade),
      id: "cloth.joins",
      isChoice: true,
      severity: "note",
      path: layerPath(shade, story),
      text: `${LAYER_NAMES[cut.layer]}: ${cut.panels.length} panels are joined, with seams at ${seams} from the left edge${panel !== undefined ? " of the flat cloth at the hem" : across === "flat" ? "" : " of the flat cloth"}, never in the centre: ${how}.`,
      cite: cite("us-sewing-handbook", "full width centred, equal parts at each side"),
      remedies: instead,
    },
  ];
}

function tooNarrow(shade: ClothShade, story: CutStory): Finding[] {
  const { cut } = story;
  const { seamMm } = shade.making.hems;
  if (seamThatFitsMm(seamMm, cut.usableWidthMm) >= seamMm) return [];
  return [
    {
      ...clothBase(shade),
      id: "cloth.too-narrow",
      severity: "stop",
      path: layerPath(shade, story),
      text: `${cut.clothName} is ${lengthText(cut.usableWidthMm, shade.units)} wide, too narrow for seams of ${lengthText(seamMm, shade.units)}.`,
      cite: cite("our-choice"),
      remedies: [],
    },
  ];
}

function tooManyJoins(shade: ClothShade, story: CutStory): Finding[] {
  const { cut } = story;
  if (!layerCannotBeCut(cut)) return [];
  return [
    {
      ...clothBase(shade),
      id: "cloth.too-many-joins",
      severity: "stop",
      path: layerPath(shade, story),
      text: `${LAYER_NAMES[cut.layer]}: ${cut.panels.length} panels of ${cut.clothName} would be joined. Choose a wider cloth.`,
      cite: cite("our-choice"),
      remedies: [],
    },
  ];
}

function shrinkage(shade: ClothShade, story: CutStory): Finding[] {
  const { cut, cloth } = story;
  const along = cut.turned ? cloth.shrinkWidth : cloth.shrinkLength;
  if (along !== undefined || cut.layer === "interlining") return [];
  return [
    {
      ...clothBase(shade),
      id: "cloth.shrinkage-unknown",
      severity: "unproven",
      path: layerPath(shade, story),
      text: `${LAYER_NAMES[cut.layer]}: how much ${cut.clothName} still shrinks is not given. Steam or wash it before cutting, or allow 3 %: ${lengthText(USUAL_SHARE * cut.cutLengthMm, shade.units)} on the length.`,
      cite: cite("astm-d3691"),
      remedies: [],
    },
  ];
}

/** A printed or woven pattern shows where the weft does not run square; plain cloth is squared on a thread. */
function slant(shade: ClothShade, story: CutStory): Finding[] {
  const { cut, cloth } = story;
  if (cloth.repeat === undefined || cloth.bowShare !== undefined || cloth.skewShare !== undefined) return [];
  const widest = Math.max(...cut.panels.map((panel) => Math.min(panel.widthMm, cut.usableWidthMm)));
  return [
    {
      ...clothBase(shade),
      id: "cloth.slant-unknown",
      severity: "unproven",
      path: layerPath(shade, story),
      text: `${LAYER_NAMES[cut.layer]}: bow and skew of ${cut.clothName} are not given, so none is allowed for. Lay a straight edge across it: each 3 % of the width would take ${lengthText(USUAL_SHARE * widest, shade.units)} off the length of a piece that is squared.`,
      cite: cite("astm-d3882"),
      remedies: [],
    },
  ];
}

/** Turned sideways or not, what that saves and what it costs, and what speaks against it. */
export function judgeTurn(shade: ClothShade, story: CutStory): Finding[] {
  const { cut, turn, cloth } = story;
  const { asked, against, uprightMm, turnedMm, uprightPanels } = turn;
  const name = LAYER_NAMES[cut.layer];
  const [group, key] =
    cut.layer === "face" ? (["pattern", "railroad"] as const) : (["lining", "railroad"] as const);
  const patch = (value: string) => settingPatch(shade, group, key, value);
  const base = { ...clothBase(shade), path: layerPath(shade, story), cite: cite("geometry") };
  const length = (mm: number) => clothLengthText(mm, shade.units);
  if (asked === "always" && turnedMm === undefined) {
    return [
      {
        ...base,
        id: "cloth.railroad-too-narrow",
        severity: "fix",
        text: `${name}: asked for sideways, but ${cut.clothName} is ${lengthText(cut.usableWidthMm, shade.units)} wide and the layer is cut ${lengthText(cut.cutLengthMm, shade.units)} long. It is cut upright.`,
        remedies: [{ label: "Let the planner choose", patch: patch("auto") }],
      },
    ];
  }
  if (cut.turned) {
    const differs = uprightMm - (turnedMm ?? uprightMm);
    const saves = differs >= 0 ? `${length(differs)} less cloth` : `${length(-differs)} more cloth`;
    const seams = uprightPanels > 1 ? `and none of the ${uprightPanels - 1} joins` : "and no join less";
    const upright = { label: "Cut it upright", patch: patch("never") };
    return [
      ...(against === undefined ? [] : [sideways(shade, story, upright)]),
      {
        ...base,
        id: "cloth.railroaded",
        severity: "note",
        text: `${name}: ${cut.clothName} is turned sideways, its length across the shade: ${saves} than upright ${seams}. Its weave runs the other way than on a shade that is cut upright.`,
        remedies: [upright],
      },
    ];
  }
  if (uprightPanels === 1 || turnedMm === undefined || asked === "never" || cloth.nap === true) return [];
  const more = turnedMm - uprightMm;
  const price = more > 0 ? `${length(more)} more` : `${length(-more)} less`;
  const because =
    against === "pattern"
      ? "its pattern would lie on its side"
      : against === "direction"
        ? "its top would point sideways"
        : "that takes more cloth";
  return [
    {
      ...base,
      id: "cloth.could-railroad",
      severity: "note",
      text: `${name}: turned sideways ${cut.clothName} would do without a join, for ${price} cloth. It is cut upright, since ${because}.`,
      remedies: [{ label: "Turn it sideways", patch: patch("always") }],
    },
  ];
}

function sideways(shade: ClothShade, story: CutStory, upright: Finding["remedies"][number]): Finding {
  const { cut, turn } = story;
  const why = {
    nap: "Its pile then strokes sideways, and looks another shade from either side of the room",
    direction: "Its pattern has a top, which then points sideways",
    pattern: "Its pattern then lies on its side",
  }[turn.against ?? "pattern"];
  return {
    ...clothBase(shade),
    id: "cloth.railroad-sideways",
    severity: turn.against === "pattern" ? "note" : "fix",
    path: layerPath(shade, story),
    text: `${LAYER_NAMES[cut.layer]}: ${cut.clothName} is turned sideways. ${why}.`,
    cite: cite("our-choice"),
    remedies: [upright],
  };
}

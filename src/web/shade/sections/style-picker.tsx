import { memo, useMemo, useRef } from "react";
import {
  drawStyleSample,
  type Facet,
  facesAsImages,
  type Placed,
  place,
  svgNodes,
} from "../../../drawing/index.ts";
import { STYLE_NAMES, STYLES, type StyleKind } from "../../../job/index.ts";
import { useNear } from "../../job/use-near.ts";
import { useStylePictures } from "../../picture/use-style-pictures.ts";
import { SvgElement } from "../../sheets/svg-node.tsx";
import { editField, useCanEdit, useField } from "../../state/fields.ts";
import { useShade } from "../shade-context.tsx";
import { STYLE_WORDS, styleTitle } from "./style-words.ts";
import "./style-picker.css";

const BOX = { maxWidthMm: 26, maxHeightMm: 31 };

/** Every style in small, drawn by the same hand as the sheets. */
export function StylePicker() {
  const { plan, pointer } = useShade();
  const mine = useCanEdit();
  const fieldset = useRef<HTMLFieldSetElement>(null);
  const near = useNear(fieldset);
  const pictures = useStylePictures(plan, near);
  const chosen = useField(`${pointer}/shade/style`);
  return (
    <fieldset ref={fieldset} className="style-picker" disabled={!mine}>
      <legend>Style</legend>
      <div className="style-cards">
        {STYLES.map((style) => (
          <label key={style} className="style-card">
            <input
              type="radio"
              name={`${pointer}/shade/style`}
              value={style}
              checked={style === chosen}
              onChange={() => editField(`${pointer}/shade/style`, style, `Style: ${STYLE_NAMES[style]}`)}
            />
            <Sample style={style} faces={pictures.get(style)} />
            <span>{styleTitle(style)}</span>
          </label>
        ))}
      </div>
      <p className="style-words">{STYLE_WORDS[plan.style]}</p>
    </fieldset>
  );
}

/** A sample in lines never changes: it is placed once, when it is first shown. */
const samples = new Map<StyleKind, Placed>();

function sampleOf(style: StyleKind): Placed {
  const known = samples.get(style);
  if (known) return known;
  const placed = place(drawStyleSample(style), BOX);
  samples.set(style, placed);
  return placed;
}

function pictureOf(style: StyleKind, faces: readonly Facet[]): Placed {
  const picture = { kind: "facets" as const, role: "picture" as const, faces };
  return place({ ...drawStyleSample(style), primitives: [picture] }, BOX);
}

/** In lines at once, then as its cloth hangs. */
const Sample = memo(function Sample({
  style,
  faces,
}: {
  style: StyleKind;
  faces: readonly Facet[] | undefined;
}) {
  const placed = useMemo(
    () => (faces === undefined ? sampleOf(style) : pictureOf(style, faces)),
    [style, faces],
  );
  const nodes = useMemo(() => facesAsImages(svgNodes(placed).children ?? [], placed), [placed]);
  return (
    <svg
      viewBox={`0 0 ${placed.widthMm} ${placed.heightMm}`}
      aria-hidden="true"
      data-drawn={faces === undefined ? "lines" : "picture"}
    >
      {nodes.map((node, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a drawing is painted in order; its items have no names
        <SvgElement key={at} node={node} />
      ))}
    </svg>
  );
});

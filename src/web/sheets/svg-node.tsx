import { createElement, memo, type ReactElement } from "react";
import type { SvgNode } from "../../drawing/index.ts";

/** A node of a drawing as React sees it. Text is text: nothing in a name can become markup. */
export const SvgElement = memo(function SvgElement({ node }: { node: SvgNode }) {
  return elementOf(node, 0);
});

function elementOf({ tag, attrs, children, text }: SvgNode, key: number): ReactElement {
  return createElement(tag, { ...attrs, key }, text ?? children?.map(elementOf));
}

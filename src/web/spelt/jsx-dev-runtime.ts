import { jsxDEV as element, type JSXSource } from "react/jsx-dev-runtime";
import { speltProps } from "./spelt-props.ts";

export { Fragment, type JSX } from "react/jsx-dev-runtime";

/** As `jsx`, with what is told while developing. */
export const jsxDEV: typeof element = (type, props, key, isStatic, source?: JSXSource, self?: unknown) =>
  element(type, speltProps(props), key, isStatic, source, self);

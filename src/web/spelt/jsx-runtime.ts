import { jsx as element, jsxs as elements } from "react/jsx-runtime";
import { speltProps } from "./spelt-props.ts";

/**
 * Every word of a screen goes through here on its way to React (`jsxImportSource`), so that there is one place where it
 * is put into the English of its reader.
 */
export { Fragment, type JSX } from "react/jsx-runtime";

export const jsx: typeof element = (type, props, key) => element(type, speltProps(props), key);
export const jsxs: typeof elements = (type, props, key) => elements(type, speltProps(props), key);

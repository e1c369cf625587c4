import { spellerOf } from "../job/index.ts";
import type { Plan } from "../plan/index.ts";
import { speltTexts } from "./spelt.ts";

/** The plan as JSON, shade by shade: the text of two thousand of them at once would fill the memory. */
export async function writePlanJson(
  { shades, ...rest }: Plan,
  write: (chunk: Uint8Array) => Promise<void>,
): Promise<void> {
  const spelt = speltTexts(spellerOf(rest.english));
  const encoder = new TextEncoder();
  const say = (text: string) => write(encoder.encode(text));
  await say(`${JSON.stringify(rest, spelt, 2).slice(0, -2)},\n  "shades": [`);
  for (const [i, shade] of shades.entries()) {
    const text = JSON.stringify(shade, spelt, 2).replaceAll("\n", "\n    ");
    await say(`${i === 0 ? "" : ","}\n    ${text}`);
  }
  await say(shades.length === 0 ? "]\n}\n" : "\n  ]\n}\n");
}

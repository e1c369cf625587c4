/** Lower-case letters and digits without their accents, all else a hyphen: `Café, 2nd floor` → `cafe-2nd-floor`. */
export function slugOf(text: string): string {
  return text
    .normalize("NFKD")
    .toLowerCase()
    .replace(/\p{M}+/gu, "")
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "");
}

import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";

/**
 * `npx tsx scripts/gallery-page.ts` writes `out/gallery.html`: every kept drawing, with the changed one beside it
 * where there is one.
 */
const OUTPUT = new URL("../test/gallery/output/", import.meta.url);
const CHANGED = new URL("../test/gallery/changed/", import.meta.url);
const PAGE = new URL("../out/gallery.html", import.meta.url);

function figure(folder: URL, file: string, words: string): string {
  const svg = readFileSync(new URL(file, folder), "utf8");
  return `<figure><figcaption>${words}</figcaption>${svg}</figure>`;
}

const rows = readdirSync(OUTPUT)
  .sort()
  .map((file) => {
    const name = file.replace(/\.svg$/, "");
    const isChanged = existsSync(new URL(file, CHANGED));
    const changed = isChanged ? figure(CHANGED, file, `${name}, changed`) : "";
    return `<section id="${name}">${figure(OUTPUT, file, name)}${changed}</section>`;
  });

mkdirSync(new URL("./", PAGE), { recursive: true });
writeFileSync(
  PAGE,
  `<!doctype html><meta charset="utf-8"><title>Gallery</title>
<style>
  body { font-family: "Source Sans 3", sans-serif; margin: 24px; background: #ddd; }
  section { display: flex; flex-wrap: wrap; gap: 24px; margin-bottom: 24px; }
  figure { margin: 0; } figcaption { padding: 4px 0; } svg { max-width: 100%; height: auto; }
</style>
${rows.join("\n")}
`,
);
console.log(`out/gallery.html: ${rows.length} drawings`);

import { chromium } from "playwright-core";
import { readFileSync } from "node:fs";
const [out, width, ...files] = process.argv.slice(2);
const b = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox"] });
const p = await b.newPage({ viewport: { width: Number(width), height: 800 } });
await p.setContent("<body style='background:#fff;margin:4px;display:grid;grid-template-columns:repeat(auto-fill,minmax(" + (process.env.CELL ?? 300) + "px,1fr));gap:6px;font:11px sans-serif'>" + files.map(f => `<div style='border:1px solid #ccc'>${f.split("/").pop()}<div>${readFileSync(f,"utf8").replace(/<\?xml[^>]*>/,"").replace(/<svg /,"<svg style='width:100%;height:auto;max-height:"+(process.env.MAXH ?? 400)+"px' ")}</div></div>`).join("") + "</body>");
await p.screenshot({ path: out, fullPage: true }); await b.close();

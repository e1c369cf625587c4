import { drawShadeTemplates, place } from "../../src/drawing/index.ts";
import { plan } from "../../src/plan/index.ts";
import { jobWith } from "../job-with.ts";
import { draws } from "./gallery.ts";
import { PAGE } from "./papers.ts";

const templates = (window: Parameters<typeof jobWith>[0]) => {
  const planned = plan(jobWith(window, { units: { system: "metric", ruler: "1 mm" } }));
  const [shade] = planned.shades;
  if (shade === undefined) throw new Error("invalid gallery job: no shade");
  return (id: string) => {
    const found = drawShadeTemplates(planned, shade).find((one) => one.id === id);
    if (found === undefined) throw new Error(`invalid template: ${id}`);
    return place(found, PAGE);
  };
};

const arched = { widthsMm: [900], heightsMm: [1500], head: { kind: "arched" as const, fallMm: 250 } };
const sloping = { ...arched, head: { kind: "angled" as const, fallMm: 250 } };

draws("template-corner", () =>
  templates({
    opening: { widthsMm: [900], heightsMm: [1500] },
    shade: { making: { hems: { corner: "mitred" } } },
  })("template-corner"),
);
draws("template-head-arched", () =>
  templates({ opening: arched, shade: { mount: "outside" } })("template-head"),
);
draws("template-head-angled", () =>
  templates({ opening: sloping, shade: { mount: "outside" } })("template-head"),
);
draws("template-pleat", () => templates({ shade: { style: "tailed", mount: "outside" } })("template-pleat"));
draws("template-scallop", () =>
  templates({ shade: { style: "austrian", mount: "outside" } })("template-scallop"),
);

import { expect, it } from "vitest";
import { handShade } from "../../../test/hand-shade.ts";
import { expectNear } from "../../../test/near.ts";
import { workingOf } from "../../figures/index.ts";
import { CATALOGUE } from "../../job/index.ts";
import { handPull, handPullN, pullWithTorque } from "./hand-pull.ts";
import { hardHandPull } from "./hard-hand-pull.ts";

const { resolved } = handShade({ job: { units: { system: "metric", ruler: "1 mm" } } });
const TORQUES = { heldLoweredN: 10, loweredNm: 0.3, raisedNm: 0.6 };

it("a hand pulls by the larger torque over radius, ratio and what is passed on; the maker's share where there is one", () => {
  const hand = { label: "Pull", radiusMm: 20, radiusLabel: "radius" };
  const stated = handPull(TORQUES, { ratio: 2, efficiency: 0.5 }, hand);
  // 0.6 N·m over 0.02 m, 2 to 1, half of it lost.
  expectNear(stated.value, 30, 1e-12);
  expect(workingOf(stated).cite).toMatchObject({ source: "maker", at: expect.stringMatching(/drive/) });
  const usual = handPull({ ...TORQUES, loweredNm: 0.8 }, { ratio: 1 }, hand);
  expectNear(usual.value, 0.8 / 0.02 / 0.8, 1e-12);
  expect(workingOf(usual).cite.source).toBe("from-memory");
  expectNear(handPullN(TORQUES, { ratio: 2 }, 20), 0.6 / 0.02 / 0.8 / 2, 1e-12);
});

it("its pull follows the torque in proportion, and a drive holds by itself", () => {
  const at = pullWithTorque(24, TORQUES);
  expect([at(0), at(0.3), at(0.6)]).toEqual([
    { pullN: 0, holdN: 0 },
    { pullN: 12, holdN: 0 },
    { pullN: 24, holdN: 0 },
  ]);
  expect(pullWithTorque(24, { ...TORQUES, raisedNm: 0.1 })(0.15)).toEqual({ pullN: 12, holdN: 0 });
  expect(pullWithTorque(0, { heldLoweredN: 0, loweredNm: 0, raisedNm: 0 })(0)).toEqual({
    pullN: 0,
    holdN: 0,
  });
});

it("a hard one is told with the figure that it comes from, where it is pulled, and the lighter bars", () => {
  const bars = [{ id: "wood", name: "Wood", material: "wood", widthMm: 20, thicknessMm: 3, stockMm: 2000 }];
  const bar = { id: "steel", name: "Steel", material: "steel", widthMm: 20, thicknessMm: 3, stockMm: 2000 };
  const shade = { ...resolved, bar, parts: { ...CATALOGUE, bars } };
  const judge = (pullN: number) =>
    hardHandPull({ shade } as never, { pullN } as never, "on the loop").map((one) => ({
      ...one,
      text: one.text.replaceAll("\u00a0", " "),
    }));
  expect(judge(22)).toEqual([]);
  expect(judge(50)).toMatchObject([
    {
      ...{ stage: "lift", id: "lift.hard-pull", severity: "fix", figures: ["lift.pull"] },
      path: `${resolved.path}/shade/making/lift/drive`,
      text: expect.stringMatching(
        /^Raising it takes about 50 N on the loop\. .* A drive with a higher ratio/,
      ),
      remedies: [
        {
          label: "Use the lighter “Wood”",
          patch: [{ path: expect.stringMatching(/board\/bar$/), value: "wood" }],
        },
      ],
    },
  ]);
});

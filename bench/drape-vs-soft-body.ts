import initJolt from "jolt-physics";
import { noContacts } from "../src/mechanics/net/net.ts";
import { NetBuilder } from "../src/mechanics/net/net-builder.ts";
import { netPattern } from "../src/mechanics/net/net-matrix.ts";
import { settleNet, softened } from "../src/mechanics/net/settle-net.ts";
import { bestOf } from "../src/mechanics/solve/outcome.ts";
import { type Figure, median, samplesOf } from "./figure.ts";

/** Heavy elastica clamped level, λ = w·L³/B = 8: reach and drop of its free end, in lengths. */
const LAMBDA = 8;
const REACH = 0.72442473;
const DROP = 0.64063072;

interface Trial {
  error: number;
  ms: number;
}

function errorOf(reach: number, drop: number): number {
  return Math.max(Math.abs(reach / REACH - 1), Math.abs(drop / DROP - 1));
}

/**
 * A hanging strip brought to rest by a general soft-body engine (position-based, MIT), as coarse as it may be, beside our
 * own net: how many times longer the engine takes for the same error. Of each of its errors the net takes the number of
 * links with which it is no farther off; the smallest of these ratios is told.
 */
export async function drapeVsSoftBody(): Promise<Figure> {
  const own = [4, 6, 8, 10, 14, 20, 28].map(ownTrial);
  const engine = await engineTrials();
  const ratios = engine.flatMap(({ error, ms }) => {
    const asGood = own.find((one) => one.error <= error);
    return asGood === undefined ? [] : [ms / asGood.ms];
  });
  return {
    name: "drape.vs-soft-body",
    value: Math.min(...ratios),
    unit: "times",
    goal: 10,
    better: "higher",
  };
}

const LENGTH_MM = 100;

function ownTrial(links: number): Trial {
  let end: [number, number] = [0, 0];
  const ms = median(
    samplesOf(
      () => {
        end = ownStrip(links);
      },
      { warm: 20, times: 15 },
    ),
  );
  return { error: errorOf(...end), ms };
}

function ownStrip(links: number): [reach: number, drop: number] {
  const h = LENGTH_MM / links;
  const weight = LAMBDA / LENGTH_MM ** 3;
  const builder = new NetBuilder(links + 1);
  const x = new Float64Array(3 * (links + 1));
  const membrane = 1e5 * Math.max(weight * LENGTH_MM, 1 / LENGTH_MM ** 2);
  for (let i = 0; i <= links; i++) {
    x[3 * i] = i * h;
    builder.load(i, 1, weight * h * (i === 0 || i === links ? 0.5 : 1));
    if (i > 0) builder.thread(i - 1, i, h, membrane / h, 1);
    if (i > 0 && i < links) builder.bend([i - 1, i, i + 1], [h, h], h);
  }
  builder.clampBend(0, 1, h, [1, 0, 0], h / 2);
  builder.hold(0, [0, 1, 2]);
  const net = builder.build(noContacts());
  const pattern = netPattern(net);
  let at: Float64Array = x;
  for (const [share, sinkMm] of [
    [1e-3, 1e-2],
    [0.03, 1e-2],
    [1, 1e-4],
  ] as const)
    at = bestOf(settleNet(softened(net, share), pattern, at, { most: 120, sinkMm, reachMm: 30 }));
  return [(at[3 * links] as number) / LENGTH_MM, (at[3 * links + 1] as number) / LENGTH_MM];
}

const SECONDS = 6;
const AT_REST = 0.005;

/** The engine with the settings that served it best here: steps, rounds a step and links. */
async function engineTrials(): Promise<Trial[]> {
  const jolt = await initJolt();
  const settings = new jolt.JoltSettings();
  const pairs = new jolt.ObjectLayerPairFilterTable(1);
  const layers = new jolt.BroadPhaseLayerInterfaceTable(1, 1);
  layers.MapObjectToBroadPhaseLayer(0, new jolt.BroadPhaseLayer(0));
  settings.mObjectLayerPairFilter = pairs;
  settings.mBroadPhaseLayerInterface = layers;
  settings.mObjectVsBroadPhaseLayerFilter = new jolt.ObjectVsBroadPhaseLayerFilterTable(layers, 1, pairs, 1);
  const world = new jolt.JoltInterface(settings);
  return [
    { links: 8, rounds: 20, step: 1 / 60 },
    { links: 10, rounds: 40, step: 1 / 60 },
    { links: 14, rounds: 40, step: 1 / 120 },
    { links: 20, rounds: 80, step: 1 / 60 },
  ].map((how) => {
    const runs = Array.from({ length: 3 }, () => engineStrip(jolt, world, how));
    return runs.reduce((best, run) => (run.ms < best.ms ? run : best));
  });
}

type Engine = Awaited<ReturnType<typeof initJolt>>;

/** A ladder of two rails, a metre long and a kilogram heavy; hinges as stiff as the strip, the clamp half a link. */
function engineStrip(
  jolt: Engine,
  world: InstanceType<Engine["JoltInterface"]>,
  { links, rounds, step }: { links: number; rounds: number; step: number },
): Trial {
  const h = 1 / links;
  const stiff = 9.81 / LAMBDA / h;
  const shared = new jolt.SoftBodySharedSettings();
  const at = (i: number, rail: number) => 2 * (i + 1) + rail;
  const vertex = new jolt.SoftBodySharedSettingsVertex();
  for (let i = -1; i <= links; i++)
    for (const rail of [0, 1]) {
      vertex.mPosition = new jolt.Float3(i * h, 0, 0.1 * rail);
      vertex.mInvMass = i <= 0 ? 0 : 2 / (h * (i === links ? 0.5 : 1));
      shared.mVertices.push_back(vertex);
    }
  for (let i = -1; i < links; i++) {
    shared.AddFace(new jolt.SoftBodySharedSettingsFace(at(i, 0), at(i + 1, 0), at(i + 1, 1), 0));
    shared.AddFace(new jolt.SoftBodySharedSettingsFace(at(i, 0), at(i + 1, 1), at(i, 1), 0));
  }
  for (let i = 0; i < links; i++) {
    for (const [a, b] of [
      [at(i, 0), at(i + 1, 0)],
      [at(i, 1), at(i + 1, 1)],
      [at(i + 1, 0), at(i + 1, 1)],
      [at(i, 0), at(i + 1, 1)],
      [at(i, 1), at(i + 1, 0)],
    ] as const)
      shared.mEdgeConstraints.push_back(new jolt.SoftBodySharedSettingsEdge(a, b, 0));
    const compliance = 2 / (stiff * (i === 0 ? 2 : 1));
    for (const rail of [0, 1])
      shared.mDihedralBendConstraints.push_back(
        new jolt.SoftBodySharedSettingsDihedralBend(
          ...([at(i, 0), at(i, 1), at(i - 1, rail), at(i + 1, rail), compliance] as const),
        ),
      );
  }
  shared.CalculateEdgeLengths();
  shared.CalculateBendConstraintConstants();
  shared.Optimize();
  const how = new jolt.SoftBodyCreationSettings(
    ...([shared, new jolt.RVec3(0, 0, 0), jolt.Quat.prototype.sIdentity(), 0] as const),
  );
  how.mNumIterations = rounds;
  how.mLinearDamping = 3;
  how.mUpdatePosition = false;
  how.mAllowSleeping = false;
  const bodies = world.GetPhysicsSystem().GetBodyInterface();
  const body = bodies.CreateSoftBody(how);
  bodies.AddBody(body.GetID(), jolt.EActivation_Activate);
  const motion = jolt.castObject(body.GetMotionProperties(), jolt.SoftBodyMotionProperties);
  const seen: { ms: number; reach: number; drop: number }[] = [];
  const from = performance.now();
  for (let k = 0; k < Math.round(SECONDS / step); k++) {
    world.Step(step, 1);
    const place = motion.GetVertex(at(links, 0)).mPosition;
    seen.push({ ms: performance.now() - from, reach: place.GetX(), drop: -place.GetY() });
  }
  bodies.RemoveBody(body.GetID());
  bodies.DestroyBody(body.GetID());
  const end = seen.at(-1) ?? { ms: Number.NaN, reach: Number.NaN, drop: Number.NaN };
  const moving = seen.findLastIndex(
    ({ reach, drop }) => Math.abs(reach - end.reach) > AT_REST || Math.abs(drop - end.drop) > AT_REST,
  );
  return { error: errorOf(end.reach, end.drop), ms: seen[moving + 1]?.ms ?? end.ms };
}

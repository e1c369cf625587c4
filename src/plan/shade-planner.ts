import { ALIGN_READS, judgeMotif, lineFigures, type RoomWindow } from "../align/index.ts";
import { BOARD_READS, planBoard } from "../board/index.ts";
import { CLOTH_READS, MASS_READS, planCloth, planMass } from "../cloth/index.ts";
import { COST_READS, type CostInput, planCost, type ShadeCost } from "../cost/index.ts";
import {
  columnsAsMeasured,
  EXISTING_READS,
  gridAsMeasured,
  massAsWeighed,
  planExisting,
} from "../existing/index.ts";
import {
  bySeverity,
  type Figure,
  type Finding,
  figureId,
  lazy,
  type StageResult,
  withRemedies,
  workingOf,
} from "../figures/index.ts";
import { clothFeel, FOLDS_READS, planFolds } from "../folds/index.ts";
import { type ResolvedRates, type ResolvedShade, withParents } from "../job/index.ts";
import { chooseLiftParts, LIFT_PARTS_READS, LIFT_READS, type LiftParts, planLift } from "../lift/index.ts";
import { MEASURE_READS, measure } from "../measure/index.ts";
import {
  type CarefulLift,
  childTag,
  planCautions,
  proposedLift,
  type ReviewInput,
  reviewShade,
  SAFETY_READS,
} from "../safety/index.ts";
import type {
  ClothPlan,
  Column,
  ExistingPlan,
  Form,
  Grid,
  Lift,
  Mass,
  SafetyReview,
  Size,
} from "../shade-plan/index.ts";
import { planSteps } from "../steps/index.ts";
import {
  type GridInput,
  HEADRAIL_READS,
  headrailNeeded,
  type LaidGrid,
  LINE_READS,
  type LineAskInput,
  STYLE_MODULES,
} from "../styles/index.ts";
import { type AlignedShade, followRoom } from "./align-room.ts";
import { remember } from "./memo/remember.ts";
import { shareEqual } from "./memo/share-equal.ts";
import { partRead, stage } from "./memo/stage.ts";
import type { ShadePlan } from "./plan-types.ts";

export interface PlannedShade {
  shade: ShadePlan;
  cost: () => ShadeCost;
}

interface Measured {
  resolved: ResolvedShade;
  size: Size;
}
interface Laid extends Measured {
  grid: Grid;
  form: Form;
}
/**
 * Plans one shade, stage by stage in the order of the work: measure, shape, cloth, folds, lift, board, safety, cost. Each
 * stage is remembered: where nothing that it reads has changed since the last plan, its figures stand.
 */
export class ShadePlanner {
  readonly #partMeasured = partRead(MEASURE_READS);
  readonly #partFolded = partRead(FOLDS_READS);
  readonly #partTaken = partRead(LIFT_PARTS_READS);
  readonly #partStrung = partRead(LIFT_READS);
  readonly #partReviewed = partRead(SAFETY_READS);

  readonly #partExisting = partRead(EXISTING_READS);
  readonly #columnsAsMeasured = stage(columnsAsMeasured);
  readonly #gridAsMeasured = stage(gridAsMeasured);
  readonly #massAsWeighed = stage(massAsWeighed);
  readonly #existing = stage(planExisting);

  readonly #measure = stage(measure);
  /** The stages of the style that the shade has now. */
  readonly #styled = remember(stagesOfStyle);
  readonly #liftParts = stage(chooseLiftParts);
  readonly #partHeaded = partRead(HEADRAIL_READS);
  readonly #headrail = stage(headrailNeeded);
  readonly #line = stage(
    ({ size, grid, layout }: Pick<Laid, "size" | "grid"> & Pick<AlignedShade, "layout">) => ({
      values: undefined,
      findings: [],
      workings: layout === undefined ? [] : lineFigures({ layout, size, grid }),
    }),
  );
  readonly #partCut = partRead(CLOTH_READS);
  readonly #cloth = stage(planCloth);
  readonly #partWeighed = partRead(MASS_READS);
  readonly #mass = stage(planMass);
  readonly #folds = stage(planFolds);
  readonly #lift = stage(planLift);
  readonly #partMounted = partRead(BOARD_READS);
  readonly #board = stage(planBoard);
  readonly #partCosted = partRead(COST_READS);
  /** No stage reads these two, so they are made when someone does. */
  readonly #review = remember((input: ReviewInput) => lazy(() => reviewShade(input)));
  readonly #cost = remember((input: CostInput) => lazy(() => planCost(input)));
  readonly #partAligned = partRead(ALIGN_READS);
  readonly #partAsking = partRead(LINE_READS);
  readonly #asked = remember(askedOf);
  readonly #followed = remember(({ resolved, aligned }: { resolved: ResolvedShade; aligned: AlignedShade }) =>
    followRoom(resolved, aligned),
  );
  readonly #assemble = remember(assemble);
  #aligned: AlignedShade | undefined;

  /** What the shade asks of the line of its room, and how it would be made by itself. */
  ask(resolved: ResolvedShade): RoomWindow {
    const { size, columns, headrail } = this.#taken(resolved);
    const headrailNeededMm = headrail.values;
    const { style } = resolved;
    const { grid } = this.#styled({ style }).ownGrid(resolved, { size, columns, headrailNeededMm }).values;
    return this.#asked({
      style,
      shade: this.#partAligned(resolved),
      asking: this.#partAsking(resolved),
      size,
      grid,
      headrailNeededMm,
      hangs: resolved.existing !== undefined,
    });
  }

  /** The whole shade. `aligned` is what its room tells it; `resolved` is the shade by itself. */
  plan(
    resolved: ResolvedShade,
    rates: ResolvedRates,
    careful: CarefulLift,
    aligned: AlignedShade = BY_ITSELF,
  ): PlannedShade {
    this.#aligned = shareEqual(this.#aligned, aligned);
    const shade = this.#followed({ resolved, aligned: this.#aligned });
    return this.#planAsTold(shade, resolved, rates, careful, this.#aligned);
  }

  #taken(resolved: ResolvedShade) {
    const measured = this.#measure(this.#partMeasured(resolved));
    const size = measured.values;
    const existing = this.#partExisting(resolved);
    const planned = this.#styled({ style: resolved.style }).columns(resolved, size);
    const inColumns = this.#columnsAsMeasured({ shade: existing, size, planned });
    const columns = inColumns.values;
    const liftParts = this.#liftParts({ shade: this.#partTaken(resolved), size, columns });
    const headrail = this.#headrail({ shade: this.#partHeaded(resolved), liftParts: liftParts.values });
    return { measured, size, inColumns, columns, liftParts, headrail };
  }

  #reviewed(resolved: ResolvedShade, alone: ResolvedShade) {
    const { measured, size, inColumns, columns, liftParts, headrail } = this.#taken(resolved);
    const styled = this.#styled({ style: resolved.style });
    const lay = resolved.making.fold === alone.making.fold ? styled.ownGrid : styled.grid;
    const existing = this.#partExisting(resolved);
    const laid = this.#gridAsMeasured({
      shade: existing,
      size,
      planned: lay(resolved, { size, columns, headrailNeededMm: headrail.values }),
    });
    const { grid, form } = laid.values;
    const cut = this.#cloth({ shade: this.#partCut(resolved), size, grid, form });
    const cloth = cut.values;
    const weighed = this.#massAsWeighed({
      shade: existing,
      planned: this.#mass({ shade: this.#partWeighed(resolved), grid, form, cloth }),
    });
    const mass = weighed.values;
    const strung = this.#lift({
      ...{ shade: this.#partStrung(resolved), size, grid, form, mass },
      liftParts: liftParts.values,
    });
    const lift = strung.values;
    const worked = this.#existing({
      shade: existing,
      ...{ size, grid, mass, lift },
      headrailNeededMm: headrail.values,
    });
    const reviewed = this.#review({ shade: this.#partReviewed(resolved), size, grid, form, mass, lift });
    return { measured, inColumns, liftParts, headrail, laid, cut, weighed, strung, worked, reviewed };
  }

  #planAsTold(
    resolved: ResolvedShade,
    alone: ResolvedShade,
    rates: ResolvedRates,
    careful: CarefulLift,
    aligned: AlignedShade,
  ): PlannedShade {
    const stages = this.#reviewed(resolved, alone);
    const size = stages.measured.values;
    const { grid, form } = stages.laid.values;
    const cloth = stages.cut.values;
    const mass = stages.weighed.values;
    const lift = stages.strung.values;
    const line = this.#line({ size, grid, layout: aligned.layout });
    const folded = this.#folds({ shade: this.#partFolded(resolved), size, grid, form, mass });
    const folds = folded.values;
    const mounted = this.#board({
      shade: this.#partMounted(resolved),
      ...{ size, grid, form, mass, lift, folds },
    });
    const board = mounted.values;
    const cost = this.#cost({
      shade: this.#partCosted(resolved),
      ...{ size, grid, form, cloth, lift, board, rates },
      existing: stages.worked.values,
    });
    return this.#assemble({
      resolved,
      careful,
      aligned,
      ...stages,
      ...{ line, folded, mounted, cost },
    });
  }
}

const BY_ITSELF: AlignedShade = { findings: [] };

/** What a style lays, remembered: as the shade would be by itself, and as its room has it. */
function stagesOfStyle({ style }: Pick<ResolvedShade, "style">) {
  const { reads, columns, grid } = STYLE_MODULES[style];
  const laying = () => {
    const part = partRead(reads.grid);
    const lay = stage(grid);
    return (shade: ResolvedShade, at: Omit<GridInput<unknown>, "shade">) =>
      lay({ shade: part(shade), ...at });
  };
  const part = partRead(reads.columns);
  const inColumns = stage(columns);
  return {
    columns: (shade: ResolvedShade, size: Size) => inColumns({ shade: part(shade), size }),
    ownGrid: laying(),
    grid: laying(),
  };
}

interface Asked extends Pick<RoomWindow, "shade" | "size">, Pick<ResolvedShade, "style"> {
  asking: LineAskInput["shade"];
  grid: Grid;
  headrailNeededMm: number;
  /** It hangs already. */
  hangs: boolean;
}

function askedOf({ style, shade, asking, size, grid, headrailNeededMm, hangs }: Asked): RoomWindow {
  const { inLine } = STYLE_MODULES[style];
  return {
    shade,
    size,
    ask: hangs
      ? "it hangs already, with rows of its own"
      : typeof inLine === "string"
        ? inLine
        : inLine.ask({ shade: asking, size, headrailNeededMm }),
    hangsFlat: typeof inLine !== "string" && !hangs,
    own: { rows: grid.rows.length, raisedMm: grid.raisedHeightMm },
  };
}

interface Stages {
  resolved: ResolvedShade;
  careful: CarefulLift;
  aligned: AlignedShade;
  measured: StageResult<Size>;
  inColumns: StageResult<Column[]>;
  liftParts: StageResult<LiftParts>;
  headrail: StageResult<number>;
  laid: StageResult<LaidGrid>;
  line: StageResult<undefined>;
  cut: StageResult<ClothPlan>;
  weighed: StageResult<Mass>;
  folded: ReturnType<typeof planFolds>;
  strung: StageResult<Lift>;
  worked: StageResult<ExistingPlan | undefined>;
  mounted: ReturnType<typeof planBoard>;
  reviewed: () => StageResult<SafetyReview>;
  cost: () => StageResult<ShadeCost>;
}

/** The figures behind a planned shade, by their ids. */
const FIGURES = new WeakMap<ShadePlan, () => ReadonlyMap<string, Figure>>();

/** The stages behind a planned shade, in the order of the work; the last two are made when they are asked for. */
const STAGES_BEHIND = new WeakMap<ShadePlan, () => readonly WorkedStage[]>();

type WorkedStage = () => Pick<StageResult<unknown>, "workings">;

/** Another form of a planned shade has its figures. */
export function sharesFigures(other: ShadePlan, shade: () => ShadePlan): void {
  FIGURES.set(other, () => figuresOf(shade()));
  STAGES_BEHIND.set(other, () => STAGES_BEHIND.get(shade())?.() ?? []);
}

/** The same shade with these in place of its own; what is made late, of it or of these, stays so. */
export function withOwn(shade: ShadePlan, own: Partial<ShadePlan>): ShadePlan {
  return Object.defineProperties({} as ShadePlan, {
    ...Object.getOwnPropertyDescriptors(shade),
    ...Object.getOwnPropertyDescriptors(own),
  });
}

/** The figures of a shade that was planned here, by their ids; empty for a plan that came from a file or another thread. */
export function figuresOf(shade: ShadePlan): ReadonlyMap<string, Figure> {
  return FIGURES.get(shade)?.() ?? new Map();
}

/** Whether the plan has a figure; of one that was planned here, what need not be looked at is not worked out. */
export function hasFigure(shade: ShadePlan, id: string): boolean {
  const stages = STAGES_BEHIND.get(shade);
  if (stages === undefined) return shade.workings.some((working) => working.id === id);
  return stages().some((stage) => stage().workings.some((figure) => figureId(figure) === id));
}

/** The plan as its readers take it; its words are made when someone reads them. */
function assemble(stages: Stages): PlannedShade {
  const { resolved, careful, aligned, measured, inColumns, liftParts, headrail, laid, line } = stages;
  const { weighed, folded, strung, worked, mounted, reviewed, cost } = stages;
  const existing = worked.values;
  // Of a shade that hangs already no cloth is cut.
  const cut = existing === undefined ? stages.cut : NOTHING_CUT;
  const size = measured.values;
  const { grid, form } = laid.values;
  const cloth = stages.cut.values;
  const mass = weighed.values;
  const folds = folded.whole;
  const lift = strung.values;
  const board = mounted.whole;
  const told: readonly WorkedStage[] = [
    ...[measured, inColumns, liftParts, headrail, laid, line, cut, weighed].map((one) => () => one),
    ...[folded, strung, worked, mounted].map((one) => () => one),
    reviewed,
    cost,
  ];
  const figures = lazy(() => told.flatMap((stage) => stage().workings));
  const workings = lazy(() => figures().map(workingOf));
  const findings = lazy(() =>
    [
      ...measured.findings,
      ...inColumns.findings,
      ...laid.findings,
      ...aligned.findings,
      ...cut.findings,
      ...folded.findings,
      ...(aligned.motif === undefined ? [] : judgeMotif({ shade: resolved, motif: aligned.motif, cloth })),
      ...proposedLift({ shade: resolved, careful }),
      ...strung.findings,
      ...worked.findings,
      ...mounted.findings,
      ...reviewed().findings,
      ...cost().findings,
    ]
      .sort(bySeverity)
      .map((finding) => onJob(finding, resolved)),
  );
  const steps = lazy(() =>
    planSteps({
      ...{ resolved, size, grid, form, cloth, mass, lift, board, existing },
      styleSteps: STYLE_MODULES[resolved.style].steps({ shade: resolved, size, grid, form, cloth }),
    }),
  );
  const cautions = lazy(() =>
    planCautions({ shade: resolved, size, grid, form, lift, review: reviewed().values }),
  );
  const tag = lazy(() =>
    childTag({
      place: resolved.place,
      frontCords: lift.cordsAtFront,
      rearCords: lift.cords.length > 0,
    }),
  );
  const shade: ShadePlan = {
    shadeId: resolved.shadeId,
    windowName: resolved.windowName,
    roomId: resolved.roomId,
    roomName: resolved.roomName,
    style: resolved.style,
    mount: resolved.mount,
    opening: resolved.opening,
    ...(existing === undefined ? {} : { existing }),
    size,
    grid,
    form,
    feel: clothFeel(resolved),
    ...(folds === undefined ? {} : { folds }),
    cloth,
    mass,
    lift,
    board,
    get steps() {
      return steps();
    },
    get cost() {
      return cost().values.cost;
    },
    get cautions() {
      return cautions();
    },
    get safety() {
      return reviewed().values;
    },
    get tag() {
      return tag();
    },
    get workings() {
      return workings();
    },
    get findings() {
      return findings();
    },
  };
  STAGES_BEHIND.set(shade, () => told);
  FIGURES.set(
    shade,
    lazy(() => new Map(figures().map((figure) => [figureId(figure), figure]))),
  );
  return { shade, cost: () => cost().values };
}

const NOTHING_CUT = { findings: [], workings: [] } as const;

/** Its remedies as they are made to the job, whatever of it the shade has of its own. */
function onJob(finding: Finding, resolved: ResolvedShade): Finding {
  return withRemedies(finding, (remedies) =>
    remedies.map((one) => ({ ...one, patch: withParents(one.patch, resolved) })),
  );
}

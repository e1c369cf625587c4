import { judgeMotif, type RoomWindow, writeLine } from "../align/index.ts";
import { planBoard } from "../board/index.ts";
import { planCloth } from "../cloth/index.ts";
import { planCost, type ShadeCost } from "../cost/index.ts";
import { bySeverity, type Figure, figureId, lazy, type StageResult, workingOf } from "../figures/index.ts";
import { FOLDS_READS, planFolds } from "../folds/index.ts";
import type { ResolvedRates, ResolvedShade } from "../job/index.ts";
import { chooseLiftParts, type LiftParts, liftPartsInput, planLift } from "../lift/index.ts";
import { MEASURE_READS, measure } from "../measure/index.ts";
import {
  type CarefulLift,
  childTag,
  planCautions,
  proposedLift,
  provenRemedies,
  type ReviewAfter,
  reviewShade,
  SAFETY_READS,
} from "../safety/index.ts";
import {
  type BoardPlan,
  type ClothPlan,
  type Column,
  type Folds,
  type Form,
  type Grid,
  hangingCords,
  type Lift,
  type Mass,
  type SafetyReview,
  type Size,
} from "../shade-plan/index.ts";
import { planSteps } from "../steps/index.ts";
import { STYLE_MODULES, STYLES_IN_LINE } from "../styles/index.ts";
import { type AlignedShade, followRoom } from "./align-room.ts";
import { booked } from "./booked.ts";
import { remember } from "./memo/remember.ts";
import { shareEqual } from "./memo/share-equal.ts";
import { partRead, stage } from "./memo/stage.ts";
import type { ShadePlan } from "./plan-types.ts";

export interface PlannedShade {
  shade: ShadePlan;
  cost: ShadeCost;
}

interface Measured {
  resolved: ResolvedShade;
  size: Size;
}
interface InColumns extends Measured {
  columns: Column[];
}
interface Laid extends Measured {
  grid: Grid;
  form: Form;
}
interface Weighed extends Laid {
  mass: Mass;
}
interface Strung extends Weighed {
  lift: Lift;
}

/**
 * Plans one shade, stage by stage in the order of the work: measure, shape, cloth, folds, lift, board, safety, cost. Each
 * stage is remembered: where nothing that it reads has changed since the last plan, its figures stand.
 */
export class ShadePlanner {
  readonly #partMeasured = partRead(MEASURE_READS);
  readonly #partFolded = partRead(FOLDS_READS);
  readonly #partReviewed = partRead(SAFETY_READS);

  readonly #measure = stage(measure);
  readonly #columns = stage(
    booked(({ resolved, size }: Measured, book) => {
      const { columns, findings } = STYLE_MODULES[resolved.style].columns(resolved, size, book);
      return { values: columns, findings };
    }),
  );
  readonly #liftParts = stage(
    booked(({ resolved, size, columns }: InColumns, book) => {
      return { values: chooseLiftParts(resolved, size, columns, book), findings: [] };
    }),
  );
  /** As the shade would be laid by itself, for the room to ask; and as the room has it. */
  readonly #ownGrid = stage(booked(layGrid));
  readonly #grid = stage(booked(layGrid));
  readonly #line = stage(
    booked(({ size, grid, layout }: Pick<Laid, "size" | "grid"> & Pick<AlignedShade, "layout">, book) => {
      if (layout !== undefined) writeLine(layout, size, grid, book);
      return { values: undefined, findings: [] };
    }),
  );
  readonly #cloth = stage(
    booked((input: Laid, book) => {
      const { cloth, mass, findings } = planCloth(input, book);
      return { values: { cloth, mass }, findings };
    }),
  );
  readonly #folds = stage(planFolds);
  readonly #lift = stage(
    booked(({ liftParts, ...input }: Weighed & { liftParts: LiftParts }, book) => {
      const { lift, findings } = planLift({ ...input, ...liftPartsInput(liftParts) }, book);
      return { values: lift, findings };
    }),
  );
  readonly #board = stage(
    booked((input: Strung & { folds?: Folds }, book) => {
      const { board, findings } = planBoard(input, book);
      return { values: board, findings };
    }),
  );
  readonly #review = stage(reviewShade);
  readonly #cost = stage(
    booked(
      (
        { rates, ...input }: Laid & { cloth: ClothPlan; lift: Lift; board: BoardPlan; rates: ResolvedRates },
        book,
      ) => {
        const cost = planCost(input, rates, book);
        return { values: cost, findings: cost.findings };
      },
    ),
  );
  readonly #asked = remember(askedOf);
  readonly #followed = remember(({ resolved, aligned }: { resolved: ResolvedShade; aligned: AlignedShade }) =>
    followRoom(resolved, aligned),
  );
  readonly #assemble = remember(assemble);
  #aligned: AlignedShade | undefined;

  /** What the shade asks of the line of its room, and how it would be made by itself. */
  ask(resolved: ResolvedShade): RoomWindow {
    const { size, liftParts, columns } = this.#taken(resolved);
    const { grid } = this.#ownGrid({ resolved, size, columns, liftParts: liftParts.values }).values;
    return this.#asked({ resolved, size, grid, liftParts: liftParts.values });
  }

  /**
   * The whole shade. `aligned` is what its room tells it; `resolved` is the shade by itself. `reviewAfter` plans it anew
   * with a change, for ways out to be tried.
   */
  plan(
    resolved: ResolvedShade,
    rates: ResolvedRates,
    careful: CarefulLift,
    reviewAfter: ReviewAfter,
    aligned: AlignedShade = BY_ITSELF,
  ): PlannedShade {
    this.#aligned = shareEqual(this.#aligned, aligned);
    const shade = this.#followed({ resolved, aligned: this.#aligned });
    return this.#planAsTold(shade, rates, careful, reviewAfter, this.#aligned);
  }

  #taken(resolved: ResolvedShade) {
    const measured = this.#measure(this.#partMeasured(resolved));
    const size = measured.values;
    const inColumns = this.#columns({ resolved, size });
    const columns = inColumns.values;
    const liftParts = this.#liftParts({ resolved, size, columns });
    return { measured, size, inColumns, columns, liftParts };
  }

  #planAsTold(
    resolved: ResolvedShade,
    rates: ResolvedRates,
    careful: CarefulLift,
    reviewAfter: ReviewAfter,
    aligned: AlignedShade,
  ): PlannedShade {
    const { measured, size, inColumns, columns, liftParts } = this.#taken(resolved);
    const laid = this.#grid({ resolved, size, columns, liftParts: liftParts.values });
    const { grid, form } = laid.values;
    const line = this.#line({ size, grid, layout: aligned.layout });
    const cut = this.#cloth({ resolved, size, grid, form });
    const { cloth, mass } = cut.values;
    const folded = this.#folds({ shade: this.#partFolded(resolved), size, grid, form, mass });
    const folds = folded.values;
    const strung = this.#lift({ resolved, size, grid, form, mass, liftParts: liftParts.values });
    const lift = strung.values;
    const mounted = this.#board({
      ...{ resolved, size, grid, form, mass, lift },
      ...(folds === undefined ? {} : { folds }),
    });
    const board = mounted.values;
    const reviewed = this.#review({ shade: this.#partReviewed(resolved), size, grid, form, mass, lift });
    const cost = this.#cost({ resolved, size, grid, form, cloth, lift, board, rates });
    return this.#assemble({
      resolved,
      careful,
      reviewAfter,
      aligned,
      ...{
        measured,
        inColumns,
        liftParts,
        laid,
        line,
        cut,
        folded,
        strung,
        mounted,
        reviewed,
        cost,
      },
    });
  }
}

const BY_ITSELF: AlignedShade = { findings: [] };

function layGrid(
  { resolved, size, columns, liftParts }: InColumns & { liftParts: LiftParts },
  book: Parameters<Parameters<typeof booked>[0]>[1],
) {
  const { grid, form, findings } = STYLE_MODULES[resolved.style].grid(
    resolved,
    size,
    columns,
    liftParts,
    book,
  );
  return { values: { grid, form }, findings };
}

function askedOf({
  resolved,
  size,
  grid,
  liftParts,
}: Measured & { grid: Grid; liftParts: LiftParts }): RoomWindow {
  const inLine = STYLES_IN_LINE[resolved.style];
  return {
    resolved,
    size,
    ask: typeof inLine === "string" ? inLine : inLine.ask(resolved, size, liftParts),
    hangsFlat: typeof inLine !== "string",
    own: { rows: grid.rows.length, raisedMm: grid.raisedHeightMm },
  };
}

interface Stages {
  resolved: ResolvedShade;
  careful: CarefulLift;
  reviewAfter: ReviewAfter;
  aligned: AlignedShade;
  measured: StageResult<Size>;
  inColumns: StageResult<Column[]>;
  liftParts: StageResult<LiftParts>;
  laid: StageResult<{ grid: Grid; form: Form }>;
  line: StageResult<undefined>;
  cut: StageResult<{ cloth: ClothPlan; mass: Mass }>;
  folded: StageResult<Folds | undefined>;
  strung: StageResult<Lift>;
  mounted: StageResult<BoardPlan>;
  reviewed: StageResult<SafetyReview>;
  cost: StageResult<ShadeCost>;
}

/** The figures behind a planned shade, by their ids. */
const FIGURES = new WeakMap<ShadePlan, () => ReadonlyMap<string, Figure>>();

/** The figures of a shade that was planned here, by their ids; empty for a plan that came from a file or another thread. */
export function figuresOf(shade: ShadePlan): ReadonlyMap<string, Figure> {
  return FIGURES.get(shade)?.() ?? new Map();
}

/** The plan as its readers take it; its words are made when someone reads them. */
function assemble(stages: Stages): PlannedShade {
  const { resolved, careful, reviewAfter, aligned, measured, inColumns, liftParts, laid, line } = stages;
  const { cut, folded, strung, mounted, reviewed, cost } = stages;
  const size = measured.values;
  const { grid, form } = laid.values;
  const { cloth, mass } = cut.values;
  const folds = folded.values;
  const lift = strung.values;
  const board = mounted.values;
  const figures = [
    ...[measured, inColumns, liftParts, laid, line, cut, folded, strung, mounted, reviewed, cost],
  ].flatMap(({ workings }) => workings);
  const workings = lazy(() => figures.map(workingOf));
  const steps = lazy(() =>
    planSteps({
      ...{ resolved, size, grid, form, cloth, mass, lift, board },
      styleSteps: STYLE_MODULES[resolved.style].steps({ resolved, size, grid, form, cloth }),
    }),
  );
  const cautions = lazy(() => planCautions({ shade: resolved, size, grid, lift, review: reviewed.values }));
  const tag = lazy(() =>
    childTag({
      place: resolved.place,
      frontCords: lift.kind === "tube-loop" || hangingCords(lift).length > 0,
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
    size,
    grid,
    form,
    ...(folds === undefined ? {} : { folds }),
    cloth,
    mass,
    lift,
    board,
    get steps() {
      return steps();
    },
    cost: cost.values.cost,
    get cautions() {
      return cautions();
    },
    safety: reviewed.values,
    get tag() {
      return tag();
    },
    get workings() {
      return workings();
    },
    findings: [
      ...measured.findings,
      ...inColumns.findings,
      ...laid.findings,
      ...aligned.findings,
      ...cut.findings,
      ...folded.findings,
      ...(aligned.motif === undefined ? [] : judgeMotif(resolved, aligned.motif, cloth)),
      ...proposedLift({ shade: resolved, careful }),
      ...strung.findings,
      ...mounted.findings,
      ...provenRemedies(reviewed.findings, reviewed.values, reviewAfter),
      ...cost.findings,
    ].sort(bySeverity),
  };
  FIGURES.set(
    shade,
    lazy(() => new Map(figures.map((figure) => [figureId(figure), figure]))),
  );
  return { shade, cost: cost.values };
}

import type { Lift } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import type { CauseOf } from "../cause.ts";
import { findingsAs, hasFinding } from "../from-findings.ts";

/** Hem heights that differ by less than this are level to the eye: our choice. */
const SEEN_MM = 3;

function mostLoadN({ cords }: Pick<Lift, "cords">): number {
  return Math.max(0, ...cords.map(({ loadN }) => loadN));
}

export const CORD_CAUSES: readonly CauseOf[] = [
  {
    symptoms: ["hem-not-level"],
    judge: ({ shade, len }) => {
      const { levelMm } = shade.lift.course;
      return {
        id: "cords-tied-unequal",
        title: "Knots tied at unequal lengths",
        evidence: "cannot-tell",
        why:
          levelMm === undefined
            ? "Every knot at a bottom ring sets the height of the hem at its column."
            : `Stretch of the cords accounts for ${len(levelMm)} at most; what is more than that is in the knots.`,
        test: "Raise it by a hand’s breadth and measure the hem above the sill at each column. Heights that jump from column to column are knots; a straight slope is the board.",
        cure: "Enter the heights: the answer says which knot to move by how much. Move the knot at the bottom ring, never in the lock.",
        remedies: [],
        cite: cite("common-practice", "re-knot at the bottom ring"),
        ...(levelMm === undefined ? {} : { figures: ["lift.level"] }),
      };
    },
  },
  {
    symptoms: ["hem-not-level"],
    judge: ({ shade, len }) =>
      shade.size.head !== undefined
        ? undefined
        : {
            id: "board-not-level",
            title: "The board is not level",
            evidence: "cannot-tell",
            why: `A board ${len(shade.board.lengthMm)} long that is out by one part in two hundred hangs the hem ${len(shade.board.lengthMm / 200)} off.`,
            test: "Lay a spirit level on the board. Lowered fully, cords slack, the hem still slopes.",
            cure: "Pack the low end of the board with card or slips of wood, and screw it up again.",
            remedies: [],
            cite: cite("common-practice", "shim the board"),
          },
  },
  {
    symptoms: ["hem-not-level"],
    judge: (facts) => {
      const { levelMm } = facts.shade.lift.course;
      if (levelMm === undefined) return undefined;
      const high = levelMm > SEEN_MM;
      return {
        id: "cords-stretch",
        title: "Cords stretch by unequal amounts",
        evidence: high ? "points-to-it" : "speaks-against",
        why: `By their loads and lengths the cords of this shade differ by ${facts.len(levelMm)} at most.`,
        test: "Level it half raised, leave it for a day, and measure again: stretch comes back, a slipped knot does not.",
        cure: "Level it half raised with its own weight on, or take a cord that stretches less.",
        remedies: findingsAs(facts, ["lift.stretch-out-of-level"]),
        cite: cite("geometry", "stretch T·l/(EA) of each cord"),
        figures: ["lift.level"],
      };
    },
  },
  {
    symptoms: ["leans-to-one-side", "hem-not-level"],
    judge: ({ shade }) => ({
      id: "diagonal-run",
      title: "A cord runs across the back",
      evidence: "cannot-tell",
      why: `This shade has ${shade.lift.cords.length} cords: each goes straight up its own column to ${shade.lift.takeUp === "tube" ? "its own spool" : "its own eye"}. One that runs slantwise pulls its column sideways and up too soon.`,
      test: "Look at the back: does every cord pass the rings of one column only?",
      cure: "Thread it again, ring above ring, with an eye above each column.",
      remedies: [],
      cite: cite("graduated-folds", "diagonal stringing fans the folds"),
    }),
  },
  {
    symptoms: ["leans-to-one-side"],
    judge: ({ shade, len }) => {
      if (shade.lift.takeUp !== "tube") return undefined;
      const twistMm = shade.lift.stiffness?.twistMm;
      return {
        id: "spools-wind-unequal",
        title: "Cords wind up unequally on their spools",
        evidence: twistMm !== undefined && twistMm > SEEN_MM ? "points-to-it" : "cannot-tell",
        why:
          twistMm === undefined
            ? "One cord that climbs onto its own turns is a whole layer ahead of the others."
            : `The tube itself twists by ${len(twistMm)} at the hem; more than that is in the winding.`,
        test: "Watch the spools while somebody raises it: every cord lays its turns from the same side.",
        cure: "Unwind to the knots, lay the turns side by side under a little pull, and level again.",
        remedies: [],
        cite: cite("geometry", "a spool grows by one cord for each layer"),
        ...(twistMm === undefined ? {} : { figures: ["lift.tube-twist"] }),
      };
    },
  },
  {
    symptoms: ["cord-frays"],
    judge: (facts) => {
      const { shade, force } = facts;
      if (shade.lift.takeUp !== "lock") return undefined;
      return {
        id: "toothed-roller",
        title: "The toothed roller works on the cord",
        evidence: "cannot-tell",
        why: `Each time it locks, up to ${force(mostLoadN(shade.lift))} press one cord against the teeth.`,
        test: "The frayed stretch lies at the lock with the shade at the height where it is left most.",
        cure: "Move the worn stretch by re-tying at the ring, or take a cleat in place of the lock where no child can reach.",
        remedies: [],
        cite: cite("lock-instructions", "locks can shred cord"),
      };
    },
  },
  {
    symptoms: ["cord-frays"],
    judge: (facts) => ({
      id: "rough-eye",
      title: "A raw edge at an eye or ring",
      evidence: "cannot-tell",
      why: "A cut wire end or a seam in a moulded ring saws at the cord with every raise.",
      test: "Feel the inside of each eye and ring with a fingertip at the height where the cord is worn.",
      cure: "Close and smooth the eye, change the ring, or take pulleys.",
      remedies: findingsAs(facts, ["lift.hard-pull"]),
      cite: cite("common-practice", "raw eyes fray cord"),
    }),
  },
  {
    symptoms: ["cord-frays"],
    judge: (facts) => {
      const weak = hasFinding(facts, "lift.cord-too-weak");
      return {
        id: "cord-too-weak",
        title: "The cord is too thin for its load",
        evidence: weak ? "points-to-it" : "speaks-against",
        why:
          facts.cord.breakingN === undefined
            ? `How strong “${facts.cord.name}” is was not given.`
            : `“${facts.cord.name}” breaks at ${facts.force(facts.cord.breakingN)}; one cord carries ${facts.force(mostLoadN(facts.shade.lift))}.`,
        test: "Compare a worn piece with a fresh one: a thinned core tells of load, a rough skin of an edge.",
        cure: "Take a stronger cord that the lock takes.",
        remedies: findingsAs(facts, ["lift.cord-too-weak"]),
        cite: cite("from-memory", "factor of 5 for cord that runs over small radii"),
      };
    },
  },
];

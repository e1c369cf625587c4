import { STYLE_TRAITS, settingPatch, withParents } from "../../job/index.ts";
import { ribCount, ringCount } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { inches } from "../../units/index.ts";
import type { CauseOf } from "../cause.ts";
import { findingsAs, hasFinding } from "../from-findings.ts";

/** The widest published spacing of columns, rounded up to the ruler’s millimetre: without ribs, and with them. */
const WIDEST_MM = { without: Math.ceil(inches(12)), with: Math.ceil(inches(14)) };

export const CLOTH_CAUSES: readonly CauseOf[] = [
  {
    symptoms: ["will-not-rise"],
    judge: (facts) => {
      const { shade, len } = facts;
      const needed = shade.workings.find(({ id }) => id === "shape.headrail-needed");
      const short = hasFinding(facts, "shape.headrail-short", "shape.spacing-leaves-no-headrail");
      return {
        id: "headrail-short",
        title: "Too little flat cloth under the board",
        evidence: short ? "points-to-it" : "speaks-against",
        why: `${len(shade.grid.headrailMm)} stay flat under the board${needed === undefined ? "" : `; board and lift need ${len(needed.value)}`}. With less, the rings meet the lock before the folds are gathered.`,
        test: "Raise it as far as it goes: do the upper rings touch the eyes or the lock?",
        cure: "Take the top row of rings off, or lower it.",
        remedies: findingsAs(facts, ["shape.headrail-short", "shape.spacing-leaves-no-headrail"]),
        cite: cite("headrail-allowance"),
        figures: ["shape.headrail-needed"],
      };
    },
  },
  {
    symptoms: ["will-not-rise"],
    judge: (facts) => {
      const { shade } = facts;
      if (shade.lift.takeUp !== "tube") {
        const exit = shade.lift.takeUp === "lock" ? "lock" : "last eye";
        return {
          id: "knot-at-lock",
          title: `A knot or connector meets the ${exit}`,
          evidence: "cannot-tell",
          why: `Knots and connectors below the ${exit} must clear it by the whole travel.`,
          test: `Look at the ${exit} as it stops: does anything thicker than the cord touch it?`,
          cure: "Move the connector down the tails.",
          remedies: [],
          cite: cite("common-practice"),
        };
      }
      const full = hasFinding(facts, "rig.spool-full", "rig.short-spool");
      return {
        id: "spool-full",
        title: "The spools are full",
        evidence: full ? "points-to-it" : "speaks-against",
        why: `From lowered to raised the tube makes ${Math.round(shade.lift.turns * 10) / 10} turns.`,
        test: "Does cord spill over a flange as it stops?",
        cure: "A thinner cord, wider spools, or fewer turns left on with the shade lowered.",
        remedies: findingsAs(facts, ["rig.spool-full"]),
        cite: cite("geometry"),
        figures: ["lift.turns"],
      };
    },
  },
  {
    symptoms: ["folds-sag"],
    judge: (facts) => {
      const { resolved, shade, len } = facts;
      const wide = shade.grid.columnSpacingMm > WIDEST_MM[ribCount(shade.form) > 0 ? "with" : "without"];
      const nearer = Math.max(100, Math.round(shade.grid.columnSpacingMm * 0.75));
      return {
        id: "columns-too-far",
        title: "Columns too far apart for the cloth",
        evidence: wide || hasFinding(facts, "shape.hem-sags", "fold.sags") ? "points-to-it" : "cannot-tell",
        why: `The columns of this shade are ${len(shade.grid.columnSpacingMm)} apart; 10 to 12 in is the published spacing without ribs, 12 to 14 in with them.`,
        test: "Push a lath into one fold: if the fold hangs straight with it, the cloth is too limp for the spacing.",
        cure: "Closer columns, or ribs in pockets.",
        remedies:
          shade.grid.columns.length > 2
            ? [
                {
                  label: `Set the columns at most ${len(nearer)} apart`,
                  patch: withParents(settingPatch(resolved, "columns", "largestSpacingMm", nearer), resolved),
                },
              ]
            : [],
        cite: cite("ring-spacing-faq", "10 to 12 in without ribs, 12 to 14 with"),
        figures: ["shape.column-spacing"],
      };
    },
  },
  {
    symptoms: ["folds-sag", "sides-draw-in"],
    judge: ({ resolved, shade }) => {
      const { bar } = shade.form;
      const ribs = ribCount(shade.form);
      const ribWords = ribs === 0 ? "no ribs" : ribs === 1 ? "one rib" : `${ribs} ribs`;
      return {
        id: "no-ribs",
        title: "Nothing stiff across the width",
        evidence: bar === undefined && ribs === 0 ? "points-to-it" : "cannot-tell",
        why: `This shade has ${bar === undefined ? "no bar" : "a bar in its hem"} and ${ribWords}.`,
        test: "Hold the hem out to its full width by hand: do the folds come straight?",
        cure: "A stiffer bar, or ribs.",
        remedies:
          ribs === 0 && STYLE_TRAITS[shade.style].carriesRibs
            ? [
                {
                  label: "Put ribs in strips sewn on",
                  patch: withParents(settingPatch(resolved, "ribs", "kind", "strip-pocket"), resolved),
                },
              ]
            : [],
        cite: cite("common-practice", "bar and ribs keep the sides out"),
      };
    },
  },
  {
    symptoms: ["puckers"],
    judge: ({ shade }) =>
      shade.cloth.layers.length < 2
        ? undefined
        : {
            id: "lining-tight",
            title: "The lining is tight, or the layers shifted",
            evidence: "cannot-tell",
            why: `${shade.cloth.layers.length} layers are caught together at ${ringCount(shade.grid, shade.form)} rings.`,
            test: "Snip one ring off: does the pucker go?",
            cure: "Ease the lining down by a thread’s breadth at each row, pin through all layers, sew again.",
            remedies: [],
            cite: cite("common-practice", "slacken the lining; baste first"),
          },
  },
  {
    symptoms: ["puckers", "pattern-smiles"],
    judge: (facts) => ({
      id: "shrunk",
      title: "One layer shrank",
      evidence: hasFinding(facts, "cloth.shrinkage-unknown") ? "points-to-it" : "cannot-tell",
      why: `A layer that shrinks by one in a hundred takes up ${facts.len(facts.shade.size.finishedLengthMm / 100)} of this length.`,
      test: "Measure each layer between two rows: they must agree.",
      cure: "Unpick the side hems, let the layers hang free, and catch them again. Steam or wash before cutting next time.",
      remedies: [],
      cite: cite("astm-d3691"),
    }),
  },
  {
    symptoms: ["pattern-smiles"],
    judge: ({ shade, len }) => ({
      id: "take-up",
      title: "Sewing took up cloth at the columns",
      evidence: shade.form.ribs.rows.length > 0 ? "points-to-it" : "cannot-tell",
      why: `${len(1)} taken up at each of ${shade.grid.rows.length} rows comes to ${len(shade.grid.rows.length)} at the hem.`,
      test: "Measure from the top line to the hem along a column and half way between two: the difference is the smile.",
      cure: "Baste before sewing, mark after the layers are joined, and let out the columns that are short.",
      remedies: [],
      cite: cite("common-practice", "baste; mark after joining"),
    }),
  },
  {
    symptoms: ["swings"],
    judge: ({ shade, resolved, len }) => ({
      id: "bar-light",
      title: "The bar is too light",
      evidence: shade.form.bar === undefined ? "points-to-it" : "cannot-tell",
      why:
        shade.form.bar === undefined
          ? "This shade has no bar."
          : `The bar is ${resolved.bar.name.toLowerCase()}, ${len(shade.form.bar.toMm - shade.form.bar.fromMm)} long.`,
      test: "Tape a second bar to the first: does it hang still?",
      cure: "A heavier bar, or hold-downs at the sill.",
      remedies: [],
      cite: cite("common-practice", "a heavier bar, hold-downs"),
    }),
  },
  {
    symptoms: ["points-of-light"],
    judge: (facts) => {
      const stitched = hasFinding(facts, "cloth.blackout-pinholes");
      return {
        id: "stitched-blackout",
        title: "Needle holes through the blackout",
        evidence: stitched ? "points-to-it" : "speaks-against",
        why: `${ringCount(facts.shade.grid, facts.shade.form)} rings are sewn on this shade.`,
        test: "Hold a lamp behind it: do the points lie at the rings and along pockets?",
        cure: "Glue a patch of blackout behind each ring; form pockets in the lining alone next time.",
        remedies: findingsAs(facts, ["cloth.blackout-pinholes"]),
        cite: cite("blackout-guide"),
      };
    },
  },
  {
    symptoms: ["board-bends"],
    judge: (facts) => {
      const { strength } = facts.shade.board;
      const bends = hasFinding(facts, "board.bends", "board.breaks");
      return {
        id: "board-weak",
        title: "The board is too thin for its fixings",
        evidence: bends ? "points-to-it" : "speaks-against",
        why:
          strength === undefined
            ? "The board hangs on one fixing."
            : `It bends ${facts.small(strength.deflectionMm)} with a hand at the cords; ${facts.small(strength.deflectionLimitMm)} is what nobody sees.`,
        test: "Sight along its lower edge with the shade raised and lowered.",
        cure: "Fix it at more places, or take a thicker board.",
        remedies: findingsAs(facts, ["board.bends", "board.breaks"]),
        cite: cite("wood-handbook"),
        figures: ["board.deflection", "board.deflection-limit"],
      };
    },
  },
  {
    symptoms: ["board-bends"],
    judge: (facts) => {
      const weak = hasFinding(facts, "board.screws-pull", "board.rating-too-low");
      const unknown = hasFinding(facts, "board.wall-unknown", "board.hollow-wall");
      return {
        id: "fixings-pull",
        title: "A fixing gives way",
        evidence: weak ? "points-to-it" : unknown ? "cannot-tell" : "speaks-against",
        why: `All fixings together carry ${facts.force(facts.shade.board.loadN)} with a hand at work.`,
        test: "Stop using the shade. Take it down before you look: a board that has moved can fall. Then try each screw by hand.",
        cure: "Fix into timber, or use plugs and anchors that their maker rates for this wall. Local codes and licensed practice prevail.",
        remedies: findingsAs(facts, ["board.screws-pull", "board.rating-too-low", "board.wall-unknown"]),
        cite: cite("wood-handbook"),
        figures: ["board.load", "board.fixing-load"],
      };
    },
  },
];

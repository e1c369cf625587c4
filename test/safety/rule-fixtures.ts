import type { Goods } from "../../src/job/index.ts";
import type { CordGeometry } from "../../src/safety/review/cord-geometry.ts";
import type { RuleOutcome } from "../../src/shade-plan/index.ts";
import {
  backed,
  bare,
  fromTo,
  hanging,
  heightless,
  longestMidway,
  looped,
  pulls,
  rears,
  steady,
} from "./cords.ts";

export interface RuleCase {
  geometry: CordGeometry;
  outcome: RuleOutcome;
  /** Raise at which it is worst, where that is the point of the case. */
  raise?: number;
  goods?: Goods;
  tag?: { signalMm: number; textMm: number };
}

const fails = (geometry: CordGeometry, raise?: number): RuleCase => ({
  geometry,
  outcome: "failed",
  ...(raise === undefined ? {} : { raise }),
});
const holds = (geometry: CordGeometry): RuleCase => ({ geometry, outcome: "not-shown-to-fail" });
const open = (geometry: CordGeometry): RuleCase => ({ geometry, outcome: "not-proven" });
const none = (geometry: CordGeometry): RuleCase => ({ geometry, outcome: "does-not-apply" });

const always = (geometry: CordGeometry): Record<string, RuleCase> => ({ unknown: open(geometry) });
const letters = (signalMm: number, textMm: number, outcome: RuleOutcome): RuleCase => ({
  geometry: bare(),
  outcome,
  tag: { signalMm, textMm },
});

/** Cords that grow evenly to this length with the shade raised. */
const raisedTo = (mm: number, over = {}) => hanging(fromTo(100, mm), over);
const two = { count: 2 };
const joined = (connectorRaisedMm: number) =>
  hanging(fromTo(100, 900), { count: 4, joinedMm: fromTo(70, connectorRaisedMm) });
/** A top rail on two cords of its own. */
const railed = (mm: number) =>
  bare({ pulls: [pulls(mm, { raises: "top-rail", count: 2, joinedMm: steady(mm / 3) })] });
/** A motor’s lead of which so much hangs free, down to this height. */
const lead = (leadLooseMm: number, leadLowMm?: number) =>
  bare({ kind: "motor", leadLooseMm, ...(leadLowMm === undefined ? {} : { leadLowMm }) });
/** Rear cords in sleeves, to hang a loop beside. */
const hidden = { rear: rears([300], { guide: "enclosed" }) };
const gripped = { guide: "ring-locked" as const };
const sleeved = { guide: "enclosed" as const };
/** 40 N on each cord, so that 35 N lifts nothing and bends it aside: sin ε = 35 / 80, longer by 11.2 %. */
const heavy = { heldN: [80, 80], leastShare: 0.5 };
/** So high that the lowest span hangs above 1.6 m. */
const high = { topAboveFloorMm: 3000 };

/** Each rule on each side of its limit, where it does not apply, and where a plan cannot tell. */
export const RULE_FIXTURES: Record<string, Record<string, RuleCase>> = {
  "CA-FREE": {
    below: holds(raisedTo(219)),
    at: holds(raisedTo(220)),
    above: fails(raisedTo(221), 1),
    "only midway": fails(hanging(longestMidway(150, 230)), 0.5),
    "unknown: it stretches": open({ ...raisedTo(219), stretchPerN: 0.001 }),
    "cords of a top rail": fails(railed(221)),
    "not applicable": none(backed([200])),
  },
  "CA-SPAN": {
    below: holds(backed([150, 196], heavy)),
    at: open(backed([150, 220], gripped)),
    above: fails(backed([150, 221], gripped), 0),
    "a lead at the limit: its clips": open(bare({ kind: "motor", leadLooseMm: 220 })),
    "a lead above": fails(bare({ kind: "motor", leadLooseMm: 221 })),
    "a lead that nobody followed": open(bare({ kind: "motor" })),
    "a top rail’s cord between two eyes on the board": fails(bare({ railSpansMm: [221] })),
    "two eyes on the board": fails(backed([150], { boardSpansMm: [221] })),
    "the side of a loop between its wheel and its tensioner": fails(looped(221, "tensioner", hidden)),
    "unknown: a sleeve": open(backed([400], sleeved)),
    "unknown: gripped": open(backed([150, 219], gripped)),
    "unknown: it stretches": open(backed([150, 197], heavy, { stretchPerN: 0.0002 })),
    "not applicable": none(bare()),
    "unknown: it slides": open(backed([150, 219])),
    "unknown: taut, and bent aside over the limit": open(backed([150, 198], heavy)),
    "taut, and bent aside within the limit": holds(backed([150, 197], heavy)),
  },
  "CA-LOOP": {
    below: open(backed([219.5], gripped)),
    at: open(backed([220], gripped)),
    above: fails(backed([220.5], gripped), 0),
    "more cloth than cord": fails(backed([200], gripped, {}, 41), 0),
    "a lead at the limit, drawn together: its clips": open(bare({ kind: "motor", leadLooseMm: 220 })),
    "a lead above, drawn together": fails(bare({ kind: "motor", leadLooseMm: 221 })),
    "joined cords, raised": fails(joined(221), 1),
    "a loop on a tension device": fails(looped(221)),
    "taut, on a heavy shade": holds(backed([180], heavy)),
    "unknown: a sleeve": open(backed([400], sleeved)),
    "not applicable": none(hanging(100)),
    "unknown: it slides": open(backed([200])),
  },
  "CA-JOIN-L": {
    below: holds(raisedTo(109, two)),
    at: holds(raisedTo(110, two)),
    above: fails(raisedTo(111, two), 1),
    "only midway": fails(hanging(longestMidway(90, 120), two), 0.5),
    "not applicable": none(raisedTo(400)),
  },
  "CA-JOIN-P": {
    below: holds(raisedTo(219, two)),
    at: holds(raisedTo(220, two)),
    above: fails(raisedTo(221, two), 1),
    "only midway": fails(hanging(longestMidway(200, 230), two), 0.5),
    "not applicable": none(bare()),
  },
  "CA-HIDDEN": { unknown: open(backed([200], sleeved)), "not applicable": none(backed([200])) },
  "CA-SMALL": always(bare()),
  "CA-LEAD": always(bare()),
  "CA-LBL-SIG": {
    below: letters(4.9, 2.5, "failed"),
    at: letters(5, 2.5, "not-proven"),
    above: letters(6, 2.5, "not-proven"),
  },
  "CA-LBL-TXT": {
    below: letters(5, 2.4, "failed"),
    at: letters(5, 2.5, "not-proven"),
    above: letters(5, 3, "not-proven"),
  },
  "CA-LBL": always(bare()),
  "CA-NOREF": always(bare()),
  "CA-NODEV": {
    "a cleat": fails(raisedTo(900)),
    "a tension device": fails(looped(600)),
    nothing: holds(backed([200])),
    "unknown: a sleeve": open(backed([200], sleeved)),
  },
  "US-STOCK-8": {
    below: { ...holds(raisedTo(202)), goods: "stock" },
    at: { ...holds(raisedTo(203)), goods: "stock" },
    above: { ...fails(raisedTo(204), 1), goods: "stock" },
    "a loop": { ...fails(looped(600)), goods: "stock" },
    "not applicable: made to order": { ...none(raisedTo(900)), goods: "custom" },
    "unknown: not said": open(raisedTo(900)),
    cordless: { ...none(backed([200])), goods: "stock" },
  },
  "US-INNER": {
    unknown: open(backed([100])),
    "unknown: gripped": open(backed([100], gripped)),
    "unknown: hidden": open(backed([100], sleeved)),
    "not applicable": none(bare()),
  },
  "US-LABEL": always(bare()),
  "US-BUTTON": { unknown: open(bare({ kind: "motor" })), "not applicable": none(bare()) },
  "US-NOHANG": { at: holds(backed([200])), above: fails(raisedTo(100)) },
  "US-NOMULTI": { at: holds(raisedTo(900)), above: fails(joined(900)) },
  "US-LOOP-DEVICE": {
    below: fails(looped(600, "none")),
    unknown: open(looped(600)),
    "not applicable": none(bare()),
  },
  "EU-H-PULL": {
    above: holds(raisedTo(849)),
    at: holds(raisedTo(850)),
    below: fails(raisedTo(851), 1),
    "only midway": fails(hanging(longestMidway(800, 900)), 0.5),
    "a loop on a tensioner": fails(looped(851)),
    "a top rail’s cords beside a loop that breaks away": fails({
      ...looped(400, "breakaway"),
      pulls: railed(851).pulls,
    }),
    "on the floor": fails(raisedTo(4000)),
    "not applicable: it breaks away": none(looped(900, "breakaway")),
    "not applicable: height not known": none(heightless(raisedTo(900))),
  },
  "EU-L-UNK1": {
    below: holds(heightless(raisedTo(999))),
    at: holds(heightless(raisedTo(1000))),
    above: fails(heightless(raisedTo(1001)), 1),
    "only midway": fails(heightless(hanging(longestMidway(900, 1100))), 0.5),
    "a top rail’s cords beside a loop that breaks away": fails(
      heightless({ ...looped(400, "breakaway"), pulls: railed(1001).pulls }),
    ),
    "not applicable: it breaks away": none(heightless(looped(1001, "breakaway"))),
    "blind at 2.5 m": fails(heightless({ ...raisedTo(1001), blindHeightMm: 2500 })),
    "not applicable: higher": none(heightless({ ...raisedTo(1001), blindHeightMm: 2501 })),
    "not applicable: height known": none(raisedTo(1001)),
  },
  "EU-L-UNK2": {
    below: holds(heightless({ ...raisedTo(1499), blindHeightMm: 3000 })),
    at: holds(heightless({ ...raisedTo(1500), blindHeightMm: 3000 })),
    above: fails(heightless({ ...raisedTo(1501), blindHeightMm: 3000 }), 1),
    "only midway": fails(heightless({ ...hanging(longestMidway(100, 1600)), blindHeightMm: 3000 }), 0.5),
    "not applicable: lower": none(heightless({ ...raisedTo(1501), blindHeightMm: 2500 })),
  },
  "EU-H-BRK": {
    above: holds(looped(1749, "breakaway")),
    at: holds(looped(1750, "breakaway")),
    below: fails(looped(1751, "breakaway")),
    "not applicable": none(looped(1751)),
    "not applicable: height not known": none(heightless(looped(1751, "breakaway"))),
  },
  "EU-L-BRK": {
    below: holds(heightless(looped(999, "breakaway"))),
    at: holds(heightless(looped(1000, "breakaway"))),
    above: fails(heightless(looped(1001, "breakaway"))),
    "not applicable": none(looped(1001, "breakaway")),
  },
  "EU-BRK": { unknown: open(looped(600, "breakaway")), "not applicable": none(looped(600)) },
  "EU-CLEAT-H": {
    above: holds(raisedTo(900, { cleatAboveFloorMm: 1501 })),
    at: holds(raisedTo(900, { cleatAboveFloorMm: 1500 })),
    below: fails(raisedTo(900, { cleatAboveFloorMm: 1499 }), 1),
    "not applicable": none(bare()),
  },
  "EU-CLEAT-C": { unknown: open(raisedTo(900)), "not applicable": none(bare()) },
  "EU-COLLECT": { unknown: open(joined(900)), "not applicable": none(raisedTo(900)) },
  "EU-REAR": {
    below: holds(backed([150, 199])),
    at: holds(backed([150, 200])),
    above: fails(backed([150, 201]), 0),
    "unknown: every cord comes apart": open(backed([150, 201], { releases: true })),
    "below, though every cord comes apart": holds(backed([150, 199], { releases: true })),
    "unknown: a sleeve": open(backed([400], sleeved)),
    "unknown: gripped": open(backed([150, 199], gripped)),
    "not applicable": none(bare()),
  },
  "EU-PROBE": {
    unknown: open(backed([200])),
    "unknown: a loop": open(looped(600)),
    "unknown: a sleeve": open(backed([400], sleeved)),
    "not applicable": none(bare()),
  },
  "EU-DEVICE": {
    below: fails(looped(600, "none")),
    unknown: open(looped(600)),
    "not applicable": none(bare()),
  },
  "EU-WARN": always(bare()),
  "EU-GPSR": always(bare()),
  "JP-REACH": {
    above: holds(raisedTo(749)),
    at: holds(raisedTo(750)),
    below: fails(raisedTo(751), 1),
    unknown: open(heightless(raisedTo(751))),
    "not applicable": none(bare()),
  },
  "JP-JOINT": { unknown: open(looped(600, "breakaway")), "not applicable": none(looped(600)) },
  "JP-HEAD": { unknown: open(looped(600)), "not applicable": none(bare()) },
  "JP-PAPERS": always(bare()),
  "KR-END": {
    above: holds(raisedTo(749)),
    at: holds(raisedTo(750)),
    below: fails(raisedTo(751), 1),
    "not applicable": none(bare()),
  },
  "KR-LABEL": always(bare()),
  "UK-SECURED": {
    above: open(raisedTo(849)),
    at: open(raisedTo(850)),
    below: fails(raisedTo(851)),
    "only midway": fails(hanging(longestMidway(100, 900))),
    unknown: open(heightless(raisedTo(900))),
    "not applicable": none(bare()),
  },
  "UK-LOWLOOP": {
    below: holds(looped(199, "tensioner", { topAboveFloorMm: 1500 })),
    at: holds(looped(200, "tensioner", { topAboveFloorMm: 1500 })),
    above: fails(looped(201, "tensioner", { topAboveFloorMm: 1500 })),
    "not applicable: it ends at 1.5 m": none(looped(850)),
    "not applicable": none(bare()),
    unknown: open(heightless(looped(201))),
  },
  "UK-BUTTON": { unknown: open(bare({ kind: "motor" })), "not applicable": none(bare()) },
  "UK-TAIL": {
    below: holds(raisedTo(949)),
    at: holds(raisedTo(950)),
    "unknown above: it may be wound": open(raisedTo(951)),
    "unknown: several": open(raisedTo(800, two)),
    unknown: open(heightless(raisedTo(951))),
    "not applicable": none(bare()),
  },
  "IE-END": {
    above: holds(raisedTo(749)),
    at: holds(raisedTo(750)),
    below: fails(raisedTo(751), 1),
    "unknown: high enough from the floor, not from the window seat": open({
      ...raisedTo(749),
      footholdMm: 450,
    }),
    "only midway": fails(hanging(longestMidway(100, 760)), 0.5),
    "a loop that breaks away": fails(looped(751, "breakaway")),
    "a lead that hangs free, lower": fails(lead(100, 1599)),
    "unknown: as high, by its clips": open(lead(100, 1600)),
    "unknown: clipped": open(lead(0)),
    "unknown: a lead whose height nobody said": open(lead(100)),
    "unknown: a lead that nobody followed": open(bare({ kind: "motor" })),
    "a top rail’s cords beside a clipped lead, on the floor": fails({
      ...lead(0),
      pulls: railed(4000).pulls,
    }),
    unknown: open(heightless(raisedTo(751))),
    "not applicable": none(bare()),
  },
  "AU-LOOP": {
    below: holds(hanging(fromTo(100, 219.9), { count: 2, exitBelowTopMm: 900 })),
    at: fails(hanging(fromTo(100, 220), { count: 2, exitBelowTopMm: 900 }), 1),
    above: fails(hanging(fromTo(100, 221), { count: 2, exitBelowTopMm: 900 }), 1),
    "one cord, folded in two": holds(hanging(fromTo(100, 439), { exitBelowTopMm: 900 })),
    "higher than 1600 mm": none(hanging(fromTo(100, 749), two)),
    "down to 1600 mm": fails(hanging(fromTo(100, 750), two), 1),
    "only midway": fails(hanging(longestMidway(100, 760), two), 0.5),
    "a loose loop": fails(looped(800, "none")),
    "not applicable": none(looped(800)),
    unknown: open(heightless(hanging(fromTo(100, 221), two))),
    "height not known, and short": holds(heightless(hanging(fromTo(100, 219), two))),
  },
  "AU-CLEAT": {
    "unknown: out of reach": open(raisedTo(900, { cleatAboveFloorMm: 3000 })),
    "unknown: above its lock": open({ ...raisedTo(900, { cleatAboveFloorMm: 1900 }), topAboveFloorMm: 1800 }),
    "unknown: low from a bed beside it": open({ ...raisedTo(900), footholdMm: 500 }),
    above: holds(raisedTo(900, { cleatAboveFloorMm: 1601 })),
    at: holds(raisedTo(900, { cleatAboveFloorMm: 1600 })),
    below: fails(raisedTo(900, { cleatAboveFloorMm: 1599 }), 1),
    "not applicable": none(bare()),
  },
  "AU-GUIDE": {
    below: open(backed([219.5], gripped, { topAboveFloorMm: 1700 })),
    "taut, on a heavy shade": holds(
      backed([150, 150], { ...heavy, heldN: [160, 160] }, { topAboveFloorMm: 1700 }),
    ),
    at: fails(backed([220], gripped, { topAboveFloorMm: 1700 }), 0),
    above: fails(backed([221], gripped, { topAboveFloorMm: 1700 }), 0),
    "higher than 1600 mm": none(backed([300], gripped, high)),
    "unknown: a tensioner that may hold, and leave no loop": open(looped(800)),
    "a lead at 220 mm and 1600 mm": fails(lead(220, 1600)),
    "a lead, shorter: its clips": open(lead(219, 1600)),
    "a lead that hangs higher": none(lead(300, 1601)),
    "unknown: a lead whose height nobody said": open(lead(300)),
    "unknown: a lead that nobody followed": open(bare({ kind: "motor" })),
    "a tensioner that ends higher": none(looped(600, "tensioner", { topAboveFloorMm: 2400 })),
    "unknown: it slides": open(backed([200], {}, { topAboveFloorMm: 1700 })),
    "unknown: height": open(heightless(backed([300], gripped))),
    "unknown: a sleeve": open(backed([300], sleeved, { topAboveFloorMm: 1700 })),
    "not applicable": none(bare()),
  },
  "AU-REMOVE": {
    unknown: open(looped(800)),
    "unknown: height": open(heightless(looped(600))),
    "not applicable: it ends higher": none(looped(700)),
    "not applicable: loose": none(looped(800, "none")),
    "not applicable": none(bare()),
  },
  "AU-FOLLOW": always(bare()),
  "AU-BUTTON": { unknown: open(bare({ kind: "motor" })), "not applicable": none(bare()) },
  "AU-INSTALLER": always(bare()),
  "AU-LBL-W": {
    below: letters(4.9, 2.5, "failed"),
    at: letters(5, 2.5, "not-proven"),
    above: letters(6, 2.5, "not-proven"),
  },
  "AU-LBL-T": {
    below: letters(5, 1.4, "failed"),
    at: letters(5, 1.5, "not-proven"),
    above: letters(5, 2, "not-proven"),
  },
  "AU-SUPPLY": always(bare()),
  "NZ-NONE": {
    below: open(backed([219.5], gripped)),
    "a short cord that hangs alone": holds(hanging(200)),
    at: fails(backed([220], gripped), 0),
    above: fails(backed([221], gripped), 0),
    "hanging cords": fails(hanging(fromTo(100, 221), two), 1),
    "unknown: it slides": open(backed([200])),
    "unknown: a sleeve": open(backed([300], sleeved)),
    "not applicable": none(bare()),
  },
  "NZ-EXPOSED": {
    at: holds(bare()),
    "unknown: a sleeve": open(backed([300], sleeved)),
    above: fails(backed([100])),
  },
  "CAUTION-FREE": {
    below: holds(raisedTo(199)),
    at: holds(raisedTo(200)),
    above: fails(raisedTo(201), 1),
    "only midway": fails(hanging(longestMidway(150, 201)), 0.5),
    "not applicable": none(bare()),
  },
  "CAUTION-LOOP": {
    below: open(backed([199.5], gripped)),
    at: open(backed([200], gripped)),
    above: fails(backed([200.5], gripped), 0),
    "taut, on a heavy shade": holds(backed([180], heavy)),
    "unknown: a sleeve": open(backed([300], sleeved)),
    "unknown: it slides": open(backed([150])),
    "not applicable": none(bare()),
  },
  "CAUTION-GUIDE": {
    "above, though every cord comes apart": fails(backed([150, 201], { releases: true })),
    below: holds(backed([150, 199])),
    at: holds(backed([150, 200])),
    above: fails(backed([150, 201]), 0),
    "not applicable": none(bare()),
  },
  "CAUTION-CLEAT": {
    above: holds(raisedTo(900, { cleatAboveFloorMm: 1601 })),
    at: holds(raisedTo(900, { cleatAboveFloorMm: 1600 })),
    below: fails(raisedTo(900, { cleatAboveFloorMm: 1599 }), 1),
    "not applicable": none(bare()),
  },
  "GEN-CORDLESS": {
    at: holds(bare()),
    "unknown: a sleeve": open(backed([300], sleeved)),
    "above: at the back": fails(backed([100])),
    "above: at the front": fails(raisedTo(100), 1),
    "above: a loop": fails(looped(600)),
    // The lead of a motor is a cord: one that is to be clipped is so once a hand has followed it.
    "unknown: a motor’s lead": open(bare({ kind: "motor" })),
    "unknown: a motor’s lead, clipped": open(bare({ kind: "motor", leadLooseMm: 0 })),
    "above: a motor’s lead": fails(bare({ kind: "motor", leadLooseMm: 1 })),
  },
};

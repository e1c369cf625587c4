import type { Quantity } from "../../rules/rule.ts";
import * as facts from "./facts.ts";
import { headOpening } from "./opening.ts";
import * as pull from "./pull-cords.ts";
import type { QuantityDefinition } from "./quantity.ts";
import * as rear from "./rear-cords.ts";

/** How each quantity that a rule may name is computed; the compiler asks for a new one here. */
export const QUANTITY_TABLE: Record<Quantity, QuantityDefinition> = {
  "free-cord-length": pull.freeCordLength,
  "joined-cord-length": pull.joinedCordLength,
  "joined-cord-loop": pull.joinedCordLoop,
  "cord-between-contacts": rear.cordBetweenContacts,
  "loop-perimeter": rear.loopPerimeter,
  "head-opening": headOpening,
  "pull-cord-low-point": pull.pullCordLowPoint,
  "cord-low-point": pull.cordLowPoint,
  "hanging-length": pull.hangingLength,
  "breakaway-loop-low-point": facts.breakawayLoopLowPoint,
  "breakaway-loop-length": facts.breakawayLoopLength,
  "breakaway-load": facts.breakawayLoad,
  "operating-cord-length": pull.operatingCordLength,
  "operating-loop-length": facts.operatingLoopLength,
  "loose-loop-length": pull.looseLoopLength,
  "guided-loop-length": rear.guidedLoopLength,
  "any-loop-length": rear.anyLoopLength,
  "cleat-height": facts.cleatHeight,
  "cord-to-wind": facts.cordToWind,
  "tail-below-cleat": facts.tailBelowCleat,
  "rear-guide-spacing": rear.rearGuideSpacing,
  "inner-cords-reachable": facts.innerCordsReachable,
  "free-hanging-cords": facts.freeHangingCords,
  "cords-in-connector": facts.cordsInConnector,
  "accessible-cords": facts.accessibleCords,
  "guide-keeps-cord": facts.guideKeepsCord,
  "button-cells": facts.buttonCells,
  "instructions-followed": facts.instructionsFollowed,
  "hidden-cord-exposed": facts.hiddenCordExposed,
  "relies-on-device": facts.reliesOnDevice,
  "loop-device-fixed": facts.loopDeviceFixed,
  "collector-opens": facts.collectorOpens,
  "secured-by-device": facts.securedByDevice,
  "small-parts": facts.smallParts,
  "lead-content": facts.leadContent,
  "signal-word-height": facts.signalWordHeight,
  "warning-text-height": facts.warningTextHeight,
  "warnings-and-labels": facts.warningsAndLabels,
  "maker-label": facts.makerLabel,
  "refers-to-law": facts.refersToLaw,
};

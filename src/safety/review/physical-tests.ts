import type { PhysicalTest, PhysicalTestId } from "../../shade-plan/index.ts";
import { GRAVITY, massText, type UnitChoice } from "../../units/index.ts";
import { mmText } from "./texts.ts";

/** The tests of hands, weights and laboratories, in the maker's units. */
export function physicalTest(id: PhysicalTestId, units: UnitChoice): PhysicalTest {
  const { title, text } = TESTS[id];
  return { id, title, text: text(units) };
}

/** A force as a luggage scale shows it. */
function scaleText(forceN: number, units: UnitChoice): string {
  return `${forceN} N (${massText(forceN / GRAVITY, units)} on a luggage scale)`;
}

const TESTS: Record<PhysicalTestId, { title: string; text: (units: UnitChoice) => string }> = {
  "pull-rear-cords": {
    title: "Pull at every rear cord",
    text: (units) =>
      `With the shade down, then a quarter, half, three quarters and all the way up: hook a luggage scale into each cord between each pair of rings and between the top ring and the board. Pull slowly up to ${scaleText(35, units)}, straight out, sideways, up and down. Measure the cord between the two rings and the way around the loop while you hold the pull. Do the same with the lock open and with the cord off its cleat.`,
  },
  "pull-enclosure": {
    title: "Try to get at the hidden cords",
    text: (units) =>
      `Pull at the sleeve, and at each grip or ring, with ${scaleText(35, units)} in every direction, in every position of the shade. Try to get a finger or a hook at a cord, and to take a part off without a tool. Raise and lower the shade a few hundred times and do it again.`,
  },
  "reach-and-loop": {
    title: "Reach and loop tests of the 2018 standard",
    text: () =>
      "Appendix C of ANSI/WCMA A100.1-2018 decides whether a rear cord can be reached, appendix D whether it makes a hazardous loop. They ask for the standard itself and its gauges, or for a laboratory.",
  },
  "head-probe": {
    title: "Head probe of EN 16433",
    text: () =>
      "A laboratory pushes the head probe of EN 16433 into each loop of cord, and of cord and cloth, at several heights of the shade, the fold half gathered among them. Size and force stand in the standard, which was not read here.",
  },
  "wind-on-cleat": {
    title: "Wind the cord on its cleat",
    text: (units) =>
      `Raise the shade all the way, wind the cord on the cleat in figures of eight and measure what still hangs: nothing should, and at most a single cord of ${mmText(200, units)}. Pull at it with ${scaleText(35, units)}: it stays on.`,
  },
  "guide-pull": {
    title: "Pull at every guide",
    text: (units) =>
      `Pull at each ring and each tensioner with ${scaleText(70, units)} for 10 s, in every direction. It stays where it is, holds its cord, and the cord forms no loop of ${mmText(220, units)} or longer.`,
  },
  "breakaway-load": {
    title: "Hang a weight in the loop",
    text: (units) =>
      `Hang ${massText(6, units)} in the loop: it comes apart. It closes again and works afterwards.`,
  },
  "rear-release": {
    title: "Hang a weight on every rear cord",
    text: (units) =>
      `Hang ${massText(6, units)} on each rear cord between two rings: it comes away from its bottom ring, and no part falls that fits a child’s mouth. It goes together again and works afterwards.`,
  },
  "button-cells": {
    title: "Look into the remote control",
    text: () =>
      "Look which cells it runs on. Where they are button or coin cells: its lid opens only with a tool, or by two movements at once, and stays shut when it is dropped; warnings are on the remote, its packaging and its instructions. Ask its maker for the papers.",
  },
  "collector-opens": {
    title: "Hang a weight on the connector",
    text: (units) =>
      `Hang ${massText(6, units)} on each pair of cords above the connector: it comes apart. It closes again afterwards.`,
  },
  "loop-device": {
    title: "Try the shade without its device",
    text: () =>
      "Take the tension device off the wall: the shade cannot be worked any more. The device came attached to the loop, and it takes a tool to get it off.",
  },
  "small-parts": {
    title: "Pull at every small part",
    text: (units) =>
      `Pull at each ring, knot, bead, tassel and end cap with ${scaleText(90, units)} in every direction. Nothing comes off that fits a tube ${mmText(31.7, units)} wide.`,
  },
  "motor-lead": {
    title: "Look for the motor’s lead",
    text: (units) =>
      `Follow the lead of the motor, and of its charger, with your hand: all of it is clipped to board and wall, no more than ${mmText(200, units)} hangs free anywhere, and a pull of ${scaleText(35, units)} draws no loop out.`,
  },
  lead: {
    title: "Lead in the outer parts",
    text: () =>
      "Ask whoever made the parts for a laboratory’s report on lead, or have one made. At most 90 mg in a kilogram.",
  },
  labels: {
    title: "Labels, warnings and papers",
    text: () =>
      "Go through shade, packaging, instructions and advertisements with the current text of the rules in hand, and tick off each label and warning that it asks for.",
  },
};

import { type Job, type Making, ownUsualPart, PART_SETTINGS, partsOf, type Window } from "../job/index.ts";
import type { Plan, ShadePlan } from "./plan-types.ts";

/**
 * The job with each part of the maker's own written into the shade that was planned with it, so that it is planned alike
 * wherever it goes, whatever comes onto the bench. Examples are never written in.
 */
export function withChosenParts(job: Job, { shades }: Plan): Job {
  const planned = new Map(shades.map((shade) => [`${shade.roomId} ${shade.shadeId}`, shade]));
  const rooms = job.rooms.map((room) => ({
    ...room,
    windows: room.windows.map((window) => {
      const shade = planned.get(`${room.id} ${window.id}`);
      return shade === undefined ? window : withParts(job, window, shade);
    }),
  }));
  return { ...job, rooms };
}

function withParts(job: Job, window: Window, { lift }: ShadePlan): Window {
  const parts = partsOf(job);
  const said = { ...job.workshop?.lift, ...window.shade.making?.lift };
  const own = (list: readonly { id: string; demo?: boolean }[], id: string | undefined) =>
    list.some((part) => part.id === id && part.demo !== true) ? id : undefined;
  const usual = PART_SETTINGS.filter((setting) => setting !== "tube" || lift.takeUp === "tube").map(
    (setting) => [setting, ownUsualPart(parts, setting)] as const,
  );
  const taken = [
    ...usual,
    ["lock", own(parts.locks, lift.takeUp === "lock" ? lift.lockId : undefined)] as const,
    ["drive", own(parts.drives, lift.takeUp === "tube" ? lift.drive.id : undefined)] as const,
  ];
  const chosen = Object.fromEntries(
    taken.filter(([setting, id]) => id !== undefined && said[setting] === undefined),
  ) as NonNullable<Making["lift"]>;
  if (Object.keys(chosen).length === 0) return window;
  const { making } = window.shade;
  return {
    ...window,
    shade: { ...window.shade, making: { ...making, lift: { ...making?.lift, ...chosen } } },
  };
}

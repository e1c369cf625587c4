import { counted } from "../words/index.ts";

const MS_PER_S = 1000;
const S_PER_MIN = 60;
/** Before that nobody can tell, and what is nearly done needs no telling. */
const LEAST_SHARE = 0.02;
const LEAST_S = 3;

/** How long it will still take, by how long the share that is done has taken: a clock that starts now. */
export function timeLeft(now: () => number = () => performance.now()): (share: number) => string {
  const start = now();
  return (share) => {
    if (share < LEAST_SHARE || share >= 1) return "";
    const seconds = ((now() - start) / MS_PER_S) * (1 / share - 1);
    if (seconds < LEAST_S) return "";
    return seconds < S_PER_MIN
      ? `, about ${counted(Math.ceil(seconds), "second")} left`
      : `, about ${counted(Math.round(seconds / S_PER_MIN), "minute")} left`;
  };
}

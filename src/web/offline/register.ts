import { create } from "zustand";
import { whenIdle } from "../frame/when-idle.ts";
import { usePlanner } from "../state/store.ts";

interface Release {
  /** A newer one, until the maker asks for it. */
  waiting?: ServiceWorker;
  /** Another tab asked for it: the files of the one that runs here are gone. */
  isTaken: boolean;
}

export const useRelease = create<Release>()(() => ({ isTaken: false }));

let isAskedHere = false;

/** Keeps all files of the planner on this device, so that it opens without a network. */
export function registerServiceWorker(): void {
  if (!import.meta.env.PROD || !("serviceWorker" in navigator)) return;
  // The page of a first visit is taken under its care without a change of release.
  let hasRelease = navigator.serviceWorker.controller !== null;
  navigator.serviceWorker.addEventListener("controllerchange", () => {
    if (hasRelease && !isAskedHere) useRelease.setState({ isTaken: true });
    hasRelease = true;
  });
  // To fetch all files takes as long as to begin: on a first visit the first screen goes before it.
  if (hasRelease) register();
  else whenIdle(register);
}

function register(): void {
  navigator.serviceWorker
    .register("./service-worker.js")
    .then((registration) => {
      const offer = () => {
        const waiting = newerRelease(registration);
        if (waiting) useRelease.setState({ waiting });
      };
      offer();
      registration.addEventListener("updatefound", () => {
        registration.installing?.addEventListener("statechange", offer);
      });
    })
    // Without it the planner works all the same as long as there is a network.
    .catch(() => {});
}

/**
 * The release that waits for the one in use to end. WebKit names the first release of all as waiting still when it has the
 * page under its care already: it is newer than none.
 */
export function newerRelease({
  active,
  waiting,
}: Pick<ServiceWorkerRegistration, "active" | "waiting">): ServiceWorker | undefined {
  return waiting && active && waiting !== active ? waiting : undefined;
}

/** Changes to the newer release once what was edited is on the shelf. */
export function takeRelease(): void {
  const { waiting } = useRelease.getState();
  isAskedHere = true;
  navigator.serviceWorker.addEventListener("controllerchange", () => void loadAnew(), { once: true });
  waiting?.postMessage("take-over");
}

/** Loads the page anew. What could not be saved holds it back: the browser asks first. */
export async function loadAnew(): Promise<void> {
  await new Promise<void>((resolve) => {
    const isAtRest = () => usePlanner.getState().saving.state !== "saving";
    if (isAtRest()) return resolve();
    const stop = usePlanner.subscribe(() => {
      if (!isAtRest()) return;
      stop();
      resolve();
    });
  });
  location.reload();
}

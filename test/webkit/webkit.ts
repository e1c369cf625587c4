import { type ChildProcess, spawn } from "node:child_process";
import { createServer } from "node:net";
import { WEB } from "../../scripts/build-web.mjs";
import { findWebKit, HOW_TO_GET_WEBKIT } from "../../scripts/webkit.mjs";
import { serve } from "../../src/server/index.ts";

export const isThere = findWebKit() !== undefined;
if (!isThere) console.warn(`LEFT OUT: no WebKitGTK; to try the planner in it, ${HOW_TO_GET_WEBKIT}.`);

/** Ends what hangs, on a machine many times slower. */
const HANGS_MS = 20_000;
/** Name under which an element is handed over: W3C WebDriver (2018), section 12.2. */
const ELEMENT = "element-6066-11e4-a52e-4f735466cecf";

/** A page of WebKitGTK, spoken to in W3C WebDriver; elements are named by XPath. */
export interface WebKitPage {
  /** Where the built planner is served, with a slash at the end. */
  url: string;
  goto(address: string): Promise<void>;
  reload(): Promise<void>;
  /** Waits for it. */
  see(xpath: string): Promise<string>;
  click(xpath: string): Promise<void>;
  /** Presses so far below its middle, px. */
  pressBelow(xpath: string, downPx: number): Promise<void>;
  type(xpath: string, text: string): Promise<void>;
  evaluate(body: string): Promise<unknown>;
  /** What the page reported as an error since it was loaded last. */
  errors(): Promise<unknown>;
  stopServing(): Promise<void>;
  close(): Promise<void>;
}

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  const address = server.address();
  await new Promise((done) => server.close(done));
  return typeof address === "object" && address ? address.port : 0;
}

const WATCH = `if (!window.faults) { window.faults = [];
  addEventListener("error", (event) => window.faults.push(event.message));
  addEventListener("unhandledrejection", (event) => window.faults.push(String(event.reason)));
  addEventListener("securitypolicyviolation", (event) => window.faults.push(event.violatedDirective)); }`;

/** What the page shows: without it a failure on another machine tells nothing. */
const SHOWN = `return { address: location.href, faults: window.faults,
  values: [...document.querySelectorAll("input")].map((input) => input.value),
  text: document.body.innerText.slice(0, 1500) }`;

export async function startWebKit(): Promise<WebKitPage> {
  const found = findWebKit();
  if (found === undefined) throw new Error(`no WebKitGTK: ${HOW_TO_GET_WEBKIT}`);
  const serving = await serve({ planner: WEB, port: 0 });
  const display = await startScreen(found.screen);
  const port = await freePort();
  const driver = spawn(found.driver, [`--port=${port}`], {
    env: {
      ...process.env,
      DISPLAY: display.name,
      LIBGL_ALWAYS_SOFTWARE: "1",
      WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: "1",
    },
    stdio: "ignore",
  });
  const call = async (method: string, path: string, body?: object) => {
    const answer = await fetch(`http://127.0.0.1:${port}${path}`, {
      method,
      headers: { "content-type": "application/json" },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
    const { value } = (await answer.json()) as { value: Record<string, string> };
    if (!answer.ok) throw new Error(`${method} ${path}: ${value.error} ${value.message}`);
    return value;
  };
  await until(() => call("GET", "/status"));
  const options = { binary: found.browser, args: ["--automation"] };
  const { sessionId } = await call("POST", "/session", {
    capabilities: { alwaysMatch: { "webkitgtk:browserOptions": options } },
  });
  const at = `/session/${sessionId}`;
  await call("POST", `${at}/timeouts`, { implicit: HANGS_MS, script: HANGS_MS });
  await call("POST", `${at}/window/rect`, { x: 0, y: 0, width: 1440, height: 900 });
  const evaluate = (body: string) => call("POST", `${at}/execute/sync`, { script: body, args: [] });
  const see = async (xpath: string) => {
    try {
      const element = await call("POST", `${at}/element`, { using: "xpath", value: xpath });
      return element[ELEMENT] ?? "";
    } catch (error) {
      throw new Error(`not seen: ${xpath}\n${JSON.stringify(await evaluate(SHOWN), null, 2)}`, {
        cause: error,
      });
    }
  };
  return {
    url: serving.url,
    see,
    evaluate,
    errors: () => evaluate("return window.faults"),
    async goto(address) {
      await call("POST", `${at}/url`, { url: address });
      await evaluate(WATCH);
    },
    async reload() {
      await call("POST", `${at}/refresh`, {});
      await evaluate(WATCH);
    },
    async click(xpath) {
      await call("POST", `${at}/element/${await see(xpath)}/click`, {});
    },
    async pressBelow(xpath, downPx) {
      const origin = { [ELEMENT]: await see(xpath) };
      const actions = [
        { type: "pointerMove", origin, x: 0, y: downPx },
        { type: "pointerDown", button: 0 },
        { type: "pointerUp", button: 0 },
      ];
      await call("POST", `${at}/actions`, { actions: [{ type: "pointer", id: "mouse", actions }] });
    },
    async type(xpath, text) {
      const element = await see(xpath);
      // All that stands there is typed over, as by a maker who has it marked.
      await call("POST", `${at}/execute/sync`, {
        script:
          "arguments[0].scrollIntoView({ block: 'center' }); arguments[0].focus(); arguments[0].select()",
        args: [{ [ELEMENT]: element }],
      });
      await call("POST", `${at}/element/${element}/value`, { text });
    },
    stopServing: () => serving.close(),
    async close() {
      await call("DELETE", at).catch(() => {});
      driver.kill();
      display.screen.kill();
      await serving.close().catch(() => {});
    },
  };
}

/** A screen that nobody sees, under the first number that is free. */
async function startScreen(program: string): Promise<{ name: string; screen: ChildProcess }> {
  const screen = spawn(program, ["-displayfd", "3", "-screen", "0", "1440x900x24"], {
    stdio: ["ignore", "ignore", "ignore", "pipe"],
  });
  const number = await new Promise<string>((done, fail) => {
    screen.stdio[3]?.once("data", (data) => done(String(data).trim()));
    screen.once("exit", (code) => fail(new Error(`the screen ended with ${code}`)));
  });
  return { name: `:${number}`, screen };
}

async function until(works: () => Promise<unknown>): Promise<void> {
  for (let tries = 0; ; tries++) {
    try {
      await works();
      return;
    } catch (error) {
      if (tries > HANGS_MS / 100) throw error;
      await new Promise((done) => setTimeout(done, 100));
    }
  }
}

/** Oldest Node that the tools of the build are made for. */
const WANTED = [20, 19];

/** Stops below Node 20; warns below the release that the build tools ask for. */
export function checkNode() {
  const [major = 0, minor = 0] = process.versions.node.split(".").map(Number);
  const wanted = WANTED.join(".");
  if (major < 20) {
    console.error(`Shadewright needs Node ${wanted} or newer; this is Node ${process.versions.node}.`);
    process.exit(1);
  }
  if (major === 20 && minor < 19) {
    console.error(`Node ${process.versions.node} is a little old: from ${wanted} on, every part is tried.`);
  }
}

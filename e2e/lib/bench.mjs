// Benches for the tests: each is a copy of a home of its own, served by the real binary.
import { spawn } from "node:child_process";
import { cp, mkdir, mkdtemp, readFile, rm } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../..");
export const output = path.join(root, "e2e", "output");
export const finishedDemo = path.join(output, "demo");
export const terminal = path.join(output, "demo.txt");
export const screenshots = path.join(root, "screenshots");
export const binary = process.env.WOADSTONE ?? path.join(root, "target", "debug", "woadstone");

// Rendered photos with their outlines, by the example of that name beside the binary.
export const pictures = path.join(output, "pictures");
export const photographer = path.join(path.dirname(binary), "examples", "stages");

/** Runs the binary to its end and gives what it printed; throws when it fails. */
export function run(args, { within = 600_000, program = binary } = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, { stdio: ["ignore", "pipe", "pipe"], timeout: within });
    let text = "";
    child.stdout.on("data", (part) => { text += part; });
    child.stderr.on("data", (part) => { text += part; });
    child.on("error", reject);
    child.on("close", (code) => {
      if (code === 0) resolve(text);
      else reject(new Error(`${path.basename(program)} ${args.join(" ")} ended with ${code}:\n${text}`));
    });
  });
}

/**
 * Serves a bench on a free port. `kind` is "demo" (a copy of the finished demo,
 * served by `woadstone demo`) or "empty" (a new bench, served by `woadstone serve`).
 */
export async function serve(kind) {
  await mkdir(output, { recursive: true });
  const home = await mkdtemp(path.join(output, `${kind}-`));
  if (kind === "demo") await cp(finishedDemo, home, { recursive: true });
  const command = kind === "demo" ? "demo" : "serve";
  const child = spawn(binary, [command, "--home", home, "--port", "0"], { stdio: ["ignore", "pipe", "pipe"] });
  const address = await printedAddress(child);
  const stop = async () => {
    const ended = new Promise((resolve) => child.once("close", resolve));
    if (child.exitCode === null) {
      child.kill("SIGTERM");
      await ended;
    }
    await rm(home, { recursive: true, force: true });
  };
  return { address, origin: new URL(address).origin, home, stop };
}

/** Waits for the line "Open http://127.0.0.1:PORT/…" of a starting server. */
function printedAddress(child) {
  return new Promise((resolve, reject) => {
    let text = "";
    const timer = setTimeout(() => {
      child.kill("SIGKILL");
      reject(new Error(`no address printed within two minutes:\n${text}`));
    }, 120_000);
    const read = (part) => {
      text += part;
      const found = /Open (http:\/\/127\.0\.0\.1:\d+\/\S*)/.exec(text);
      if (!found) return;
      clearTimeout(timer);
      resolve(found[1]);
    };
    child.stdout.on("data", read);
    child.stderr.on("data", read);
    child.once("close", (code) => {
      clearTimeout(timer);
      reject(new Error(`the server ended with ${code} before it printed an address:\n${text}`));
    });
  });
}

/** The original bytes of a photo in a bench's vault, by content hash. */
export function vaulted(home, hash) {
  return readFile(path.join(home, "vault", hash.slice(0, 2), hash.slice(2)));
}

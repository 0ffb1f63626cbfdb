// Makes the finished demo that every test starts from a copy of.
import { existsSync } from "node:fs";
import { mkdir, rm, writeFile } from "node:fs/promises";
import { binary, finishedDemo, output, run, terminal } from "./lib/bench.mjs";

if (!existsSync(binary)) {
  console.error(`There is no ${binary}. Build it with: cargo build`);
  process.exit(1);
}
await rm(output, { recursive: true, force: true });
await mkdir(output, { recursive: true });
await writeFile(terminal, await run(["demo", "--home", finishedDemo, "--no-serve"]));

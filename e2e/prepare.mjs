// Makes the finished demo that every test starts from a copy of.
import { existsSync } from "node:fs";
import { mkdir, rm, writeFile } from "node:fs/promises";
import { binary, finishedDemo, output, photographer, pictures, run, terminal } from "./lib/bench.mjs";

for (const program of [binary, photographer]) {
  if (existsSync(program)) continue;
  console.error(`There is no ${program}. Build it with: cargo build --workspace --all-targets`);
  process.exit(1);
}
await rm(output, { recursive: true, force: true });
await mkdir(output, { recursive: true });
await run([pictures], { program: photographer });
await writeFile(terminal, await run(["demo", "--home", finishedDemo, "--no-serve"]));

// Walks through one case: node walk.js PROGRAM BUILD_FOLDER CASE. Each case has a world of its own.

import { fileURLToPath } from "node:url";
import path from "node:path";
import { make_world } from "./world.js";

const [program, build, name] = process.argv.slice(2);
const here = path.dirname(fileURLToPath(import.meta.url));
const { walk } = await import(`./cases/${name}.js`);
const world = await make_world({ program, build, source: path.join(here, "..", "..") });
try {
  await walk(world);
  world.look_at_consoles();
  console.log(`${name}: as it should be`);
} catch (failure) {
  console.error(failure.stack ?? failure);
  await world.keep_pictures(name);
  process.exitCode = 1;
} finally {
  await world.close();
}

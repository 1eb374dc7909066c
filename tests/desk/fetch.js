// Installs what package-lock.json pins where there is no npm: fetch.js LOCK_FILE FOLDER
// Each package is fetched from npm's registry, or the one that npm_config_registry names, and is what its hash says (W3C, Subresource Integrity,
// section 3.1). Ends with 1 where one is not, with 3 where it cannot be had.

import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";

const [lock_file, folder] = process.argv.slice(2);
const registry = (process.env.npm_config_registry ?? "https://registry.npmjs.org").replace(/\/$/, "");

function is_pinned(bytes, integrity) {
  const [kind, hash] = integrity.split(/-(.*)/s);
  return createHash(kind).update(bytes).digest("base64") === hash;
}

async function fetched(address) {
  const response = await fetch(address);
  if (!response.ok) {
    throw new Error(`${address}: ${response.status}`);
  }
  return Buffer.from(await response.arrayBuffer());
}

async function install(place, { version, integrity }) {
  const name = place.replace(/^node_modules\//, "");
  const bytes = await fetched(`${registry}/${name}/-/${name}-${version}.tgz`);
  if (!is_pinned(bytes, integrity)) {
    console.error(`EINTEGRITY: ${name} is not what package-lock.json pins`);
    process.exit(1);
  }
  const into = join(folder, place);
  const packed = `${into}.tgz`;
  mkdirSync(into, { recursive: true });
  writeFileSync(packed, bytes);
  execFileSync("tar", ["-xzf", packed, "--strip-components=1", "-C", into]);
  rmSync(packed);
}

try {
  const { packages } = JSON.parse(readFileSync(lock_file, "utf8"));
  for (const [place, pinned] of Object.entries(packages)) {
    if (place !== "") {
      await install(place, pinned);
    }
  }
} catch (failure) {
  console.error(failure.cause?.message ?? failure.message);
  process.exit(3);
}

// Runs test binaries for bare wasm: node wasm_tests.mjs module.wasm …
import { readFileSync } from "node:fs";
import path from "node:path";

Error.stackTraceLimit = 200;
let passed = 0;
let failed = 0;

/** From a stack, the innermost function of the suite itself: the test or what it called. */
function where(stack, suite) {
  const own = stack
    .split("\n")
    .map((line) => line.match(/\.wasm\.([^ ]+) \(/)?.[1])
    .filter((name) => name && name.includes(suite));
  return own.length > 0 ? own.join("\n      ") : stack;
}

for (const file of process.argv.slice(2)) {
  const suite = path.basename(file).replace(/-[0-9a-f]+\.wasm$/, "");
  const start = Date.now();
  try {
    const { instance } = await WebAssembly.instantiate(readFileSync(file), {});
    const code = instance.exports.main(0, 0);
    if (code !== 0) throw new Error(`the harness returned ${code}`);
    passed += 1;
    console.log(`  ✓ ${suite} in wasm ${((Date.now() - start) / 1000).toFixed(1)} s`);
  } catch (error) {
    failed += 1;
    console.log(`  ✗ ${suite} in wasm: ${error.message}; it stopped in\n      ${where(error.stack ?? "", suite)}`);
    console.log("    Run the same suite natively to read its message; if it passes there, the two differ.");
  }
}
console.log(`  suites: ${passed} passed, ${failed} failed`);
process.exit(failed > 0 || passed === 0 ? 1 : 0);

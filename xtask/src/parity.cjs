// Asks the native workbench and the wasm module the same lines:
// node compare.cjs path/to/workbench path/to/digests folder/with/lines
const { readFileSync } = require("node:fs");
const { spawn, spawnSync } = require("node:child_process");
const path = require("node:path");
const core = require("./parity.js");

const [workbench, digests, folder] = process.argv.slice(2);
const TIMES = 97;
const DRAWN = 300;

/** Numbers spread by the additive recurrence of the golden ratio's relatives: no randomness. */
function spread(place, round, low, high, logarithmic) {
  const step = 1 / (1 + ((place * 0.7548776662466927) % 1) + 0.6180339887498949);
  const share = ((round + 1) * step) % 1;
  return logarithmic ? low * (high / low) ** share : low + (high - low) * share;
}

function lines(name) {
  return readFileSync(path.join(folder, name), "utf8").split("\n").filter((line) => line.trim() !== "");
}

/** The answers of every third of the invented customers that the advice is tested with. */
function customers() {
  const file = path.join(folder, "../customers/customers.json");
  return JSON.parse(readFileSync(file, "utf8"))
    .filter((_, index) => index % 3 === 0)
    .map((customer) => JSON.stringify(customer.answers));
}

function asked(template, round) {
  let place = 0;
  return template.replace(/<([-+.0-9e]+)\.\.([-+.0-9e]+)( log)?>/g, (_, low, high, logarithmic) => {
    place += 1;
    return String(spread(place, round, Number(low), Number(high), Boolean(logarithmic)));
  });
}

const templates = lines("figures.txt");
const figures = templates.flatMap((template) => Array.from({ length: TIMES }, (_, round) => asked(template, round)));
const work = [["figure", figures], ["advise", customers()]].filter(([command]) => core[command]);

let differing = 0;
let outdated = 0;
for (const [command, questions] of work) {
  if (questions.length === 0) continue;
  const native = spawnSync(workbench, [command], { input: `${questions.join("\n")}\n`, encoding: "utf8", maxBuffer: 1 << 30 });
  if (native.status !== 0) {
    console.log(`  the native workbench failed at ${command}: ${native.stderr}`);
    process.exit(1);
  }
  const answers = native.stdout.trimEnd().split("\n");
  const before = differing;
  const refusals = new Map();
  questions.forEach((question, index) => {
    const ours = core[command](question);
    const line = command === "figure" ? templates[Math.floor(index / TIMES)] : question;
    if (ours.startsWith('{"error"')) refusals.set(line, [...(refusals.get(line) ?? []), ours]);
    if (ours === answers[index]) return;
    differing += 1;
    if (differing > 5) return;
    const native = answers[index] ?? "";
    const at = [...ours].findIndex((letter, place) => letter !== native[place]);
    const near = (text) => text.slice(Math.max(0, at - 120), at + 120);
    console.log(`  ✗ ${question.slice(0, 200)}\n    native … ${near(native)}\n    wasm   … ${near(ours)}`);
  });
  for (const [line, texts] of refusals) {
    if (texts.length * 2 <= (command === "figure" ? TIMES : 1)) continue;
    outdated += 1;
    console.log(`  ✗ mostly refused, so it compares little: ${line.slice(0, 160)}\n    ${texts[0].slice(0, 300)}`);
  }
  const refused = [...refusals.values()].flat().length;
  console.log(`  ${command}: ${questions.length} answers, ${differing - before} differing, ${refused} of them refusals`);
}

/** The digests of so many drawn advices, both sides at the same time. */
async function drawn() {
  const seeds = Array.from({ length: DRAWN }, (_, seed) => seed);
  const native = spawn(digests, { stdio: ["pipe", "pipe", "inherit"] });
  let told = "";
  native.stdout.on("data", (text) => (told += text));
  const over = new Promise((resolve) => native.on("close", resolve));
  native.stdin.end(seeds.map((seed) => `${seed}\n`).join(""));
  const ours = [];
  for (const seed of seeds) {
    ours.push(core.digest(seed));
    await new Promise(setImmediate);
  }
  await over;
  const theirs = told.trimEnd().split("\n");
  let apart = 0;
  ours.forEach((line, seed) => {
    if (line === theirs[seed] && line.includes(" picks:")) return;
    apart += 1;
    if (apart > 5) return;
    const other = (theirs[seed] ?? "").split(" ");
    const parts = line.split(" ").filter((part, place) => part !== other[place]);
    console.log(`  ✗ drawn answers ${seed}: ${parts.length > 0 ? `differing in ${parts.join(" ")}` : line}`);
  });
  console.log(`  whole advices for drawn answers: ${seeds.length}, ${apart} differing, refused or not finite`);
  return apart;
}

drawn().then((apart) => process.exit(differing + outdated + apart > 0 ? 1 : 0));

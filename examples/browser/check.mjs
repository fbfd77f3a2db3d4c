// Grades one carcass in node with what build.sh made, and checks the result:
//   node check.mjs out
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { resolve } from "node:path";
import assert from "node:assert/strict";

const out = resolve(process.argv[2] ?? "out");
createRequire(import.meta.url)(resolve(out, "wasm_exec.js"));
const go = new globalThis.Go();
const { instance } = await WebAssembly.instantiate(await readFile(resolve(out, "ribface.wasm")), go.importObject);
go.run(instance);

const carcass = {
  sex: "steer",
  maturity: { skeletal: "A90", lean: "A30" },
  marbling: "Sm40",
  lean: { firmness: "firm" },
  measures: { fat: "0.60 in", ribeye: 11.9, kph: "1.5%", weight: "660 lb" },
};
const assess = (request) => JSON.parse(globalThis.ribface.assess(JSON.stringify(request)));

const a = assess({ carcass });
assert.equal(a.maturity, "A70");
assert.equal(a.quality, "Low Choice");
assert.equal(a.yield, "3");
assert.equal(a.yield_grade, 3);
assert.equal(a.steps.at(-1).name, "yield grade");
// The same sum in this language's numbers, which are float64.
assert.equal(Math.floor(2.5 + 2.5 * 0.6 + 0.2 * 1.5 + 0.0038 * 660 - 0.32 * 11.9), 2);

const bad = assess({ carcass: { ...carcass, measures: { ...carcass.measures, fat: "-0.1 in", kph: "" } } });
assert.deepEqual(bad.problems.map((p) => p.path), ["measures.fat", "measures.kph"]);
assert.equal(bad.problems[0].detail, "fat: -0.1 in: out of range; allowed: 0 in to 3 in");
assert.equal(bad.quality, undefined);
assert.ok(JSON.parse(globalThis.ribface.assess(5)).problems[0].detail);
assert.deepEqual(JSON.parse(globalThis.ribface.choices()).editions, ["1975", "1987", "1997", "2016", "2017"]);

console.log("one carcass graded:", a.maturity, a.quality, "yield grade", a.yield_grade, "exactly", a.yield);
process.exit(0);

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
  Sex: "steer",
  Maturity: { Skeletal: "A90", Lean: "A30" },
  Marbling: "Sm40",
  Lean: { Firmness: "firm" },
  Measures: { Fat: "0.60 in", Ribeye: 11.9, KPH: "1.5%", Weight: "660 lb" },
};
const assess = (request) => JSON.parse(globalThis.ribface.assess(JSON.stringify(request)));

const a = assess({ Carcass: carcass });
assert.equal(a.Maturity, "A70");
assert.equal(a.Quality, "Low Choice");
assert.equal(a.Yield, "3");
assert.equal(a.YieldGrade, 3);
assert.equal(a.Steps.at(-1).Name, "yield grade");
// The same sum in this language's numbers, which are float64.
assert.equal(Math.floor(2.5 + 2.5 * 0.6 + 0.2 * 1.5 + 0.0038 * 660 - 0.32 * 11.9), 2);

const bad = assess({ Carcass: { ...carcass, Measures: { ...carcass.Measures, Fat: "-0.1 in" } } });
assert.deepEqual(bad.Problem, { Field: "fat", Value: "-0.1 in", Allowed: "0 in to 3 in", Detail: "fat: -0.1 in: out of range; allowed: 0 in to 3 in" });
assert.equal(bad.Quality, undefined);
assert.ok(JSON.parse(globalThis.ribface.assess(5)).Problem.Detail);
assert.deepEqual(JSON.parse(globalThis.ribface.choices()).Editions, ["1975", "1987", "1997", "2016", "2017"]);

console.log("one carcass graded:", a.Maturity, a.Quality, "yield grade", a.YieldGrade, "exactly", a.Yield);
process.exit(0);

// The house's own engine in the browser: worksheets answer without signal,
// with the server's digits. It is fetched once, after the page stands, and the
// offline worker keeps it.
let started;

// engine starts it; it rejects where the program was built without one.
export function engine() {
  started ??= start();
  return started;
}

async function start() {
  const made = document.documentElement.dataset;
  if (!made.engine) throw new Error("no engine");
  await import(made.enginePage);
  const go = new globalThis.Go();
  const answer = await fetch(made.engine);
  const { instance } = await WebAssembly.instantiate(await answer.arrayBuffer(), go.importObject);
  go.run(instance);
  return globalThis.aerosteepEngine;
}

// calc answers a worksheet from the fields of its form.
export async function calc(name, values) {
  const page = document.documentElement;
  const ready = await engine();
  return JSON.parse(ready.calc(name, JSON.stringify(values), page.lang, page.dataset.units));
}

// foresee makes the forecast that was carried here anew, with readings that wait.
export async function foresee(carried, readings, at) {
  const page = document.documentElement;
  const ready = await engine();
  return JSON.parse(ready.forecast(carried, JSON.stringify(readings), at, page.lang, page.dataset.units));
}

// offBed says how far a position lies from a bed.
export async function offBed(corners, coords) {
  const page = document.documentElement;
  const ready = await engine();
  return ready.offBed(corners, coords.latitude, coords.longitude, coords.accuracy, page.lang, page.dataset.units);
}

// planHere plans a job file on the phone.
export async function planHere(job, at, zone, zoneData) {
  const page = document.documentElement;
  const ready = await engine();
  return JSON.parse(ready.plan(job, at, page.lang, page.dataset.units, zone, zoneData));
}

// What every page does beyond reading: bring the list of faults into view,
// hand over what waits, keep the page for when there is no signal.
import { handOver, tell } from "./queue.js";

document.documentElement.classList.add("scripted");
document.getElementById("mend")?.focus();
if (document.getElementById("log")) import("./log.js");
if (document.querySelector("[data-carried]") && "indexedDB" in window) import("./batch.js");
if (document.querySelector("[data-place]")) import("./place.js");
if (document.getElementById("walk")) import("./walk.js");
if (document.getElementById("bench")) import("./bench.js");
if (document.getElementById("pumpoff")) import("./pumpoff.js");
if (document.querySelector("form[data-sheet]")) import("./worksheet.js");
if (document.getElementById("plan-form")) import("./plan.js");
if (document.querySelector("form[data-keep]")) import("./run.js");
if (document.querySelector("form[data-write]")) import("./write.js");

if ("indexedDB" in window) {
  tell().then(handOver);
  addEventListener("online", handOver);
  setInterval(handOver, 5000);
}
if ("serviceWorker" in navigator) {
  if (document.readyState === "complete") mind();
  else addEventListener("load", mind);
}

// The offline worker comes after the page stands, and what the field needs
// without signal after that: once, and not on a line where data are spared.
async function mind() {
  await navigator.serviceWorker.register("/sw.js");
  await navigator.serviceWorker.ready;
  const pages = await caches.open("aerosteep-pages");
  const bring = (address) => pages.add(address).catch(() => {}); // an answer to a form, or no signal
  const brought = performance.getEntriesByType("navigation")[0]?.workerStart > 0;
  if (!brought) await bring(location.pathname + location.search); // the first page came without the worker
  const carried = document.querySelector("[data-carried]")?.dataset.carried;
  if (carried && !brought) await bring(carried);
  if (navigator.connection?.saveData) return;
  for (const name of ["saturation", "dilute", "depletion", "loads", "dechlorinate"]) {
    const address = `/worksheets/${name}`;
    if (!(await pages.match(address, { ignoreVary: true }))) await bring(address);
  }
  await bringEngine(document.documentElement.dataset);
}

async function bringEngine(made) {
  if (!made.engine) return;
  if (!navigator.serviceWorker.controller) await new Promise((done) => navigator.serviceWorker.addEventListener("controllerchange", done, { once: true }));
  for (const address of [made.enginePage, made.engine]) if (!(await caches.match(address, { ignoreVary: true }))) await fetch(address);
}

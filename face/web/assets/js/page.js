// What every page does beyond reading: bring the list of faults into view,
// hand over what waits, keep the page for when there is no signal.
import { handOver, tell } from "./queue.js";

document.documentElement.classList.add("scripted");
document.getElementById("mend")?.focus();
if (document.getElementById("log")) import("./log.js");
if (document.getElementById("walk")) import("./walk.js");
if (document.getElementById("bench")) import("./bench.js");
if (document.getElementById("pumpoff")) import("./pumpoff.js");
if (document.querySelector("form[data-sheet]")) import("./worksheet.js");
if (document.querySelector("form[data-keep]")) import("./run.js");

if ("indexedDB" in window) {
  tell().then(handOver);
  addEventListener("online", handOver);
  setInterval(handOver, 5000);
}
if ("serviceWorker" in navigator) navigator.serviceWorker.register("/sw.js");

// What every page does beyond reading: bring the list of faults into view.
const mend = document.getElementById("mend");
if (mend) mend.focus();
document.documentElement.classList.add("scripted");
if (document.getElementById("log")) import("/assets/js/log.js");

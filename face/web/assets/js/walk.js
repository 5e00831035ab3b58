// A bed walked by its corners. Positions come from the phone and need no
// signal; the corners are kept on the phone until they are worked out.
import { calc } from "./engine.js";

const form = document.getElementById("walk");
const walker = document.getElementById("walker");
const kept = "aerosteep-walk";
const box = form.elements.text;
const status = walker.querySelector("[role=status]");
const button = walker.querySelector("button");
const say = walker.dataset;
let worst = 0;

walker.hidden = false;
if (!box.value) box.value = localStorage.getItem(kept) ?? "";
box.addEventListener("input", () => localStorage.setItem(kept, box.value));
if (!isSecureContext || !navigator.geolocation) {
  status.textContent = say.insecure;
  button.hidden = true;
} else {
  status.hidden = true;
  button.addEventListener("click", take);
}
form.addEventListener("submit", submit);

function take() {
  tell(say.waiting);
  navigator.geolocation.getCurrentPosition(taken, () => tell(say.refused), { enableHighAccuracy: true, maximumAge: 0, timeout: 30000 });
}

function taken({ coords }) {
  const corner = `${coords.latitude.toFixed(7)},${coords.longitude.toFixed(7)}`;
  box.value = box.value.trim() ? `${box.value.trim().replace(/;$/, "")};\n${corner}` : corner;
  localStorage.setItem(kept, box.value);
  // The phone's accuracy is a circle that holds 95 of 100 fixes; the sheet asks
  // for a standard deviation along one axis, which is that over 2.45.
  worst = Math.max(worst, coords.accuracy / 2.45);
  const shown = say.unit === "ft" ? worst / 0.3048 : worst;
  form.elements["gps-error"].value = shown.toFixed(1);
  const n = box.value.split(";").length;
  const accuracy = say.unit === "ft" ? coords.accuracy / 0.3048 : coords.accuracy;
  tell(say.taken.replace("{n}", n).replace("{accuracy}", `${accuracy.toFixed(0)} ${say.unit}`));
}

function tell(text) {
  status.hidden = false;
  status.textContent = text;
}

// With signal the page is asked; without, the engine in the phone.
async function submit(event) {
  if (navigator.onLine || form.elements.file.files.length > 0) return;
  event.preventDefault();
  const values = { shape: ["polygon"], corners: [box.value.split(/[;\n]+/).filter((c) => c.trim()).join("; ")] };
  const error = form.elements["gps-error"].value.trim();
  if (error) values["gps-error"] = [/^[\d.,]+$/.test(error) ? `${error} ${say.unit}` : error];
  const answer = await calc("area", values);
  tell(answer.faults ? answer.faults.map((f) => f.what).join(" ") : answer.answer);
}

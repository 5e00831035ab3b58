// "Am I at the right place?": the phone's position against the bed's corners,
// without signal.
import { offBed } from "./engine.js";

for (const button of document.querySelectorAll("[data-place]")) {
  const status = button.closest("p").nextElementSibling;
  if (!isSecureContext || !navigator.geolocation) {
    status.textContent = button.dataset.insecure;
    continue;
  }
  button.hidden = false;
  button.addEventListener("click", () => navigator.geolocation.getCurrentPosition(
    async ({ coords }) => { status.textContent = await offBed(button.dataset.place, coords); },
    () => { status.textContent = button.dataset.refused; },
    { enableHighAccuracy: true, maximumAge: 0, timeout: 30000 },
  ));
}

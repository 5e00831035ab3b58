// What is written down is on the phone before anything is sent.
import { keep, tell } from "./queue.js";

const form = document.querySelector("form[data-write]");
form.addEventListener("submit", submit);

async function submit(event) {
  if (!("indexedDB" in window)) return;
  event.preventDefault();
  if (form.dataset.keeping) return; // a thumb that pressed twice
  form.dataset.keeping = "1";
  const fields = Object.fromEntries([...new FormData(form)].filter(([, v]) => v !== ""));
  const came = await keep(form.action, fields);
  await tell();
  if (came === "sent") location.assign(form.dataset.after || `${form.action}?kept=1`);
  else if (came === "waiting") { form.reset(); delete form.dataset.keeping; }
  else { form.removeEventListener("submit", submit); form.requestSubmit(); } // the server's page says what to mend
}

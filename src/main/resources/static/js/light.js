// The page's light: the server writes the choice into the page from a cookie, so nothing flashes;
// here the choice is made without loading the page again.
import { withToken } from "./page-token.js";

const root = document.documentElement;

/** Tells drawings that ink and paper have changed. */
function announce() {
  document.dispatchEvent(new CustomEvent("limbspan:light"));
}

for (const form of document.querySelectorAll("form.light")) {
  form.addEventListener("submit", async (event) => {
    const choice = event.submitter;
    if (!choice) return;
    event.preventDefault();
    root.dataset.light = choice.value;
    for (const button of form.querySelectorAll("button[name=light]")) {
      button.setAttribute("aria-pressed", String(button === choice));
    }
    announce();
    const answer = await fetch(form.action, {
      method: "POST",
      headers: withToken({ Accept: "text/plain" }),
      body: new URLSearchParams({ light: choice.value }),
    }).catch(() => null);
    if (!answer?.ok) form.dataset.kept = "no";
  });
}

for (const query of ["(prefers-color-scheme: dark)", "print"]) {
  matchMedia(query).addEventListener("change", announce);
}

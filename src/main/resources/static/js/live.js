// News of the ledger on an open page: told in a line that screen readers speak politely, and put
// into the page where the server has written it anew.
const teller = document.querySelector("[data-news]");
const gatheringMs = 200;
const triesAgainMs = 30000;
const kept = "limbspan:news";

const blocks = (root) => new Map([...root.querySelectorAll("[data-live]")].map((block) => [block.dataset.live, block]));
const written = (block) => block.outerHTML;

/** What each block was when the server wrote it: drawings change it afterwards. */
const held = new Map([...blocks(document)].map(([name, block]) => [name, written(block)]));

let gathering = 0;
let renewing = false;
let again = false;

function begin() {
  const source = new EventSource(teller.dataset.news);
  for (const kind of ["entered", "judged"]) {
    source.addEventListener(kind, (event) => {
      const clock = new Date().toLocaleTimeString("en-GB", {
        hour: "2-digit",
        minute: "2-digit",
        timeZone: teller.dataset.zone,
      });
      tell(`${clock}: ${event.data}`);
      clearTimeout(gathering);
      gathering = setTimeout(renew, gatheringMs);
    });
  }
  // What happened before this page began to listen, or while it could not.
  source.addEventListener("stand", (event) => {
    if (event.data !== teller.dataset.stand) renew();
  });
  source.addEventListener("error", () => {
    // A refusal is final for the browser; ask again in a while.
    if (source.readyState === EventSource.CLOSED) setTimeout(begin, triesAgainMs);
  });
  addEventListener("pagehide", () => source.close(), { once: true });
}

function tell(news) {
  teller.textContent = news;
}

async function renew() {
  if (renewing) {
    again = true;
    return;
  }
  renewing = true;
  try {
    const answer = await fetch(location.href, { headers: { Accept: "text/html" } });
    if (answer.status === 401) tell("The login is over. Load the page again to log in.");
    if (answer.ok) replace(new DOMParser().parseFromString(await answer.text(), "text/html"));
    document.dispatchEvent(new CustomEvent("limbspan:news"));
  } catch {
    teller.textContent += " The page could not be brought up to date; load it again.";
  }
  renewing = false;
  if (again) {
    again = false;
    renew();
  }
}

/** Whether somebody is writing in that part of the page, or has it under the hand. */
function inUse(block) {
  const fields = [...block.querySelectorAll("input, textarea, select")];
  return (
    block.contains(document.activeElement) ||
    fields.some((field) =>
      field.type === "radio" || field.type === "checkbox"
        ? field.checked !== field.defaultChecked
        : field.tagName !== "SELECT" && field.value !== field.defaultValue,
    )
  );
}

function replace(page) {
  teller.dataset.stand = page.querySelector("[data-news]")?.dataset.stand ?? teller.dataset.stand;
  const now = blocks(page);
  const here = blocks(document);
  const sameFigures =
    page.querySelectorAll("main figure").length === document.querySelectorAll("main figure").length;
  const sameBlocks = [...now.keys()].join() === [...here.keys()].join();
  // What became of the photographs that were just sent would be gone after loading anew.
  const told = document.querySelector("[data-told]:not([hidden])");
  const busy = told || [...document.querySelectorAll("form")].some(inUse);
  if (!(sameBlocks && sameFigures) && !here.has("waiting")) {
    if (!busy) {
      sessionStorage.setItem(kept, teller.textContent);
      location.reload();
      return;
    }
    told?.querySelector("[data-after]")?.removeAttribute("hidden");
  }
  for (const [name, block] of now) {
    const old = here.get(name);
    const text = written(block);
    if (!old || held.get(name) === text || inUse(old)) continue;
    held.set(name, text);
    const fresh = document.importNode(block, true);
    old.replaceWith(fresh);
    document.dispatchEvent(new CustomEvent("limbspan:replaced", { detail: fresh }));
  }
}

/** What was told when the page had to be loaded anew. */
function tellWhatWasKept() {
  const news = sessionStorage.getItem(kept);
  sessionStorage.removeItem(kept);
  if (news) tell(news);
}

if (teller && "EventSource" in globalThis) {
  tellWhatWasKept();
  // By this very page: no news need come for that.
  document.addEventListener("limbspan:entered", renew);
  begin();
}

// A table or map that is wider than the page says so in words, under itself, and where the rest is.
const SLACK_PX = 2;

function words(box) {
  const hidden = box.scrollWidth - box.clientWidth;
  if (hidden <= SLACK_PX) return "";
  const left = box.scrollLeft > SLACK_PX;
  const right = box.scrollLeft < hidden - SLACK_PX;
  if (left && right) return "\u2190 more on both sides \u2192";
  return right ? "more to the right \u2192" : "\u2190 more to the left";
}

function watch(box) {
  const next = box.nextElementSibling;
  const told = next?.matches(".more-beside") ? next : document.createElement("p");
  told.className = "more-beside no-print";
  const tell = () => {
    told.textContent = words(box);
    told.hidden = told.textContent === "";
  };
  if (told !== next) box.after(told);
  box.addEventListener("scroll", tell, { passive: true });
  const sizes = new ResizeObserver(tell);
  const observe = () => [box, ...box.children].forEach((each) => sizes.observe(each));
  new MutationObserver(observe).observe(box, { childList: true });
  observe();
  tell();
}

const within = (root) => root.querySelectorAll(".wide").forEach(watch);

within(document);
document.addEventListener("limbspan:replaced", ({ detail }) => {
  if (detail.matches(".wide")) watch(detail);
  within(detail);
});

// All figures of a page, on one stretch of time.
import { Plate } from "./figure/plate.js";
import { TimeWindow } from "./figure/window.js";
import { Calendar } from "./figure/words.js";
import { cycle } from "./figure/cycle.js";
import { residuals } from "./figure/residuals.js";
import { nights } from "./figure/nights.js";
import { passes } from "./figure/passes.js";

const kinds = { cycle, residuals, nights, passes };

async function hangAll() {
  const figures = [...document.querySelectorAll("figure[data-figure]")];
  const begun = await Promise.allSettled(
    figures.map((figure) => new Plate(figure, kinds[figure.dataset.figure], new Calendar(figure.dataset.zone)).begin()),
  );
  const plates = [];
  begun.forEach((result, i) => {
    if (result.status === "fulfilled") plates.push(result.value);
    else figures[i].querySelector(".readout").textContent = "The data of this figure could not be fetched.";
  });
  if (plates.length === 0) return;

  const first = Math.min(...plates.map((plate) => plate.data.whole[0]));
  const last = Math.max(...plates.map((plate) => plate.data.whole[1]));
  const window = new TimeWindow(first, last);
  for (const plate of plates) plate.hang(window);
  document.addEventListener("click", (event) => {
    const word = event.target.closest("button[data-turn]")?.dataset.turn;
    if (word) window.turn(word);
  });
}

hangAll();

// The figures whose axes the server tells, each for itself.
import { Drawing } from "./figure/drawing.js";

/** Hangs all drawings within a part of the page; a drawing that fails says so in its place. */
export async function hangDrawings(part) {
  const hung = [...part.querySelectorAll("figure[data-drawing]")].map(async (figure) => {
    const drawing = new Drawing(figure);
    try {
      await drawing.hang();
    } catch {
      figure.querySelector(".readout").textContent = "The data of this figure could not be fetched.";
    }
  });
  await Promise.all(hung);
}

hangDrawings(document);
document.addEventListener("limbspan:replaced", (event) => hangDrawings(event.detail));

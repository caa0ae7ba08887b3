// Helps with the rig form: a short name from the name, the place and the time zone from the device.
import { placeOf } from "./photo-place.js";

const field = (id) => document.getElementById(id);

/** The short name that the service would make from a name. */
function shortName(name) {
  const plain = name.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
  return plain.replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "").slice(0, 40).replace(/-+$/, "");
}

let own = field("slug").value !== "" && field("slug").value !== shortName(field("name").value);
field("slug").addEventListener("input", () => (own = field("slug").value !== ""));
field("name").addEventListener("input", () => {
  if (!own) field("slug").value = shortName(field("name").value);
});

if (field("timeZone").value === "") {
  field("timeZone").value = Intl.DateTimeFormat().resolvedOptions().timeZone;
}

function write(latitude, longitude, elevation) {
  field("latitude").value = latitude.toFixed(5);
  field("longitude").value = longitude.toFixed(5);
  if (elevation !== null) field("elevation").value = elevation.toFixed(0);
}

const offer = document.querySelector("[data-locate]");
if (offer && navigator.geolocation && isSecureContext) {
  const told = offer.querySelector("[role=status]");
  offer.hidden = false;
  offer.querySelector("button").addEventListener("click", () => {
    told.textContent = "Asking the device.";
    navigator.geolocation.getCurrentPosition(
      ({ coords }) => {
        write(coords.latitude, coords.longitude, coords.altitude);
        told.textContent = `Known to ${Math.round(coords.accuracy)} m.`;
      },
      (refusal) => (told.textContent = `The device did not say where it is: ${refusal.message}.`),
      { enableHighAccuracy: true, timeout: 30000 },
    );
  });
}

const photo = document.querySelector("[data-photo-place]");
if (photo) {
  const told = photo.querySelector("[role=status]");
  photo.hidden = false;
  photo.querySelector("input").addEventListener("change", async (event) => {
    const [file] = event.target.files;
    if (!file) return;
    const place = await placeOf(file);
    if (place) write(place.latitude, place.longitude, place.elevation);
    told.textContent = place
      ? `Taken from ${file.name}; look whether it is right.`
      : `${file.name} does not say where it was taken.`;
  });
}

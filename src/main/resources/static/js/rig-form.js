// Helps with the rig form: a short name from the name, the place and the time zone from the device.
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

const offer = document.querySelector("[data-locate]");
if (offer && navigator.geolocation && isSecureContext) {
  const told = offer.querySelector("[role=status]");
  offer.hidden = false;
  offer.querySelector("button").addEventListener("click", () => {
    told.textContent = "Asking the device.";
    navigator.geolocation.getCurrentPosition(
      ({ coords }) => {
        field("latitude").value = coords.latitude.toFixed(5);
        field("longitude").value = coords.longitude.toFixed(5);
        if (coords.altitude !== null) field("elevation").value = coords.altitude.toFixed(0);
        told.textContent = `Known to ${Math.round(coords.accuracy)} m.`;
      },
      (refusal) => (told.textContent = `The device did not say where it is: ${refusal.message}.`),
      { enableHighAccuracy: true, timeout: 30000 },
    );
  });
}

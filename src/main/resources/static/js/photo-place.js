// Where a photograph says that it was taken: the GPS tags of its Exif block. The photograph stays on
// the device. Layout of the tags: CIPA DC-008 (Exif 2.32), 4.6.6; of the block: TIFF 6.0, section 2.
const gpsTag = 0x8825;
const [latitudeRef, latitude, longitudeRef, longitude, altitudeRef, altitude] = [1, 2, 3, 4, 5, 6];
const searchedBytes = 262144;

/** {latitude, longitude in degrees, elevation in metres or null}; null where it does not say. */
export async function placeOf(file) {
  try {
    const view = new DataView(await file.slice(0, searchedBytes).arrayBuffer());
    const start = exifStart(view);
    return start === null ? null : place(view, start);
  } catch (error) {
    if (error instanceof RangeError) return null; // A block that points outside itself.
    throw error;
  }
}

/** Walks the segments of a JPEG file to the one that begins with "Exif". */
function exifStart(view) {
  if (view.getUint16(0) !== 0xffd8) return null;
  let at = 2;
  while (at + 10 < view.byteLength && view.getUint8(at) === 0xff) {
    const isExif = view.getUint16(at) === 0xffe1 && view.getUint32(at + 4) === 0x45786966;
    if (isExif) return at + 10;
    at += 2 + view.getUint16(at + 2);
  }
  return null;
}

function place(view, start) {
  const little = view.getUint16(start) === 0x4949;
  const u16 = (at) => view.getUint16(start + at, little);
  const u32 = (at) => view.getUint32(start + at, little);
  const entries = (at) => {
    const found = new Map();
    for (let i = 0; i < u16(at); i++) found.set(u16(at + 2 + 12 * i), at + 2 + 12 * i + 8);
    return found;
  };
  const gps = entries(u32(4)).get(gpsTag);
  if (gps === undefined) return null;
  const tags = entries(u32(gps));
  if (![latitude, longitude].every((tag) => tags.has(tag))) return null;
  const ratio = (at) => u32(at) / u32(at + 4);
  const degrees = (tag) => {
    const at = u32(tags.get(tag));
    return ratio(at) + ratio(at + 8) / 60 + ratio(at + 16) / 3600;
  };
  const letter = (tag) => (tags.has(tag) ? String.fromCharCode(view.getUint8(start + tags.get(tag))) : "");
  const south = letter(latitudeRef) === "S" ? -1 : 1;
  const west = letter(longitudeRef) === "W" ? -1 : 1;
  const told = { latitude: south * degrees(latitude), longitude: west * degrees(longitude), elevation: null };
  if (![told.latitude, told.longitude].every(Number.isFinite)) return null;
  if (tags.has(altitude)) {
    const below = tags.has(altitudeRef) && view.getUint8(start + tags.get(altitudeRef)) === 1 ? -1 : 1;
    const metres = below * ratio(u32(tags.get(altitude)));
    told.elevation = Number.isFinite(metres) ? metres : null;
  }
  return told;
}

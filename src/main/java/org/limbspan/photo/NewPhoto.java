package org.limbspan.photo;

import org.limbspan.photo.file.PhotoHeader;
import org.limbspan.sky.Axis;

/** A photograph that was measured and is to be kept. */
record NewPhoto(
    String sha256,
    String fileName,
    long byteCount,
    PhotoHeader header,
    ShotInstant instant,
    Axis axis,
    DiscFigures figures) {}

package org.limbspan.photo;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Semaphore;
import java.util.function.Supplier;
import org.limbspan.limb.DiscMeasurer;
import org.limbspan.limb.LinearImage;
import org.limbspan.limb.MeasureOptions;
import org.limbspan.limb.Measurement;
import org.limbspan.limb.SheetMeasurement;
import org.limbspan.limb.SheetMeasurer;
import org.limbspan.limb.SheetOptions;
import org.limbspan.photo.file.PhotoDecoder;
import org.limbspan.photo.file.PhotoHeader;
import org.limbspan.photo.file.Preview;
import org.limbspan.photo.file.UnusableFile;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;

/**
 * Where pictures are decoded: one at a time, so that twenty photographs at once take no more memory
 * than one; see {@link org.limbspan.photo.file.PhotoLimits}.
 */
@Component
class Darkroom {

  /** Version of the measurement: raised whenever it may give another figure for the same file. */
  static final int METHOD = 8;

  private static final Logger LOG = LoggerFactory.getLogger(Darkroom.class);

  private final Semaphore one = new Semaphore(1, true);

  /** The disc of a photograph. */
  DiscFigures measure(Path file, PhotoHeader header, MeasureOptions options)
      throws IOException, RefusedPhoto {
    one.acquireUninterruptibly();
    try {
      LinearImage image = PhotoDecoder.decode(file, header);
      Measurement result = guarded(() -> DiscMeasurer.measure(image, options));
      if (result instanceof Measurement.Refused refused) {
        throw RefusedPhoto.of(refused);
      }
      return DiscFigures.of((Measurement.Measured) result);
    } catch (UnusableFile unusable) {
      throw RefusedPhoto.of(unusable);
    } finally {
      one.release();
    }
  }

  /** The sides of a calibration target. */
  SheetMeasurement.Measured measureSheet(Path file, PhotoHeader header, SheetOptions options)
      throws IOException, RefusedPhoto {
    one.acquireUninterruptibly();
    try {
      LinearImage image = PhotoDecoder.decode(file, header);
      SheetMeasurement result = guarded(() -> SheetMeasurer.measure(image, options));
      if (result instanceof SheetMeasurement.Refused refused) {
        throw RefusedPhoto.of(refused);
      }
      return (SheetMeasurement.Measured) result;
    } catch (UnusableFile unusable) {
      throw RefusedPhoto.of(unusable);
    } finally {
      one.release();
    }
  }

  /** A picture on which the measurement fails must not cost the others that came with it. */
  private static <T> T guarded(Supplier<T> measurement) throws RefusedPhoto {
    try {
      return measurement.get();
    } catch (RuntimeException failed) {
      LOG.error("the measurement failed on a picture", failed);
      throw new RefusedPhoto(
          "measurement-failed",
          "The measurement failed on this picture, which is an error of this service; its log says"
              + " more. Other photographs are not concerned.");
    }
  }

  /** The upright picture scaled down, as a JPEG file of 8 bits. */
  byte[] preview(Path file, PhotoHeader header, int longestSidePx)
      throws IOException, UnusableFile {
    one.acquireUninterruptibly();
    try {
      return Preview.jpeg(file, header, longestSidePx);
    } finally {
      one.release();
    }
  }
}

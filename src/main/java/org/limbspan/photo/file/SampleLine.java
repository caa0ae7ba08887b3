package org.limbspan.photo.file;

import java.awt.image.ComponentSampleModel;
import java.awt.image.DataBufferByte;
import java.awt.image.DataBufferUShort;
import java.awt.image.Raster;

/** Takes rows or columns of samples out of a raster, the bands of each pixel side by side. */
final class SampleLine {

  private final Raster raster;
  private final int bands;
  private final int length;
  private final int[] samples;

  private SampleLine(Raster raster, int length) {
    this.raster = raster;
    this.length = length;
    bands = Math.min(4, raster.getNumBands());
    samples = new int[length * raster.getNumBands()];
  }

  static SampleLine of(Raster raster, int length) {
    return new SampleLine(raster, length);
  }

  int bands() {
    return bands;
  }

  int[] samples() {
    return samples;
  }

  /** The same with the last pixel first. */
  int[] reversed() {
    for (int a = 0, b = length - 1; a < b; a++, b--) {
      for (int band = 0; band < bands; band++) {
        int kept = samples[a * bands + band];
        samples[a * bands + band] = samples[b * bands + band];
        samples[b * bands + band] = kept;
      }
    }
    return samples;
  }

  void readRow(int y) {
    if (!readDirectly(0, y, 1, 0)) {
      raster.getPixels(raster.getMinX(), raster.getMinY() + y, length, 1, samples);
    }
  }

  void readColumn(int x) {
    if (!readDirectly(x, 0, 0, 1)) {
      raster.getPixels(raster.getMinX() + x, raster.getMinY(), 1, length, samples);
    }
  }

  /** Straight out of the buffer, several times as fast, where the raster is as decoders make it. */
  private boolean readDirectly(int x, int y, int stepX, int stepY) {
    if (!(raster.getSampleModel() instanceof ComponentSampleModel model)
        || raster.getMinX() != 0
        || raster.getMinY() != 0
        || raster.getSampleModelTranslateX() != 0
        || raster.getSampleModelTranslateY() != 0
        || raster.getDataBuffer().getNumBanks() != 1
        || raster.getDataBuffer().getOffset() != 0) {
      return false;
    }
    int start = y * model.getScanlineStride() + x * model.getPixelStride();
    int step = stepY * model.getScanlineStride() + stepX * model.getPixelStride();
    int[] offsets = model.getBandOffsets();
    if (raster.getDataBuffer() instanceof DataBufferByte buffer) {
      copy(buffer.getData(), start, step, offsets);
      return true;
    }
    if (raster.getDataBuffer() instanceof DataBufferUShort buffer) {
      copy(buffer.getData(), start, step, offsets);
      return true;
    }
    return false;
  }

  private void copy(byte[] data, int start, int step, int[] offsets) {
    for (int band = 0; band < bands; band++) {
      int from = start + offsets[band];
      for (int i = 0, to = band; i < length; i++, to += bands, from += step) {
        samples[to] = data[from] & 0xff;
      }
    }
  }

  private void copy(short[] data, int start, int step, int[] offsets) {
    for (int band = 0; band < bands; band++) {
      int from = start + offsets[band];
      for (int i = 0, to = band; i < length; i++, to += bands, from += step) {
        samples[to] = data[from] & 0xffff;
      }
    }
  }
}

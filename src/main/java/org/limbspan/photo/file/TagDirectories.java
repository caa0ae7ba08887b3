package org.limbspan.photo.file;

import com.drew.imaging.tiff.TiffProcessingException;
import com.drew.imaging.tiff.TiffReader;
import com.drew.lang.RandomAccessReader;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifDirectoryBase;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import com.drew.metadata.exif.ExifTiffHandler;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The tag directories of a TIFF file or an Exif block: standard tags only, none of more than 1 MB,
 * and no more than sixteen directories, whatever the file claims.
 */
final class TagDirectories {

  private static final int MOST_DIRECTORIES = 16;
  private static final int LONGEST_VALUE_BYTES = 1 << 20;

  /** Blocks in formats of their own inside a tag, which are not needed. */
  private static final Set<Integer> LEFT_OUT =
      Set.of(
          ExifDirectoryBase.TAG_MAKERNOTE,
          ExifDirectoryBase.TAG_INTER_COLOR_PROFILE,
          ExifDirectoryBase.TAG_IPTC_NAA,
          ExifDirectoryBase.TAG_PHOTOSHOP_SETTINGS,
          ExifDirectoryBase.TAG_APPLICATION_NOTES,
          ExifDirectoryBase.TAG_PRINT_IMAGE_MATCHING_INFO);

  private final Metadata metadata;

  private TagDirectories(Metadata metadata) {
    this.metadata = metadata;
  }

  /** What can be read; the rest of damaged directories is passed over. */
  static TagDirectories read(RandomAccessReader reader) {
    Metadata metadata = new Metadata();
    try {
      new TiffReader().processTiff(reader, new StandardTags(metadata), 0);
    } catch (TiffProcessingException | IOException damaged) {
      metadata.addDirectory(new com.drew.metadata.ErrorDirectory(damaged.toString()));
    }
    return new TagDirectories(metadata);
  }

  /** The first directory, which describes the picture; null if it cannot be read. */
  @Nullable Directory first() {
    return metadata.getFirstDirectoryOfType(ExifIFD0Directory.class);
  }

  /** The directory with a tag that says how the photograph was taken; null if there is none. */
  @Nullable Directory holding(int tag) {
    for (Directory each : metadata.getDirectories()) {
      boolean known = each instanceof ExifSubIFDDirectory || each instanceof ExifIFD0Directory;
      if (known && each.containsTag(tag)) {
        return each;
      }
    }
    return null;
  }

  List<Directory> all() {
    List<Directory> all = new ArrayList<>();
    metadata.getDirectories().forEach(all::add);
    return all;
  }

  private static final class StandardTags extends ExifTiffHandler {

    private int directories = 1;

    StandardTags(Metadata metadata) {
      super(metadata, null, 0);
    }

    @Override
    public boolean tryEnterSubIfd(int tagId) {
      return tagId != ExifIFD0Directory.TAG_GPS_INFO_OFFSET
          && directories < MOST_DIRECTORIES
          && counted(super.tryEnterSubIfd(tagId));
    }

    @Override
    public boolean hasFollowerIfd() {
      return directories < MOST_DIRECTORIES && counted(super.hasFollowerIfd());
    }

    private boolean counted(boolean entered) {
      directories += entered ? 1 : 0;
      return entered;
    }

    @Override
    public boolean customProcessTag(
        int tagOffset,
        Set<Integer> processedIfdOffsets,
        int tiffHeaderOffset,
        RandomAccessReader reader,
        int tagId,
        int byteCount)
        throws IOException {
      return byteCount < 0
          || byteCount > LONGEST_VALUE_BYTES
          || LEFT_OUT.contains(tagId)
          || super.customProcessTag(
              tagOffset, processedIfdOffsets, tiffHeaderOffset, reader, tagId, byteCount);
    }
  }
}

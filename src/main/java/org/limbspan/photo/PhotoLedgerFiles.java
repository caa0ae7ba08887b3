package org.limbspan.photo;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.limbspan.photo.file.PhotoFormat;
import org.limbspan.photo.file.PhotoLimits;
import org.limbspan.platform.InvalidInput;
import org.limbspan.platform.LedgerFile;
import org.limbspan.platform.LedgerFiles;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;
import org.springframework.util.FileSystemUtils;

/** The originals as they go with a ledger. */
@Component
class PhotoLedgerFiles implements LedgerFiles {

  private static final Logger LOG = LoggerFactory.getLogger(PhotoLedgerFiles.class);
  private static final Pattern NAME = Pattern.compile("([0-9a-f]{64})\\.([a-z]{3,4})");

  private final PhotoStore store;
  private final OriginalFiles originals;

  PhotoLedgerFiles(PhotoStore store, OriginalFiles originals) {
    this.store = store;
    this.originals = originals;
  }

  @Override
  public long mostBytes() {
    return PhotoLimits.MOST_BYTES;
  }

  @Override
  public boolean isName(LedgerFile file) {
    Matcher name = NAME.matcher(file.name());
    return name.matches()
        && name.group(1).equals(file.sha256())
        && PhotoFormat.ofExtension(name.group(2)).isPresent();
  }

  @Override
  public void each(long rigId, Visitor visitor) throws IOException {
    try (Stream<PhotoStore.Original> all = store.originals(rigId)) {
      for (Iterator<PhotoStore.Original> each = all.iterator(); each.hasNext(); ) {
        PhotoStore.Original original = each.next();
        if (originals.isHeld(original.sha256(), original.format())) {
          pass(original, visitor);
        }
      }
    }
  }

  /** One that the disk has spoilt is left out: a copy of all others is worth having. */
  private void pass(PhotoStore.Original original, Visitor visitor) throws IOException {
    Path path = originals.path(original.sha256(), original.format());
    if (Files.size(path) != original.byteCount()
        || !OriginalFiles.sha256(path).equals(original.sha256())) {
      LOG.error("the original {} is not what was entered; it is left out of the ledger", path);
      return;
    }
    visitor.visit(
        new LedgerFile(
            original.sha256() + "." + original.format().extension(),
            original.byteCount(),
            original.sha256()));
  }

  @Override
  public InputStream open(LedgerFile file) throws IOException {
    return Files.newInputStream(originals.path(file.sha256(), format(file.name())));
  }

  @Override
  public Incoming incoming() throws IOException {
    return new LaidAside(originals.temporaryFolder());
  }

  private static PhotoFormat format(String name) {
    return PhotoFormat.ofExtension(name.substring(name.indexOf('.') + 1)).orElseThrow();
  }

  /** Files in a folder of their own beside the originals, under the names that they will have. */
  private final class LaidAside implements Incoming {

    private final Path folder;

    LaidAside(Path folder) {
      this.folder = folder;
    }

    @Override
    public void lay(LedgerFile file, InputStream bytes) throws IOException {
      if (!isName(file)) {
        throw new IllegalArgumentException("no name of an original: " + file.name());
      }
      Files.copy(bytes, folder.resolve(file.name()));
    }

    @Override
    public void keep(long rigId) throws IOException {
      try (DirectoryStream<Path> files = Files.newDirectoryStream(folder)) {
        for (Path file : files) {
          requireEntered(rigId, file);
        }
      }
      try (DirectoryStream<Path> files = Files.newDirectoryStream(folder)) {
        for (Path file : files) {
          String name = String.valueOf(file.getFileName());
          originals.place(file, sha256(name), format(name));
        }
      }
    }

    private void requireEntered(long rigId, Path file) throws IOException {
      String name = String.valueOf(file.getFileName());
      if (!store.speaksOf(rigId, sha256(name), format(name), Files.size(file))) {
        throw InvalidInput.inBody(
            "original.csv: path", name, "a file that photo.csv names, with its format and length");
      }
    }

    private static String sha256(String name) {
      return name.substring(0, name.indexOf('.'));
    }

    @Override
    public void close() throws IOException {
      FileSystemUtils.deleteRecursively(folder);
    }
  }
}

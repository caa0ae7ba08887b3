package org.limbspan.platform.database;

import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveInputStream;
import org.limbspan.platform.PrivateFiles;
import org.springframework.util.FileSystemUtils;
import org.tukaani.xz.XZInputStream;

/** Unpacks the archive of programs once; a directory under its final name is complete. */
final class ProgramArchive {

  private static final int OWNER_MAY_EXECUTE = 0100;

  private ProgramArchive() {}

  /** Returns the directory in {@code parent} that holds what is in the archive. */
  static Path unpack(InputStream archive, Path parent) throws IOException {
    byte[] packed = archive.readAllBytes();
    Path target = parent.resolve(HexFormat.of().formatHex(sha256(packed), 0, 8));
    if (Files.isDirectory(target)) {
      return target;
    }
    FileSystemUtils.deleteRecursively(parent.toFile());
    PrivateFiles.createDirectories(parent);
    Path unfinished = Files.createTempDirectory(parent, "unfinished-");
    try (InputStream tar = new XZInputStream(new ByteArrayInputStream(packed))) {
      unpackTar(new TarArchiveInputStream(new BufferedInputStream(tar)), unfinished);
    }
    return Files.move(unfinished, target, StandardCopyOption.ATOMIC_MOVE);
  }

  private static void unpackTar(TarArchiveInputStream tar, Path directory) throws IOException {
    for (TarArchiveEntry entry = tar.getNextEntry(); entry != null; entry = tar.getNextEntry()) {
      Path file = directory.resolve(entry.getName()).normalize();
      if (!file.startsWith(directory)) {
        throw new IOException("an entry leads out of the archive: " + entry.getName());
      }
      if (entry.isDirectory()) {
        Files.createDirectories(file);
      } else {
        Files.createDirectories(file.getParent());
        unpackFile(tar, entry, file);
      }
    }
  }

  private static void unpackFile(TarArchiveInputStream tar, TarArchiveEntry entry, Path file)
      throws IOException {
    if (entry.isSymbolicLink()) {
      Files.createSymbolicLink(file, Path.of(entry.getLinkName()));
      return;
    }
    Files.copy(tar, file);
    if ((entry.getMode() & OWNER_MAY_EXECUTE) != 0 && !file.toFile().setExecutable(true, true)) {
      throw new IOException("cannot be made executable: " + file);
    }
  }

  private static byte[] sha256(byte[] bytes) {
    try {
      return MessageDigest.getInstance("SHA-256").digest(bytes);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}

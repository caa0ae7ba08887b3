package org.limbspan.platform;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/** Where everything lasting beside the database is kept: {@code limbspan.home}. */
@Component
public class HomeDirectory {

  private final Path path;

  HomeDirectory(@Value("${limbspan.home}") String home) {
    path = resolved(home);
  }

  /** Absolute; it need not exist yet. */
  public Path path() {
    return path;
  }

  /** Room on its disk, bytes. */
  long freeBytes() throws IOException {
    Path there = path;
    while (Files.notExists(there) && there.getParent() != null) {
      there = there.getParent();
    }
    return Files.getFileStore(there).getUsableSpace();
  }

  /** The directory that an owner means by a name: {@code ~} is the user's home. */
  public static Path resolved(String name) {
    String home = System.getProperty("user.home");
    boolean tilde = name.equals("~") || name.startsWith("~/");
    return Path.of(tilde ? home + name.substring(1) : name).toAbsolutePath().normalize();
  }
}

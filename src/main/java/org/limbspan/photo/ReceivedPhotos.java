package org.limbspan.photo;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.limbspan.platform.InvalidInput;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.multipart.MultipartHttpServletRequest;

/** Files of a request on the disk of this service, until they are closed. */
public final class ReceivedPhotos implements AutoCloseable {

  private static final String FIELD = "photo";

  private final List<IncomingPhoto> photos = new ArrayList<>();

  private ReceivedPhotos() {}

  /**
   * Receives the files.
   *
   * @throws InvalidInput if there are none
   */
  static ReceivedPhotos of(MultipartHttpServletRequest request, OriginalFiles originals) {
    List<MultipartFile> files = files(request);
    if (files.isEmpty()) {
      throw InvalidInput.inBody(FIELD, null, "one file or more in parts of that name");
    }
    ReceivedPhotos received = new ReceivedPhotos();
    try {
      for (MultipartFile file : files) {
        received.receive(file, originals.temporary());
      }
      return received;
    } catch (IOException e) {
      received.close();
      throw new UncheckedIOException(e);
    }
  }

  /** Whether there are any. */
  public static boolean areIn(MultipartHttpServletRequest request) {
    return !files(request).isEmpty();
  }

  private static List<MultipartFile> files(MultipartHttpServletRequest request) {
    return request.getFiles(FIELD).stream().filter(f -> !isBlank(f)).toList();
  }

  /** A browser's form in which no file was chosen sends a part without a name and a byte. */
  private static boolean isBlank(MultipartFile file) {
    String name = file.getOriginalFilename();
    return file.isEmpty() && (name == null || name.isEmpty());
  }

  private void receive(MultipartFile file, Path path) throws IOException {
    String name = file.getOriginalFilename();
    photos.add(new IncomingPhoto(path, name == null ? "" : name));
    file.transferTo(path);
  }

  /** In the order in which they were sent. */
  public List<IncomingPhoto> photos() {
    return List.copyOf(photos);
  }

  @Override
  public void close() {
    for (IncomingPhoto photo : photos) {
      try {
        Files.deleteIfExists(photo.file());
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}

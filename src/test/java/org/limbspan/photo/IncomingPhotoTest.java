package org.limbspan.photo;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class IncomingPhotoTest {

  @ParameterizedTest
  @CsvSource({
    "IMG_0101.JPG, IMG_0101.JPG",
    "C:\\Photos\\IMG_0101.JPG, IMG_0101.JPG",
    "../../etc/passwd, passwd",
    "'   ', unnamed",
    "'tab\there.jpg', tabhere.jpg"
  })
  void keepsThePlainNameOfAFile(String sent, String name) {
    assertThat(new IncomingPhoto(Path.of("file"), sent).name()).isEqualTo(name);
  }

  @ParameterizedTest
  @CsvSource({"1000", "201"})
  void keepsTheEndOfALongName(int length) {
    String name = "x".repeat(length) + ".jpg";
    assertThat(new IncomingPhoto(Path.of("file"), name).name()).hasSize(200).endsWith("x.jpg");
  }
}

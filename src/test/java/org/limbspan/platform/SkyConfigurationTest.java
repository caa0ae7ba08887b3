package org.limbspan.platform;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.junit.jupiter.api.Test;

class SkyConfigurationTest {

  @Test
  void readsTheEphemerisTheServiceCarries() throws IOException {
    assertThat(new SkyConfiguration().sky().ephemerisTo()).isEqualTo("2060-01-01T00:00:00Z");
  }
}

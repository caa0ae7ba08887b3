package org.limbspan.platform.reads;

import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatNoException;

import java.time.Duration;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.limbspan.platform.StartRefused;

class ReadPropertiesTest {

  private static final Duration SECOND = Duration.ofSeconds(1);

  /** A variable of the environment may be there and empty. */
  @Test
  void takesAnAddressOfPostgresAndNone() {
    assertThatNoException()
        .isThrownBy(() -> properties("jdbc:postgresql://db/limbspan", SECOND, SECOND));
    assertThatNoException().isThrownBy(() -> properties(null, SECOND, SECOND));
    assertThatNoException().isThrownBy(() -> properties("", SECOND, SECOND));
  }

  @Test
  void refusesWhatIsNoAddressAndTimesThatAreTooShort() {
    refuses("standby-url is 'db:5432'", "db:5432", SECOND, SECOND);
    refuses("most-behind is PT0.999S", null, Duration.ofMillis(999), SECOND);
    refuses("patience is PT0S", null, SECOND, Duration.ZERO);
  }

  private static void refuses(
      String words, @Nullable String url, Duration mostBehind, Duration patience) {
    assertThatExceptionOfType(StartRefused.class)
        .isThrownBy(() -> properties(url, mostBehind, patience))
        .withMessageContaining(words);
  }

  private static ReadProperties properties(
      @Nullable String url, Duration mostBehind, Duration patience) {
    return new ReadProperties(url, null, null, mostBehind, patience);
  }
}

package org.limbspan.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class EphemerisTest {

  private static final int RECORD = 3664;

  private final Ephemeris ephemeris = SkyFixture.ephemeris();

  @Test
  void knowsItsSpan() {
    assertThat(ephemeris.firstJd()).isEqualTo(2444208.5);
    assertThat(ephemeris.lastJd()).isEqualTo(2473488.5);
  }

  @Test
  void answersAtBothEndsAndNotBeyond() {
    double first = ephemeris.firstJd() - 2451545.0;
    double last = ephemeris.lastJd() - 2451545.0;
    assertThat(ephemeris.moonKm(first).getNorm()).isBetween(356000.0, 407000.0);
    assertThat(ephemeris.moonKm(last).getNorm()).isBetween(356000.0, 407000.0);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ephemeris.moonKm(Math.nextDown(first)))
        .withMessageContaining("expected 2444208.5 to 2473488.5");
    assertThatIllegalArgumentException().isThrownBy(() -> ephemeris.sunKm(Math.nextUp(last)));
    assertThatIllegalArgumentException().isThrownBy(() -> ephemeris.moonKm(Double.NaN));
  }

  /** The Moon moves 1 km a second: 0.1 s either side of each seam of its 4-day series. */
  @Test
  void isContinuousAcrossBlocksAndSubBlocks() {
    double step = 0.1 / 86400;
    for (double seam = -7300; seam < 21000; seam += 4) {
      double aligned = ephemeris.firstJd() - 2451545.0 + 4 * Math.round(seam / 4 + 2000);
      assertThat(
              ephemeris.moonKm(aligned - step).subtract(ephemeris.moonKm(aligned + step)).getNorm())
          .isLessThan(0.3);
    }
  }

  @Test
  void givesTheRangeRateThatTheDistanceShows() {
    double step = 1e-4;
    for (double day = -7000; day < 21000; day += 101.7) {
      double difference =
          ephemeris.moonKm(day + step).getNorm() - ephemeris.moonKm(day - step).getNorm();
      assertThat(ephemeris.moonRangeRateKmPerDay(day))
          .isCloseTo(difference / (2 * step), within(0.01));
    }
  }

  @Test
  void leavesTheBuffersPositionAndOrderAlone() {
    ByteBuffer buffer = ByteBuffer.wrap(SkyFixture.file());
    Ephemeris.of(buffer);
    assertThat(buffer.position()).isZero();
    assertThat(buffer.order()).isEqualTo(ByteOrder.BIG_ENDIAN);
  }

  @Test
  void refusesAFileCutShort() {
    byte[] file = SkyFixture.file();
    refuses(Arrays.copyOf(file, file.length - 1), "expected 3359888 bytes");
    refuses(Arrays.copyOf(file, file.length - RECORD), "expected 3359888 bytes");
    refuses(Arrays.copyOf(file, 100), "ephemeris length 100");
    refuses(new byte[0], "ephemeris length 0");
  }

  @Test
  void refusesAnotherEphemeris() {
    refuses(edited(2840, ByteBuffer::putInt, 200), "ephemeris number 200: expected 405");
  }

  @Test
  void refusesOtherConstants() {
    refuses(editedDouble(2680, 149597870.7), "astronomical unit in km 1.495978707E8");
    refuses(editedDouble(2688, 81.3), "mass ratio 81.3: expected 81.30056");
    refuses(editedDouble(2668, 16), "block length in days 16.0: expected 32.0");
  }

  @Test
  void refusesAnotherLayout() {
    refuses(
        edited(2696 + 9 * 12, ByteBuffer::putInt, 441),
        "pointers of MOON 441,13,8: expected 81,13,8");
  }

  @Test
  void refusesABlockOutOfItsPlace() {
    refuses(
        editedDouble(2 * RECORD + 17 * RECORD, 2444240.5),
        "block 17: dates 2444240.5 to 2444784.5, expected 2444752.5 to 2444784.5");
  }

  @Test
  void refusesACoefficientThatIsNoNumber() {
    refuses(
        editedDouble(2 * RECORD + 3 * RECORD + 8 * 100, Double.NaN), "block 3: NaN at place 100");
  }

  private interface Edit {
    void apply(ByteBuffer buffer, int at, int value);
  }

  private static byte[] edited(int at, Edit edit, int value) {
    byte[] file = SkyFixture.file();
    edit.apply(ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN), at, value);
    return file;
  }

  private static byte[] editedDouble(int at, double value) {
    byte[] file = SkyFixture.file();
    ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN).putDouble(at, value);
    return file;
  }

  private static void refuses(byte[] file, String message) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Ephemeris.of(ByteBuffer.wrap(file)))
        .withMessageContaining(message);
  }
}

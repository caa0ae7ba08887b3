package org.limbspan.limb;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.limbspan.limb.SheetMeasurement.Measured;
import org.limbspan.limb.SheetMeasurement.Refused;
import org.limbspan.limb.render.JpegFile;
import org.limbspan.limb.render.SheetRenderer;

class SheetMeasurerTest {

  private static SheetRenderer sheet() {
    SheetRenderer sheet = new SheetRenderer();
    sheet.width = 700;
    sheet.height = 800;
    sheet.centreX = 350.4;
    sheet.centreY = 398.7;
    sheet.tallPx = 480;
    sheet.shortPx = 339.39;
    return sheet;
  }

  /** ISO 216: the sides of a sheet of the A series stand as 297 to 210. */
  private static SheetMeasurement measure(SheetRenderer sheet) {
    return SheetMeasurer.measure(
        PhotoFiles.linear(JpegFile.through(sheet.render(), 92)),
        SheetOptions.ofProportion(297.0 / 210));
  }

  @Test
  void measuresTheTallSideToAFewHundredthsOfAPixel() {
    for (double turn : new double[] {0, 1.7, -3, 89}) {
      SheetRenderer sheet = sheet();
      sheet.turnDeg = turn;
      Measured measured = (Measured) measure(sheet);

      assertThat(measured.tallSidePx()).as("turned by %s", turn).isBetween(479.93, 480.07);
      assertThat(measured.tallSideUncertaintyPx()).isBetween(0.01, 0.15);
    }
  }

  @Test
  void seesASheetThatLeansByItsProportion() {
    SheetRenderer sheet = sheet();
    sheet.leanDeg = 6;
    Measured measured = (Measured) measure(sheet);

    assertThat(measured.shortening().getAsDouble()).isBetween(0.0050, 0.0060);
  }

  @Test
  void refusesASheetThatLeansTooMuch() {
    SheetRenderer sheet = sheet();
    sheet.leanDeg = 15;
    assertThat(((Refused) measure(sheet)).reason()).isEqualTo(SheetRefusal.TILTED);
  }

  @Test
  void refusesASheetCutByTheFrame() {
    SheetRenderer sheet = sheet();
    sheet.centreX = 120;
    assertThat(((Refused) measure(sheet)).reason()).isEqualTo(SheetRefusal.CUT_BY_FRAME);
  }

  @Test
  void refusesAPictureWithoutASheet() {
    SheetRenderer sheet = sheet();
    sheet.paper = sheet.ground;
    assertThat(measure(sheet)).isInstanceOf(Refused.class);
  }
}

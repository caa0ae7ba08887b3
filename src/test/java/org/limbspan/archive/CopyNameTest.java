package org.limbspan.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import org.junit.jupiter.api.Test;

class CopyNameTest {

  @Test
  void saysWhenAndHowFarAndIsReadBack() {
    CopyName name = new CopyName(Instant.parse("2026-11-27T02:03:12.9Z"), 57);
    assertThat(name.of("garden-1")).isEqualTo("garden-1-20261127T020312Z-r57.zip");
    assertThat(CopyName.read("garden-1", "garden-1-20261127T020312Z-r57.zip")).hasValue(name);
  }

  @Test
  void takesNoOtherFileForACopy() {
    for (String other :
        new String[] {
          "garden-20261127T020312Z.zip",
          "garden-20261127T020312Z-r.zip",
          "garden-20261327T020312Z-r5.zip",
          "garden-20261127T020312Z-r57.zip.part",
          ".garden.part",
          "garden-photographs.zip",
          "garden-shed-20261127T020312Z-r57.zip",
          "diary.txt"
        }) {
      assertThat(CopyName.read("garden", other)).as(other).isEmpty();
    }
  }
}

package org.limbspan.share;

import java.util.Arrays;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.limbspan.platform.InvalidInput;

/** Under which others may use shared readings: the owner's choice, by its SPDX name. */
public enum Licence {
  CC0(
      "CC0-1.0",
      "https://creativecommons.org/publicdomain/zero/1.0/",
      "no rights kept: others may do anything"),
  CC_BY("CC-BY-4.0", "https://creativecommons.org/licenses/by/4.0/", "others must name you"),
  CC_BY_SA(
      "CC-BY-SA-4.0",
      "https://creativecommons.org/licenses/by-sa/4.0/",
      "others must name you and share alike"),
  ODBL(
      "ODbL-1.0",
      "https://opendatacommons.org/licenses/odbl/1-0/",
      "for databases: name and share alike");

  private final String spdx;
  private final String address;
  private final String words;

  Licence(String spdx, String address, String words) {
    this.spdx = spdx;
    this.address = address;
    this.words = words;
  }

  /** Its name in the SPDX list. */
  public String spdx() {
    return spdx;
  }

  /** Where its text stands. */
  public String address() {
    return address;
  }

  public String words() {
    return words;
  }

  static Licence ofSpdx(@Nullable String spdx) {
    return Arrays.stream(values())
        .filter(each -> each.spdx.equals(spdx))
        .findFirst()
        .orElseThrow(
            () ->
                InvalidInput.inQuery(
                    "licence",
                    spdx,
                    "one of "
                        + Arrays.stream(values())
                            .map(Licence::spdx)
                            .collect(Collectors.joining(", "))));
  }
}
